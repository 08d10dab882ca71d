import { Controller, Get, Inject, Param, Query, UseInterceptors } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { PackedAnswer } from '../../platform/packed-answer.interceptor.ts';
import { LineOverTimeQuery } from './line-over-time.dto.ts';
import { LineOverTimeService } from './line-over-time.service.ts';
import { LineOverTimeView } from './line-over-time.view.ts';

/** A whole line, to be drawn. */
@ApiTags('lines')
@Controller('lines/:id/over-time')
export class LineOverTimeController {
  constructor(@Inject(LineOverTimeService) private readonly lines: LineOverTimeService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Get()
  @UseInterceptors(PackedAnswer)
  @ApiOperation({
    summary: 'Every animal and clutch of a line, to be drawn over time',
    description:
      'Columns of equal length instead of a record for each. Of its members those that whoever asks may see, at most 20 000 (422 above), and all possible parents of their clutches; a private parent keeps its place alone. Compressed with gzip where Accept-Encoding takes it.',
  })
  @ApiOkResponse({ type: LineOverTimeView })
  @ApiProblems(404, 422)
  getOverTime(@Param('id') id: string, @Query() query: LineOverTimeQuery): Promise<LineOverTimeView> {
    return this.lines.get(id, query);
  }
}
