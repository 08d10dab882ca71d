import { Body, Controller, Get, HttpCode, Inject, Post, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { asking, Costs, entries } from '../platform/allowances.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { LineageSetQuery, LineageSetRequest } from './lineage-set.dto.ts';
import { LineageSetService } from './lineage-set.service.ts';
import { LineageSetView } from './lineage-set.view.ts';

/** Measures of a set of animals: a line, a keeper's animals, the living of a line, or any other choice. */
@ApiTags('lineage')
@Controller('lineage/set')
export class LineageSetController {
  constructor(@Inject(LineageSetService) private readonly sets: LineageSetService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Get()
  @ApiOperation({
    summary: 'Diversity, founders and inbreeding of the animals that filters choose',
    description:
      'The filters are those of the list of animals; without any, all animals that may be seen. Founders count as unrelated unless their source says otherwise. Computed in a thread: some seconds for a million animals.',
  })
  @ApiOkResponse({ type: LineageSetView })
  @ApiProblems(422, 503)
  measureSet(@Query() query: LineageSetQuery): Promise<LineageSetView> {
    return this.sets.ofFilters(query);
  }

  @Needs('ask', 'lineage')
  @Costs(asking, (request) => 5 + Math.ceil(entries(request, 'individuals') / 50))
  @Post()
  @HttpCode(200)
  @ApiOperation({
    summary: 'Diversity, founders and inbreeding of animals picked by hand',
    description: 'Up to 5000 animals. It changes nothing, and is POSTed only because it can be long.',
  })
  @ApiOkResponse({ type: LineageSetView })
  @ApiProblems(400, 422, 503)
  measurePicked(@Body() request: LineageSetRequest): Promise<LineageSetView> {
    return this.sets.ofPicked(request.individuals);
  }
}
