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
import { NewObservationRequest, ObservationChangeRequest, ObservationQuery } from './observation.dto.ts';
import { listObservations } from './observation.queries.ts';
import { ObservationsService, observationKind } from './observations.service.ts';
import { ObservationView } from './observation.view.ts';

@ApiTags('observations')
@Controller('observations')
export class ObservationsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(ObservationsService) private readonly observations: ObservationsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'observation')
  @Get()
  @ApiOperation({ summary: 'Observations, newest first' })
  @ApiPage(ObservationView)
  @ApiProblems(422)
  listObservations(@Query() query: ObservationQuery): Promise<Page<ObservationView>> {
    return listObservations(this.dataSource.manager, query);
  }

  @Needs('read', 'observation')
  @Get(':id')
  @ApiOperation({ summary: 'One observation' })
  @ApiOkResponse({ type: ObservationView })
  @ApiProblems(404)
  getObservation(@Param('id') id: string): Promise<ObservationView> {
    return this.observations.get(id);
  }

  @Needs('add', 'observation')
  @Post()
  @ApiOperation({ summary: 'Add an observation' })
  @ApiCreatedResponse({ type: ObservationView })
  @ApiProblems(400, 409, 422)
  addObservation(@ActingKeeper() keeper: Acting, @Body() request: NewObservationRequest): Promise<ObservationView> {
    return this.observations.add(keeper, request);
  }

  @Needs('change', 'observation')
  @Patch(':id')
  @ApiOperation({ summary: 'Change an observation' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ObservationView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeObservation(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: ObservationChangeRequest,
  ): Promise<ObservationView> {
    return this.observations.change(id, match, request);
  }

  @Needs('change', 'observation')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw an observation that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: ObservationView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawObservation(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<ObservationView> {
    return this.withdrawals.withdraw(observationKind, id, match, request.reason);
  }

  @Needs('change', 'observation')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn observation' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ObservationView })
  @ApiProblems(404, 409, 412, 428)
  restoreObservation(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<ObservationView> {
    return this.withdrawals.restore(observationKind, id, match);
  }
}
