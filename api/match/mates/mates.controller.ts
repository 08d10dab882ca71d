import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { MatesQuery } from './mates.dto.ts';
import { MatesService } from './mates.service.ts';
import { MatesView } from './mates.view.ts';

@ApiTags('match')
@Controller('individuals/:id/mates')
export class MatesController {
  constructor(@Inject(MatesService) private readonly mates: MatesService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 10)
  @Get()
  @ApiOperation({
    summary: 'Who for this one: possible mates of an animal, ranked',
    description:
      'Animals of the other sex in the same line that whoever asks may see, with what the young would be: F with its range, label, and what they would add to the diversity of the line. ' +
      'Who is left out is told with the reason. Other lines, unsexed animals and disputed labels are taken only where they are asked for, and say so. ' +
      "The figures advise; the animals' welfare and the keeper's eye decide.",
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: MatesView })
  @ApiProblems(404, 422, 503)
  list(@Param('id') id: string, @Query() query: MatesQuery): Promise<MatesView> {
    return this.mates.of(id, query);
  }
}
