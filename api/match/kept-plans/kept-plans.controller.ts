import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query, Req } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { signalOf } from '../../platform/given-up.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../../register/withdrawal.dto.ts';
import { WithdrawalService } from '../../register/withdrawal.service.ts';
import { AcceptPairsService } from './accept-pairs.service.ts';
import {
  AcceptPairsRequest,
  DecidePairsRequest,
  KeptPlanChangeRequest,
  KeptPlanQuery,
  NewKeptPlanRequest,
} from './kept-plan.dto.ts';
import { keptPlanKind, listKeptPlans } from './kept-plan.queries.ts';
import { KeptPlanItemView, KeptPlanView } from './kept-plan.view.ts';
import { KeptPlansService } from './kept-plans.service.ts';

@ApiTags('match')
@Controller('kept-plans')
export class KeptPlansController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(KeptPlansService) private readonly plans: KeptPlansService,
    @Inject(AcceptPairsService) private readonly accepting: AcceptPairsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'plan')
  @Get()
  @ApiOperation({ summary: 'Kept plans: your own and those shared with the club, the newest first' })
  @ApiPage(KeptPlanItemView)
  @ApiProblems(422)
  listKeptPlans(@Query() query: KeptPlanQuery): Promise<Page<KeptPlanItemView>> {
    return listKeptPlans(this.dataSource.manager, query);
  }

  @Needs('read', 'plan')
  @Costs(asking, () => 10)
  @Get(':id')
  @ApiOperation({
    summary: 'One kept plan: as it was when it was made, what became of it, and what the register changed under it',
    description: [
      'What was told then is kept and never altered. `now` of each pair and `since` are computed against the register of this moment, as far as whoever',
      'asks may see it: F of the young (Malécot 1948) then and now, animals that died, moved or were paired, labels that are disputed, and whether the',
      'assumptions are still met. Animals that may not be seen stand as private-1 and so on, without their keeper.',
    ].join(' '),
  })
  @ApiOkResponse({ type: KeptPlanView })
  @ApiProblems(404)
  getKeptPlan(@Param('id') id: string): Promise<KeptPlanView> {
    return this.plans.get(id);
  }

  @Needs('add', 'plan')
  @Costs(asking, () => 100)
  @Post()
  @ApiOperation({
    summary: 'Make a plan for a line and keep it',
    description:
      'The plan is made anew from the assumptions, so that nothing in it was sent by whoever keeps it. With `shown`, 409 where it comes out with other pairs by now.',
  })
  @ApiCreatedResponse({ type: KeptPlanView })
  @ApiProblems(400, 404, 409, 422, 503)
  addKeptPlan(
    @ActingKeeper() keeper: Acting,
    @Body() body: NewKeptPlanRequest,
    @Req() request: Request,
  ): Promise<KeptPlanView> {
    return this.plans.keep(keeper, body, signalOf(request));
  }

  @Needs('change', 'plan')
  @Patch(':id')
  @ApiOperation({ summary: 'Rename a kept plan, note something, share it with the club or keep it to yourself again' })
  @ApiIfMatch()
  @ApiOkResponse({ type: KeptPlanView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeKeptPlan(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: KeptPlanChangeRequest,
  ): Promise<KeptPlanView> {
    return this.plans.change(id, match, request);
  }

  @Needs('change', 'plan')
  @Post(':id/pairings')
  @ApiOperation({
    summary: 'Accept pairs of a kept plan: turn them into pairings, all of them or none',
    description: [
      'Held against the register of this very moment: 422 names each pair that cannot be made any more, and each that would cross lines, exceed the limit',
      'of F of the plan or use a disputed label, unless `allow` asks for that; then the pairing carries the warning in its notes. 409 where a pair is',
      'decided already, or an animal certainly lives elsewhere at that time. One undo takes all of it back.',
    ].join(' '),
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: KeptPlanView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  acceptPairs(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @ActingKeeper() keeper: Acting,
    @Body() request: AcceptPairsRequest,
  ): Promise<KeptPlanView> {
    return this.accepting.accept(id, match, keeper, request);
  }

  @Needs('change', 'plan')
  @Patch(':id/pairs')
  @ApiOperation({ summary: 'Decline pairs of a kept plan, or put them back' })
  @ApiIfMatch()
  @ApiOkResponse({ type: KeptPlanView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  decidePairs(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: DecidePairsRequest,
  ): Promise<KeptPlanView> {
    return this.plans.decide(id, match, request);
  }

  @Needs('change', 'plan')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a kept plan; pairings that came of it stay' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: KeptPlanItemView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawKeptPlan(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<KeptPlanItemView> {
    return this.withdrawals.withdraw(keptPlanKind, id, match, request.reason);
  }

  @Needs('change', 'plan')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn plan' })
  @ApiIfMatch()
  @ApiOkResponse({ type: KeptPlanItemView })
  @ApiProblems(404, 409, 412, 428)
  restoreKeptPlan(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<KeptPlanItemView> {
    return this.withdrawals.restore(keptPlanKind, id, match);
  }
}
