import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { AtRiskQuery } from './at-risk.dto.ts';
import { AtRiskService } from './at-risk.service.ts';
import { AtRiskListView } from './at-risk.view.ts';

@ApiTags('match')
@Controller('match/at-risk')
export class AtRiskController {
  constructor(@Inject(AtRiskService) private readonly atRisk: AtRiskService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 30)
  @Get()
  @ApiOperation({
    summary: 'Which lines, sources and founders are about to be lost, and who carries the last of them',
    description:
      'Told is what only few living animals that may breed carry anything of, and lines and sources whose last ones are of one sex; the most urgent first. ' +
      'A carrier is an animal whose expected share is above 0, so with uncertain parents it may turn out to be none: `least` tells. ' +
      "Private animals count, and are told as private. The figures advise; the animals' welfare and the keeper's eye decide.",
  })
  @ApiOkResponse({ type: AtRiskListView })
  @ApiProblems(422, 503)
  list(@Query() query: AtRiskQuery): Promise<AtRiskListView> {
    return this.atRisk.list(query);
  }
}
