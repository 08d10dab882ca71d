import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../../register/withdrawal.dto.ts';
import { WithdrawalService } from '../../register/withdrawal.service.ts';
import { NewClaimRequest, ClaimChangeRequest, ClaimQuery } from './claim.dto.ts';
import { listClaims } from './claim.queries.ts';
import { ClaimsService, claimKind } from './claims.service.ts';
import { ClaimView } from './claim.view.ts';

@ApiTags('claims')
@Controller('claims')
export class ClaimsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(ClaimsService) private readonly claims: ClaimsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'claim')
  @Get()
  @ApiOperation({ summary: 'Claims, in the order in which they were entered' })
  @ApiPage(ClaimView)
  @ApiProblems(422)
  listClaims(@Query() query: ClaimQuery): Promise<Page<ClaimView>> {
    return listClaims(this.dataSource.manager, query);
  }

  @Needs('read', 'claim')
  @Get(':id')
  @ApiOperation({ summary: 'One claim' })
  @ApiOkResponse({ type: ClaimView })
  @ApiProblems(404)
  getClaim(@Param('id') id: string): Promise<ClaimView> {
    return this.claims.get(id);
  }

  @Needs('add', 'claim')
  @Post()
  @ApiOperation({ summary: 'Add a claim about a source, a line or an animal' })
  @ApiCreatedResponse({ type: ClaimView })
  @ApiProblems(400, 409, 422)
  addClaim(@ActingKeeper() keeper: Acting, @Body() request: NewClaimRequest): Promise<ClaimView> {
    return this.claims.add(keeper, request);
  }

  @Needs('change', 'claim')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a claim; the words of the label stay as they are' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ClaimView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeClaim(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: ClaimChangeRequest,
  ): Promise<ClaimView> {
    return this.claims.change(id, match, request);
  }

  @Needs('change', 'claim')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a claim; its evidence counts no longer' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: ClaimView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawClaim(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<ClaimView> {
    return this.withdrawals.withdraw(claimKind, id, match, request.reason);
  }

  @Needs('change', 'claim')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn claim' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ClaimView })
  @ApiProblems(404, 409, 412, 428)
  restoreClaim(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<ClaimView> {
    return this.withdrawals.restore(claimKind, id, match);
  }
}
