import { Body, Controller, Delete, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { ComparisonService } from './comparison.service.ts';
import { ComparisonQuery, MergeRequest } from './merge.dto.ts';
import { MergeComparisonView, MergeView } from './merge.view.ts';
import { MergesService } from './merges.service.ts';

@ApiTags('merges')
@Controller('merges')
export class MergesController {
  constructor(
    @Inject(ComparisonService) private readonly comparison: ComparisonService,
    @Inject(MergesService) private readonly merges: MergesService,
  ) {}

  @Needs('merge', 'individual')
  @Get('comparison')
  @ApiOperation({
    summary:
      'Two records that may be of one animal, side by side: what differs, what would move, what stands against it',
  })
  @ApiOkResponse({ type: MergeComparisonView })
  @ApiProblems(422)
  compareRecords(@Query() query: ComparisonQuery): Promise<MergeComparisonView> {
    return this.comparison.compare(query);
  }

  @Needs('merge', 'individual')
  @Post()
  @ApiOperation({
    summary: 'Merge two records of one animal',
    description:
      'All that names the duplicate moves to the kept record; the duplicate is withdrawn and keeps its registry number, by which the kept ' +
      'record is found. Checked again at that moment: 409 names a loop first, else what stands against it as `obstacles`.',
  })
  @ApiCreatedResponse({ type: MergeView })
  @ApiProblems(400, 404, 409, 412, 422)
  mergeRecords(@Body() request: MergeRequest): Promise<MergeView> {
    return this.merges.merge(request);
  }

  @Needs('merge', 'individual')
  @Get(':id')
  @ApiOperation({ summary: 'One merging' })
  @ApiOkResponse({ type: MergeView })
  @ApiProblems(404)
  getMerge(@Param('id') id: string): Promise<MergeView> {
    return this.merges.get(id);
  }

  @Needs('merge', 'individual')
  @Delete(':id')
  @ApiOperation({
    summary: 'Undo a merging',
    description:
      'Both records are as they were, and what moved is back. 409 names as `changed` what was changed since, so that it cannot be put back ' +
      'exactly; later mergings of the same records are undone first.',
  })
  @ApiOkResponse({ type: MergeView })
  @ApiProblems(404, 409)
  undoMerge(@Param('id') id: string): Promise<MergeView> {
    return this.merges.undo(id);
  }
}
