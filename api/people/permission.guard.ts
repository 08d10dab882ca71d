import { Inject, Injectable, SetMetadata, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Request } from 'express';
import { forAnyoneKey } from '../platform/for-anyone.ts';
import { MetricsDoor } from '../platform/metrics-door.ts';
import { Admission, type Need } from './admission.ts';
import { ForbiddenProblem, type Action, type Subject } from './permissions.ts';
import { say } from '../platform/say.ts';

/** Where a handler says what it needs. */
export const needKey = 'linekeeper:need';

/** What a route needs; a route that says nothing is refused to everybody. */
export const Needs = (action: Action, subject: Subject): MethodDecorator & ClassDecorator =>
  SetMetadata(needKey, [action, subject] satisfies Need);

/** Lets a request to a route when whoever sends it may do what the route needs. */
@Injectable()
export class PermissionGuard implements CanActivate {
  constructor(
    @Inject(Admission) private readonly admission: Admission,
    @Inject(Reflector) private readonly reflector: Reflector,
    @Inject(MetricsDoor) private readonly metricsDoor: MetricsDoor,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<Request>();
    const handler = [context.getHandler(), context.getClass()];
    const need = this.reflector.getAllAndOverride<Need | undefined>(needKey, handler);
    const isForAnyone = this.reflector.getAllAndOverride<boolean | undefined>(forAnyoneKey, handler) ?? false;
    if (isForAnyone && isForMachines(request.path)) return true;
    if (need?.[1] === 'metrics' && this.metricsDoor.isOpenTo(request)) return true;
    const who = await this.admission.recognise(request);
    if (isForAnyone) return true;
    if (!need) throw new ForbiddenProblem(say`Nobody may do this.`);
    await this.admission.require(who, need);
    return true;
  }
}

/** Whoever watches the service needs no keeper, and no database to be told that there is none. */
const isForMachines = (path: string): boolean => path.startsWith('/api/health/');
