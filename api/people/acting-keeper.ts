import { createParamDecorator, Inject, Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { Problem } from '../platform/problem.ts';

/** The keeper in whose name a request acts. */
export interface Acting {
  readonly id: string;
  readonly name: string;
}

type KeeperRequest = Request & { keeper?: Acting };

/**
 * Decides who acts: the one place for it. Until keepers sign in it is the register's default keeper.
 */
@Injectable()
export class ActingKeeperGuard implements CanActivate {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<KeeperRequest>();
    if (request.path.startsWith('/api/health/') || request.path === '/api/metrics') return true;
    const [keeper] = await this.dataSource.query<Acting[]>(
      'select k.id, k.name from club c join keeper k on k.id = c.default_keeper_id',
    );
    if (!keeper)
      throw new Problem(
        'unavailable',
        503,
        'Not now',
        'The register has no keeper yet; the service is still starting.',
      );
    request.keeper = keeper;
    return true;
  }
}

/** Hands the acting keeper to a handler. */
export const ActingKeeper = createParamDecorator((_: unknown, context: ExecutionContext): Acting => {
  const keeper = context.switchToHttp().getRequest<KeeperRequest>().keeper;
  if (!keeper) throw new Problem('unavailable', 503, 'Not now', 'Nobody is known to act here.');
  return keeper;
});
