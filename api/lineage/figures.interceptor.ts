import { Inject, Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { mergeMap, type Observable } from 'rxjs';
import { currentRequest } from '../platform/acting.ts';
import { figuresInAnswer } from '../platform/figures-in-answer.ts';
import type { NewClutchView, OffspringView, YoungFiguresView } from '../register/clutches/clutch.view.ts';
import { FiguresKeeper } from './figures-keeper.ts';
import { FiguresUpkeep } from './figures-upkeep.ts';
import { Snapshots } from './snapshots.service.ts';

/** An answer that tells of new animals: those raised from a clutch, or a new clutch with its young. */
type AnswerWithYoung = OffspringView | NewClutchView;

/**
 * Lets a request that changed the lineage write the figures that follow before it answers, and an answer that tells of new animals carry
 * theirs. A writing that fails is left to the job: the change itself is committed and stands.
 */
@Injectable()
export class FiguresInterceptor implements NestInterceptor {
  constructor(
    @Inject(Reflector) private readonly reflector: Reflector,
    @Inject(FiguresKeeper) private readonly keeper: FiguresKeeper,
    @Inject(FiguresUpkeep) private readonly upkeep: FiguresUpkeep,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const asked = currentRequest();
    const tells = this.reflector.get<boolean | undefined>(figuresInAnswer, context.getHandler()) ?? false;
    return next.handle().pipe(
      mergeMap(async (answer: unknown) => {
        if (asked?.changedLineage) await this.#settle();
        // the young are there even where their figures cannot be told now
        return tells ? this.#withFigures(answer as AnswerWithYoung).catch(() => answer) : answer;
      }),
    );
  }

  async #settle(): Promise<void> {
    const isSettled = await this.keeper.settle().catch(() => false);
    // not waited for: where it is lost, the next look of any copy finds what is due
    void this.upkeep.wanted(!isSettled).catch(() => undefined);
  }

  async #withFigures(answer: AnswerWithYoung): Promise<AnswerWithYoung> {
    const young = 'items' in answer ? answer.items : answer.young;
    if (young.length === 0) return answer;
    const snapshot = await this.snapshots.current();
    const figures = young.flatMap(({ id }): YoungFiguresView[] => {
      const animal = snapshot.find(id);
      // an answer may be given again after its young were taken back
      if (animal < 0) return [];
      const { expected, least, greatest } = snapshot.inbreedingOf(animal);
      return [
        {
          id,
          inbreeding: expected,
          inbreedingLeast: least,
          inbreedingGreatest: greatest,
          depth: snapshot.depthOf(animal).depth,
          current: snapshot.isCurrent(animal),
        },
      ];
    });
    return { ...answer, figures };
  }
}
