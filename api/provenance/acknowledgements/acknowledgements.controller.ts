import { Body, Controller, Delete, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../../register/withdrawal.dto.ts';
import { WithdrawalService } from '../../register/withdrawal.service.ts';
import { AcknowledgementQuery } from './acknowledgement.dto.ts';
import { acknowledgementKind, listAcknowledgements } from './acknowledgement.queries.ts';
import { AcknowledgementView } from './acknowledgement.view.ts';
import { AcknowledgementsService } from './acknowledgements.service.ts';

/** Reading and withdrawing; the room of the lineage takes new ones, since it knows which flags there are. */
@ApiTags('acknowledgements')
@Controller('acknowledgements')
export class AcknowledgementsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(AcknowledgementsService) private readonly acknowledgements: AcknowledgementsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'acknowledgement')
  @Get()
  @ApiOperation({ summary: 'Acknowledged flags, in the order in which they were acknowledged' })
  @ApiPage(AcknowledgementView)
  @ApiProblems(422)
  listAcknowledgements(@Query() query: AcknowledgementQuery): Promise<Page<AcknowledgementView>> {
    return listAcknowledgements(this.dataSource.manager, query);
  }

  @Needs('read', 'acknowledgement')
  @Get(':id')
  @ApiOperation({ summary: 'One acknowledgement' })
  @ApiOkResponse({ type: AcknowledgementView })
  @ApiProblems(404)
  getAcknowledgement(@Param('id') id: string): Promise<AcknowledgementView> {
    return this.acknowledgements.get(id);
  }

  @Needs('change', 'acknowledgement')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw an acknowledgement; the flag is told without it' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: AcknowledgementView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawAcknowledgement(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<AcknowledgementView> {
    return this.withdrawals.withdraw(acknowledgementKind, id, match, request.reason);
  }

  @Needs('change', 'acknowledgement')
  @Delete(':id/withdrawal')
  @ApiOperation({
    summary: 'Restore a withdrawn acknowledgement',
    description: 'Refused with 409 where the flag was acknowledged anew meanwhile.',
  })
  @ApiIfMatch()
  @ApiOkResponse({ type: AcknowledgementView })
  @ApiProblems(404, 409, 412, 428)
  restoreAcknowledgement(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<AcknowledgementView> {
    return this.withdrawals.restore(acknowledgementKind, id, match);
  }
}
