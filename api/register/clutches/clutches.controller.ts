import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { TellsFigures } from '../../platform/figures-in-answer.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../withdrawal.dto.ts';
import { WithdrawalService } from '../withdrawal.service.ts';
import { ClutchChangeRequest, ClutchQuery, NewClutchRequest, OffspringRequest } from './clutch.dto.ts';
import { listClutches } from './clutch-list.queries.ts';
import { ClutchesService, clutchKind } from './clutches.service.ts';
import { OffspringService } from './offspring.service.ts';
import { ClutchItemView, ClutchView, NewClutchView, OffspringView } from './clutch.view.ts';

@ApiTags('clutches')
@Controller('clutches')
export class ClutchesController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(ClutchesService) private readonly clutches: ClutchesService,
    @Inject(OffspringService) private readonly offspring: OffspringService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'clutch')
  @Get()
  @ApiOperation({ summary: 'Clutches, newest first' })
  @ApiPage(ClutchItemView)
  @ApiProblems(422)
  listClutches(@Query() query: ClutchQuery): Promise<Page<ClutchItemView>> {
    return listClutches(this.dataSource.manager, query);
  }

  @Needs('read', 'clutch')
  @Get(':id')
  @ApiOperation({ summary: 'One clutch' })
  @ApiOkResponse({ type: ClutchView })
  @ApiProblems(404)
  getClutch(@Param('id') id: string): Promise<ClutchView> {
    return this.clutches.get(id);
  }

  @Needs('add', 'clutch')
  @TellsFigures()
  @Post()
  @ApiOperation({ summary: 'Add a clutch, with its young if there are any' })
  @ApiCreatedResponse({ type: NewClutchView })
  @ApiProblems(400, 409, 422)
  addClutch(@ActingKeeper() keeper: Acting, @Body() request: NewClutchRequest): Promise<NewClutchView> {
    return this.clutches.add(keeper, request);
  }

  @Needs('change', 'clutch')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a clutch' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ClutchView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeClutch(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: ClutchChangeRequest,
  ): Promise<ClutchView> {
    return this.clutches.change(id, match, request);
  }

  @Needs('change', 'clutch')
  @TellsFigures()
  @Post(':id/offspring')
  @ApiOperation({ summary: 'Raise young from a clutch' })
  @ApiCreatedResponse({ type: OffspringView })
  @ApiProblems(400, 404, 409, 422)
  raiseOffspring(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Body() request: OffspringRequest,
  ): Promise<OffspringView> {
    return this.offspring.raise(keeper, id, request);
  }

  @Needs('change', 'clutch')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a clutch that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: ClutchView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawClutch(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<ClutchView> {
    return this.withdrawals.withdraw(clutchKind, id, match, request.reason);
  }

  @Needs('change', 'clutch')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn clutch' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ClutchView })
  @ApiProblems(404, 409, 412, 428)
  restoreClutch(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<ClutchView> {
    return this.withdrawals.restore(clutchKind, id, match);
  }
}
