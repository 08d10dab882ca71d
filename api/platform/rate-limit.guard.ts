import { Inject, Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Request } from 'express';
import { currentRequest } from './acting.ts';
import { Costs, writing, type Cost } from './allowances.ts';
import { RateLimits } from './rate-limits.ts';

/** Counts what keepers do against their allowances. Their reading is free. */
@Injectable()
export class RateLimitGuard implements CanActivate {
  constructor(
    @Inject(RateLimits) private readonly limits: RateLimits,
    @Inject(Reflector) private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<Request>();
    const who = currentRequest()?.viewer;
    if (!who) return true; // a stranger was counted by address, those who watch the service are not
    const cost = this.reflector.get<Cost | undefined>(Costs.key, context.getHandler());
    if (cost) await this.limits.spend(cost.allowance, who.id, cost.points(request));
    else if (request.method !== 'GET' && request.method !== 'HEAD') await this.limits.spend(writing, who.id);
    return true;
  }
}
