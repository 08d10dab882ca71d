import { Controller, Get, Inject, Param, Query, Req } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { signalOf } from '../../platform/given-up.ts';
import { NewBloodQuery } from './new-blood.dto.ts';
import { NewBloodService } from './new-blood.service.ts';
import { NewBloodView } from './new-blood.view.ts';

@ApiTags('match')
@Controller('lines/:id/new-blood')
export class NewBloodController {
  constructor(@Inject(NewBloodService) private readonly newBlood: NewBloodService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 50)
  @Get()
  @ApiOperation({
    summary: 'Which animals of other keepers carry what a keeper’s part of a line lacks',
    description:
      'Ranks living animals that may breed by what they would add to the gene diversity of what one keeper has of a line, themselves or by one young with the ' +
      'best partner there; of a whole line, by one young. Which founders are lacking is told beside it. Who is left out is told with the reason; other ' +
      'lines, unsexed animals and disputed labels are taken only where they are asked for, and say so. ' +
      "The figures advise; the animals' welfare and the keeper's eye decide.",
  })
  @ApiOkResponse({ type: NewBloodView })
  @ApiProblems(404, 422, 503)
  list(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Query() query: NewBloodQuery,
    @Req() request: Request,
  ): Promise<NewBloodView> {
    return this.newBlood.of(id, query, keeper.id, signalOf(request));
  }
}
