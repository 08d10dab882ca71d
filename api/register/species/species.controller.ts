import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../withdrawal.dto.ts';
import { WithdrawalService } from '../withdrawal.service.ts';
import { NewSpeciesRequest, SpeciesChangeRequest, SpeciesQuery } from './species.dto.ts';
import { listSpecies } from './species.queries.ts';
import { SpeciesService, speciesKind } from './species.service.ts';
import { SpeciesView } from './species.view.ts';

@ApiTags('species')
@Controller('species')
export class SpeciesController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(SpeciesService) private readonly species: SpeciesService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'species')
  @Get()
  @ApiOperation({ summary: 'Species profiles, by scientific name' })
  @ApiPage(SpeciesView)
  @ApiProblems(422)
  listSpecies(@Query() query: SpeciesQuery): Promise<Page<SpeciesView>> {
    return listSpecies(this.dataSource.manager, query);
  }

  @Needs('read', 'species')
  @Get(':id')
  @ApiOperation({ summary: 'One species profile' })
  @ApiOkResponse({ type: SpeciesView })
  @ApiProblems(404)
  getSpecies(@Param('id') id: string): Promise<SpeciesView> {
    return this.species.get(id);
  }

  @Needs('add', 'species')
  @Post()
  @ApiOperation({ summary: 'Add a species profile' })
  @ApiCreatedResponse({ type: SpeciesView })
  @ApiProblems(400, 409, 422)
  addSpecies(@Body() request: NewSpeciesRequest): Promise<SpeciesView> {
    return this.species.add(request);
  }

  @Needs('change', 'species')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a species profile' })
  @ApiIfMatch()
  @ApiOkResponse({ type: SpeciesView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeSpecies(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: SpeciesChangeRequest,
  ): Promise<SpeciesView> {
    return this.species.change(id, match, request);
  }

  @Needs('change', 'species')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a species profile that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: SpeciesView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawSpecies(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<SpeciesView> {
    return this.withdrawals.withdraw(speciesKind, id, match, request.reason);
  }

  @Needs('change', 'species')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn species profile' })
  @ApiIfMatch()
  @ApiOkResponse({ type: SpeciesView })
  @ApiProblems(404, 409, 412, 428)
  restoreSpecies(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<SpeciesView> {
    return this.withdrawals.restore(speciesKind, id, match);
  }
}
