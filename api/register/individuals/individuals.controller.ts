import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query, UseInterceptors } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { PackedAnswer } from '../../platform/packed-answer.interceptor.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../withdrawal.dto.ts';
import { WithdrawalService } from '../withdrawal.service.ts';
import { NewIndividualRequest, IndividualChangeRequest, IndividualQuery } from './individual.dto.ts';
import { listIndividuals } from './individual-list.queries.ts';
import { IndividualsService, individualKind } from './individuals.service.ts';
import { IndividualItemView, IndividualView } from './individual.view.ts';

@ApiTags('individuals')
@Controller('individuals')
export class IndividualsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(IndividualsService) private readonly individuals: IndividualsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'individual')
  @UseInterceptors(PackedAnswer)
  @Get()
  @ApiOperation({ summary: 'Animals' })
  @ApiPage(IndividualItemView)
  @ApiProblems(422)
  listIndividuals(@Query() query: IndividualQuery): Promise<Page<IndividualItemView>> {
    return listIndividuals(this.dataSource.manager, query);
  }

  @Needs('read', 'individual')
  @Get(':id')
  @ApiOperation({ summary: 'One animal, whole' })
  @ApiOkResponse({ type: IndividualView })
  @ApiProblems(404)
  getIndividual(@Param('id') id: string): Promise<IndividualView> {
    return this.individuals.get(id);
  }

  @Needs('add', 'individual')
  @Post()
  @ApiOperation({ summary: 'Add an animal' })
  @ApiCreatedResponse({ type: IndividualView })
  @ApiProblems(400, 409, 422)
  addIndividual(@ActingKeeper() keeper: Acting, @Body() request: NewIndividualRequest): Promise<IndividualView> {
    return this.individuals.add(keeper, request);
  }

  @Needs('change', 'individual')
  @Patch(':id')
  @ApiOperation({ summary: 'Change an animal' })
  @ApiIfMatch()
  @ApiOkResponse({ type: IndividualView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeIndividual(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: IndividualChangeRequest,
  ): Promise<IndividualView> {
    return this.individuals.change(id, match, request);
  }

  @Needs('change', 'individual')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw an animal that is no parent of a standing clutch' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: IndividualView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawIndividual(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<IndividualView> {
    return this.withdrawals.withdraw(individualKind, id, match, request.reason);
  }

  @Needs('change', 'individual')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn animal' })
  @ApiIfMatch()
  @ApiOkResponse({ type: IndividualView })
  @ApiProblems(404, 409, 412, 428)
  restoreIndividual(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<IndividualView> {
    return this.withdrawals.restore(individualKind, id, match);
  }
}
