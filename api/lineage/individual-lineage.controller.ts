import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { CommonAncestorsQuery } from './common-ancestors.dto.ts';
import { CommonAncestorsService } from './common-ancestors.service.ts';
import { CommonAncestorsView } from './common-ancestors.view.ts';
import { InbreedingLoopsQuery } from './inbreeding-loops.dto.ts';
import { InbreedingLoopsService } from './inbreeding-loops.service.ts';
import { InbreedingLoopsView } from './inbreeding-loops.view.ts';
import { DescendantsQuery } from './descendants/descendants.dto.ts';
import { DescendantsService } from './descendants/descendants.service.ts';
import { DescendantsView } from './descendants/descendants.view.ts';
import { IndividualLineageService } from './individual-lineage.service.ts';
import { LineageView } from './lineage.view.ts';
import { PedigreeChartService } from './pedigree-chart.service.ts';
import { PedigreeQuery } from './pedigree.dto.ts';
import { PedigreeView } from './pedigree.view.ts';

@ApiTags('lineage')
@Controller('individuals/:id')
export class IndividualLineageController {
  constructor(
    @Inject(IndividualLineageService) private readonly lineage: IndividualLineageService,
    @Inject(PedigreeChartService) private readonly charts: PedigreeChartService,
    @Inject(CommonAncestorsService) private readonly ancestors: CommonAncestorsService,
    @Inject(InbreedingLoopsService) private readonly loops: InbreedingLoopsService,
    @Inject(DescendantsService) private readonly descendants: DescendantsService,
  ) {}

  @Needs('read', 'lineage')
  @Get('lineage')
  @ApiOperation({
    summary: 'Inbreeding, depth, label and genome shares of one animal',
    description:
      'Counts only what the register knows: read F together with the depth. Founders count as unrelated unless their source states a base kinship. A withdrawn animal answers too.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: LineageView })
  @ApiProblems(404, 503)
  getLineage(@Param('id') id: string): Promise<LineageView> {
    return this.lineage.get(id);
  }

  @Needs('read', 'lineage')
  @Get('lineage/common-ancestors')
  @ApiOperation({
    summary: 'Why F is what it is: the common ancestors that it arises through',
    description:
      'Each with its part of F, the number of its loops and their length, by the paths of Wright (1922); weighted by the odds where parents are uncertain. ' +
      'The parts of all of them sum to F. Loops are counted, not listed, so that a pedigree with millions of them answers too.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: CommonAncestorsView })
  @ApiProblems(404, 422, 503)
  findCommonAncestors(@Param('id') id: string, @Query() query: CommonAncestorsQuery): Promise<CommonAncestorsView> {
    return this.ancestors.of(id, query.most);
  }

  @Needs('read', 'lineage')
  @Get('lineage/loops')
  @ApiOperation({
    summary: 'Why F is what it is, step by step: its loops',
    description:
      'The largest loops, each as the two paths up from the parents to where they meet (Wright 1922), weighted by the odds where parents are uncertain; ' +
      'by common ancestor, how many are left out and their part of F together. What is listed, what is left out and the common ancestors not named sum to F. ' +
      'The work does not grow with the number of loops.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: InbreedingLoopsView })
  @ApiProblems(404, 422, 503)
  listLoops(@Param('id') id: string, @Query() query: InbreedingLoopsQuery): Promise<InbreedingLoopsView> {
    return this.loops.of(id, query);
  }

  @Needs('read', 'lineage')
  @Get('pedigree')
  @ApiOperation({
    summary: 'The ancestors of one animal as a graph',
    description:
      'Individuals, clutches and sources as nodes, each once, in the order of their ids; edges point down in time. At most 5 000 nodes and 20 000 edges: a chart that would be larger ends earlier and says `truncated`.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: PedigreeView })
  @ApiProblems(404, 422)
  getPedigree(@Param('id') id: string, @Query() query: PedigreeQuery): Promise<PedigreeView> {
    return this.charts.get(id, query.generations);
  }

  @Needs('read', 'lineage')
  @Get('descendants')
  @ApiOperation({
    summary: 'What descends from one animal, clutch by clutch',
    description:
      'Its clutches and those of its young, generation by generation, with the expected genome shares of every young by standing. Clutches and animals that may not be seen are told as on the page of each parent: no such clutch at all, of such an animal only that it is there.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: DescendantsView })
  @ApiProblems(404, 422)
  getDescendants(@Param('id') id: string, @Query() query: DescendantsQuery): Promise<DescendantsView> {
    return this.descendants.get(id, query.generations);
  }
}
