import { Body, Controller, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { signalOf } from '../../platform/given-up.ts';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { PlanRequest } from './plan.dto.ts';
import { PlanService } from './plan.service.ts';
import { PlanView } from './plan.view.ts';

@ApiTags('match')
@Controller('lines/:id/plan')
export class PlanController {
  constructor(@Inject(PlanService) private readonly plans: PlanService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 100)
  @Post()
  @HttpCode(200)
  @ApiOperation({
    summary: 'Which pairings for a line: the best set of pairs under given conditions, with its reasons',
    description: [
      'Chooses the pairs that make Σ mean kinship of the parents + w · Σ kinship of the two as small as it can be (mean kinship: Ballou & Lacy 1995),',
      'by an integer linear programme (HiGHS, Huangfu & Hall 2018), proven or with the gap that is left. At most 40 000 possible pairs, such as 200 males',
      'and 200 females. Where there can be no plan, 422 says which condition stands against it (`condition`) and what would help. Other lines, F above the',
      'limit and disputed labels are taken only where `allow` asks for them, and carry warnings. Nothing is written; closing the connection ends the',
      "computation. The figures advise; the animals' welfare and the keeper's eye decide.",
    ].join(' '),
  })
  @ApiOkResponse({ type: PlanView })
  @ApiProblems(400, 404, 422, 503)
  makePlan(@Param('id') id: string, @Body() asked: PlanRequest, @Req() request: Request): Promise<PlanView> {
    return this.plans.of(id, asked, signalOf(request));
  }
}
