import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { LabelHistoryService } from './label-history.service.ts';
import { LabelHistoryView } from './label-history.view.ts';

const told =
  'At most 300 events, the oldest first. Strangers are told no names of people, no evidence, and of the journal what was public then.';

@ApiTags('claims')
@Controller()
export class LabelHistoryController {
  constructor(@Inject(LabelHistoryService) private readonly histories: LabelHistoryService) {}

  @Needs('read', 'individual')
  @Get('individuals/:id/label-history')
  @ApiOperation({
    summary: 'What an animal was called when it came, by whom, and every change since',
    description: `The label of its source, the line at entry and each later change of it, changes of the name of its lines, claims, and verdicts on their evidence. ${told}`,
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: LabelHistoryView })
  @ApiProblems(404)
  getLabelHistoryOfAnimal(@Param('id') id: string): Promise<LabelHistoryView> {
    return this.histories.ofAnimal(id);
  }

  @Needs('read', 'line')
  @Get('lines/:id/label-history')
  @ApiOperation({
    summary: 'What a line was called, and under which labels its founders came',
    description: `The labels of the sources of its animals, its own changes of name, claims, and verdicts on their evidence. ${told}`,
  })
  @ApiOkResponse({ type: LabelHistoryView })
  @ApiProblems(404)
  getLabelHistoryOfLine(@Param('id') id: string): Promise<LabelHistoryView> {
    return this.histories.ofLine(id);
  }
}
