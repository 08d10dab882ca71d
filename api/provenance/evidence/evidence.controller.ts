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
import { EvidenceChangeRequest, EvidenceQuery, NewEvidenceRequest, ReviewRequest } from './evidence.dto.ts';
import { listEvidence } from './evidence.queries.ts';
import { EvidenceService, evidenceKind } from './evidence.service.ts';
import { EvidenceView } from './evidence.view.ts';

@ApiTags('evidence')
@Controller('evidence')
export class EvidenceController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(EvidenceService) private readonly evidence: EvidenceService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'evidence')
  @Get()
  @ApiOperation({ summary: 'Evidence, in the order in which it was brought' })
  @ApiPage(EvidenceView)
  @ApiProblems(422)
  listEvidence(@Query() query: EvidenceQuery): Promise<Page<EvidenceView>> {
    return listEvidence(this.dataSource.manager, query);
  }

  @Needs('read', 'evidence')
  @Get(':id')
  @ApiOperation({ summary: 'One piece of evidence' })
  @ApiOkResponse({ type: EvidenceView })
  @ApiProblems(404)
  getEvidence(@Param('id') id: string): Promise<EvidenceView> {
    return this.evidence.get(id);
  }

  @Needs('add', 'evidence')
  @Post()
  @ApiOperation({ summary: 'Bring evidence that bears on a claim; it waits for a review' })
  @ApiCreatedResponse({ type: EvidenceView })
  @ApiProblems(400, 409, 422)
  addEvidence(@ActingKeeper() keeper: Acting, @Body() request: NewEvidenceRequest): Promise<EvidenceView> {
    return this.evidence.add(keeper, request);
  }

  @Needs('change', 'evidence')
  @Patch(':id')
  @ApiOperation({ summary: 'Change evidence that nobody has reviewed yet' })
  @ApiIfMatch()
  @ApiOkResponse({ type: EvidenceView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeEvidence(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: EvidenceChangeRequest,
  ): Promise<EvidenceView> {
    return this.evidence.change(id, match, request);
  }

  @Needs('review', 'evidence')
  @Post(':id/review')
  @ApiOperation({ summary: "Accept or reject another keeper's evidence, with a reason" })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: EvidenceView })
  @ApiProblems(400, 403, 404, 409, 412, 422, 428)
  reviewEvidence(
    @ActingKeeper() reviewer: Acting,
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: ReviewRequest,
  ): Promise<EvidenceView> {
    return this.evidence.review(reviewer, id, match, request);
  }

  @Needs('change', 'evidence')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw evidence; it counts no longer' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: EvidenceView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawEvidence(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<EvidenceView> {
    return this.withdrawals.withdraw(evidenceKind, id, match, request.reason);
  }

  @Needs('change', 'evidence')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore withdrawn evidence' })
  @ApiIfMatch()
  @ApiOkResponse({ type: EvidenceView })
  @ApiProblems(404, 409, 412, 428)
  restoreEvidence(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<EvidenceView> {
    return this.withdrawals.restore(evidenceKind, id, match);
  }
}
