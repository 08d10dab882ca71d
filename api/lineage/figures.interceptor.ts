import { Inject, Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import { mergeMap, type Observable } from 'rxjs';
import { currentRequest } from '../platform/acting.ts';
import { FiguresKeeper } from './figures-keeper.ts';
import { FiguresUpkeep } from './figures-upkeep.ts';

/**
 * Lets a request that changed the lineage write the figures that follow before it answers. A writing that fails is left to the job: the
 * change itself is committed and stands.
 */
@Injectable()
export class FiguresInterceptor implements NestInterceptor {
  constructor(
    @Inject(FiguresKeeper) private readonly keeper: FiguresKeeper,
    @Inject(FiguresUpkeep) private readonly upkeep: FiguresUpkeep,
  ) {}

  intercept(_context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const asked = currentRequest();
    return next.handle().pipe(
      mergeMap(async (answer: unknown) => {
        if (asked?.changedLineage) await this.#settle();
        return answer;
      }),
    );
  }

  async #settle(): Promise<void> {
    const isSettled = await this.keeper.settle().catch(() => false);
    await this.upkeep.wanted(!isSettled).catch(() => undefined);
  }
}
