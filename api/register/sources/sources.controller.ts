import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../withdrawal.dto.ts';
import { WithdrawalService } from '../withdrawal.service.ts';
import { NewSourceRequest, SourceChangeRequest, SourceQuery } from './source.dto.ts';
import { listSources } from './source.queries.ts';
import { SourcesService, sourceKind } from './sources.service.ts';
import { SourceView } from './source.view.ts';

@ApiTags('sources')
@Controller('sources')
export class SourcesController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(SourcesService) private readonly sources: SourcesService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'source')
  @Get()
  @ApiOperation({ summary: 'Sources, oldest first' })
  @ApiPage(SourceView)
  @ApiProblems(422)
  listSources(@Query() query: SourceQuery): Promise<Page<SourceView>> {
    return listSources(this.dataSource.manager, query);
  }

  @Needs('read', 'source')
  @Get(':id')
  @ApiOperation({ summary: 'One source' })
  @ApiOkResponse({ type: SourceView })
  @ApiProblems(404)
  getSource(@Param('id') id: string): Promise<SourceView> {
    return this.sources.get(id);
  }

  @Needs('add', 'source')
  @Post()
  @ApiOperation({ summary: 'Add a source' })
  @ApiCreatedResponse({ type: SourceView })
  @ApiProblems(400, 409, 422)
  addSource(@ActingKeeper() keeper: Acting, @Body() request: NewSourceRequest): Promise<SourceView> {
    return this.sources.add(keeper, request);
  }

  @Needs('change', 'source')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a source' })
  @ApiIfMatch()
  @ApiOkResponse({ type: SourceView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeSource(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: SourceChangeRequest,
  ): Promise<SourceView> {
    return this.sources.change(id, match, request);
  }

  @Needs('change', 'source')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a source that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: SourceView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawSource(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<SourceView> {
    return this.withdrawals.withdraw(sourceKind, id, match, request.reason);
  }

  @Needs('change', 'source')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn source' })
  @ApiIfMatch()
  @ApiOkResponse({ type: SourceView })
  @ApiProblems(404, 409, 412, 428)
  restoreSource(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<SourceView> {
    return this.withdrawals.restore(sourceKind, id, match);
  }
}
