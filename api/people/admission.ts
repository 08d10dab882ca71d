import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { currentRequest, SignInProblem, type Viewer } from '../platform/acting.ts';
import { knocking } from '../platform/allowances.ts';
import { networkOf } from '../platform/network.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { readClub } from './people.queries.ts';
import { ForbiddenProblem, may, permissionsOf, type Action, type Subject } from './permissions.ts';
import { recogniseKeeper } from './recognise-keeper.ts';
import { say } from '../platform/say.ts';

/** What a route needs. */
export type Need = readonly [Action, Subject];

/** Finds out who asks, and refuses what the permission table does not allow. */
@Injectable()
export class Admission {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(RateLimits) private readonly limits: RateLimits,
  ) {}

  /**
   * Notes who sends a request, for all that answers it. Strangers are counted before anything is answered to them; whoever sends
   * a token that is none is one.
   */
  async recognise(request: Request): Promise<Viewer> {
    const asked = currentRequest();
    if (!asked) throw new Error('the middleware that opens a request is missing');
    const count = (): Promise<void> => this.limits.spend(knocking, networkOf(request.ip));
    try {
      asked.viewer = await recogniseKeeper(this.dataSource.manager, request);
      if (asked.viewer === null) await count();
      return asked.viewer;
    } catch (refusal) {
      if (refusal instanceof SignInProblem) await count();
      throw refusal;
    }
  }

  /** 401 for strangers, 403 for members who may not do it, or whose token is for reading. */
  async require(who: Viewer, [action, subject]: Need): Promise<void> {
    const publicReading = who === null && ((await readClub(this.dataSource.manager))?.publicReading ?? false);
    if (!may(permissionsOf(who, { publicReading }), action, subject)) {
      if (who === null) throw new SignInProblem();
      throw new ForbiddenProblem(say`Your role in the club does not include this. Ask an administrator.`);
    }
    if (who?.scope === 'read' && !['read', 'ask'].includes(action))
      throw new ForbiddenProblem(say`This token is for reading only. Make one for writing under Club, My account.`);
  }
}
