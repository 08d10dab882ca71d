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
import {
  MemberChangeRequest,
  NewMemberRequest,
  NewPairingRequest,
  PairingChangeRequest,
  PairingQuery,
} from './pairing.dto.ts';
import { listPairings } from './pairing.queries.ts';
import { PairingsService, pairingKind } from './pairings.service.ts';
import { PairingView } from './pairing.view.ts';
import { ParentCorrectionsView } from './parent-correction.view.ts';

@ApiTags('pairings')
@Controller('pairings')
export class PairingsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(PairingsService) private readonly pairings: PairingsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'pairing')
  @Get()
  @ApiOperation({ summary: 'Pairings, by name' })
  @ApiPage(PairingView)
  @ApiProblems(422)
  listPairings(@Query() query: PairingQuery): Promise<Page<PairingView>> {
    return listPairings(this.dataSource.manager, query);
  }

  @Needs('read', 'pairing')
  @Get(':id')
  @ApiOperation({ summary: 'One pairing' })
  @ApiOkResponse({ type: PairingView })
  @ApiProblems(404)
  getPairing(@Param('id') id: string): Promise<PairingView> {
    return this.pairings.get(id);
  }

  @Needs('read', 'pairing')
  @Get(':id/parent-corrections')
  @ApiOperation({
    summary: 'Clutches whose recorded parents the housing contradicts',
    description: [
      'Offers to correct the clutches that a corrected date of joining or leaving, a laying date or a sex touches. Nothing changes',
      'by itself: to take one, send its `housed` parents with PATCH /clutches/{id} and its version in If-Match. Parents that came from',
      'the housing follow it; those that the keeper narrowed or gave odds are offered only once one of them did not live there, or',
      'an animal that did is missing among several at equal odds without a reason. Clutches without a laying date are not compared.',
    ].join(' '),
  })
  @ApiOkResponse({ type: ParentCorrectionsView })
  @ApiProblems(404)
  listParentCorrections(@Param('id') id: string): Promise<ParentCorrectionsView> {
    return this.pairings.corrections(id);
  }

  @Needs('add', 'pairing')
  @Post()
  @ApiOperation({ summary: 'Add a pairing' })
  @ApiCreatedResponse({ type: PairingView })
  @ApiProblems(400, 409, 422)
  addPairing(@ActingKeeper() keeper: Acting, @Body() request: NewPairingRequest): Promise<PairingView> {
    return this.pairings.add(keeper, request);
  }

  @Needs('change', 'pairing')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a pairing' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PairingView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changePairing(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: PairingChangeRequest,
  ): Promise<PairingView> {
    return this.pairings.change(id, match, request);
  }

  @Needs('change', 'pairing')
  @Post(':id/members')
  @ApiOperation({ summary: 'Let an animal join a pairing' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: PairingView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  addPairingMember(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: NewMemberRequest,
  ): Promise<PairingView> {
    return this.pairings.addMember(id, match, request);
  }

  @Needs('change', 'pairing')
  @Patch(':id/members/:memberId')
  @ApiOperation({ summary: 'Say when an animal joined or left a pairing' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PairingView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changePairingMember(
    @Param('id') id: string,
    @Param('memberId') memberId: string,
    @IfMatch() match: VersionMatch,
    @Body() request: MemberChangeRequest,
  ): Promise<PairingView> {
    return this.pairings.changeMember(id, memberId, match, request);
  }

  @Needs('change', 'pairing')
  @Delete(':id/members/:memberId')
  @ApiOperation({ summary: 'Remove a stay that was entered by mistake' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PairingView })
  @ApiProblems(404, 409, 412, 428)
  removePairingMember(
    @Param('id') id: string,
    @Param('memberId') memberId: string,
    @IfMatch() match: VersionMatch,
  ): Promise<PairingView> {
    return this.pairings.removeMember(id, memberId, match);
  }

  @Needs('change', 'pairing')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a pairing that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: PairingView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawPairing(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<PairingView> {
    return this.withdrawals.withdraw(pairingKind, id, match, request.reason);
  }

  @Needs('change', 'pairing')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn pairing' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PairingView })
  @ApiProblems(404, 409, 412, 428)
  restorePairing(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<PairingView> {
    return this.withdrawals.restore(pairingKind, id, match);
  }
}
