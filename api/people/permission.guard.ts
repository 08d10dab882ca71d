import { Inject, Injectable, SetMetadata, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { currentRequest, SignInProblem, type Viewer } from '../platform/acting.ts';
import { forAnyoneKey } from '../platform/for-anyone.ts';
import { knocking } from '../platform/allowances.ts';
import { MetricsDoor } from '../platform/metrics-door.ts';
import { networkOf } from '../platform/network.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { readClub } from './people.queries.ts';
import { ForbiddenProblem, may, permissionsOf, type Action, type Subject } from './permissions.ts';
import { recogniseKeeper } from './recognise-keeper.ts';

/** Where a handler says what it needs. */
export const needKey = 'linekeeper:need';
type Need = readonly [Action, Subject];

/** What a route needs; a route that says nothing is refused to everybody. */
export const Needs = (action: Action, subject: Subject): MethodDecorator & ClassDecorator =>
  SetMetadata(needKey, [action, subject] satisfies Need);

/** Finds out who asks, and refuses what the permission table does not allow. */
@Injectable()
export class PermissionGuard implements CanActivate {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Reflector) private readonly reflector: Reflector,
    @Inject(MetricsDoor) private readonly metricsDoor: MetricsDoor,
    @Inject(RateLimits) private readonly limits: RateLimits,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<Request>();
    const handler = [context.getHandler(), context.getClass()];
    const need = this.reflector.getAllAndOverride<Need | undefined>(needKey, handler);
    const isForAnyone = this.reflector.getAllAndOverride<boolean | undefined>(forAnyoneKey, handler) ?? false;
    if (isForAnyone && isForMachines(request.path)) return true;
    if (need?.[1] === 'metrics' && this.metricsDoor.isOpenTo(request)) return true;
    const who = await this.recognise(request);
    const asked = currentRequest();
    if (!asked) throw new Error('the middleware that opens a request is missing');
    asked.viewer = who;
    if (isForAnyone) return true;
    if (!need) throw new ForbiddenProblem('Nobody may do this.');
    await this.requirePermission(who, need);
    return true;
  }

  /** Strangers are counted before anything is answered to them; whoever sends a token that is none is one. */
  private async recognise(request: Request): Promise<Viewer> {
    const count = (): Promise<void> => this.limits.spend(knocking, networkOf(request.ip));
    try {
      const who = await recogniseKeeper(this.dataSource.manager, request);
      if (who === null) await count();
      return who;
    } catch (refusal) {
      if (refusal instanceof SignInProblem) await count();
      throw refusal;
    }
  }

  private async requirePermission(who: Viewer, [action, subject]: Need): Promise<void> {
    const publicReading = who === null && ((await readClub(this.dataSource.manager))?.publicReading ?? false);
    if (!may(permissionsOf(who, { publicReading }), action, subject)) {
      if (who === null) throw new SignInProblem();
      throw new ForbiddenProblem('Your role in the club does not include this. Ask an administrator.');
    }
    if (who?.scope === 'read' && !['read', 'ask'].includes(action))
      throw new ForbiddenProblem('This token is for reading only. Make one for writing under Club, My account.');
  }
}

/** Whoever watches the service needs no keeper, and no database to be told that there is none. */
const isForMachines = (path: string): boolean => path.startsWith('/api/health/');
