import { Body, Controller, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import {
  AcceptanceRequest,
  NewTransferRequest,
  ReturnRequest,
  TransferQuery,
  TransferReasonRequest,
} from './transfer.dto.ts';
import { listTransfers } from './transfer.queries.ts';
import { TransfersService } from './transfers.service.ts';
import { TransferItemView, TransferView } from './transfer.view.ts';

@ApiTags('transfers')
@Controller('transfers')
export class TransfersController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(TransfersService) private readonly transfers: TransfersService,
  ) {}

  @Needs('read', 'transfer')
  @Get()
  @ApiOperation({
    summary: 'Transfers, newest first',
    description:
      'An offer is seen by its two keepers and registrars; once animals changed hands or left, by every member who may see one of them. ' +
      'Who took animals out of the club, notes and reasons are told to the two (registrars) alone.',
  })
  @ApiPage(TransferItemView)
  @ApiProblems(422)
  listTransfers(@Query() query: TransferQuery): Promise<Page<TransferItemView>> {
    return listTransfers(this.dataSource.manager, query);
  }

  @Needs('read', 'transfer')
  @Get(':id')
  @ApiOperation({ summary: 'One transfer with its animals' })
  @ApiOkResponse({ type: TransferView })
  @ApiProblems(404)
  getTransfer(@Param('id') id: string): Promise<TransferView> {
    return this.transfers.get(id);
  }

  @Needs('add', 'transfer')
  @Post()
  @ApiOperation({
    summary: 'Offer animals to another keeper, or note that they left the club',
    description:
      'Offered animals stay with the giver until the other keeper accepts; meanwhile that keeper sees their records, private ones too. An animal ' +
      'is in one open offer at most. Animals that left the club are gone from then on: their record stays, with their keeper, and their ' +
      'stays in pairings end on the date. A registrar can do it for the keeper of the animals.',
  })
  @ApiCreatedResponse({ type: TransferView })
  @ApiProblems(400, 409, 422)
  addTransfer(@Body() request: NewTransferRequest): Promise<TransferView> {
    return this.transfers.add(request);
  }

  @Needs('change', 'transfer')
  @Post(':id/acceptance')
  @ApiOperation({
    summary: 'Take the animals of an offer',
    description:
      'The records themselves pass to the receiver, all or none, with everything that is known of them. Stays in pairings of other keepers end on ' +
      'the date. The giver still sees the animals, also if the receiver makes them private. A registrar can answer for the receiver, but not an ' +
      'offer of their own. 409 says what happened meanwhile (`current` is the transfer as it is now), what stands against it (`changed`), or which ' +
      'codes are taken (`errors`).',
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: TransferView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  acceptTransfer(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: AcceptanceRequest,
  ): Promise<TransferView> {
    return this.transfers.accept(id, match, request);
  }

  @Needs('change', 'transfer')
  @Post(':id/refusal')
  @ApiOperation({ summary: 'Decline an offer; nothing changes hands' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: TransferView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  declineTransfer(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() { reason = null }: TransferReasonRequest,
  ): Promise<TransferView> {
    return this.transfers.decline(id, match, reason);
  }

  @Needs('change', 'transfer')
  @Post(':id/withdrawal')
  @ApiOperation({
    summary: 'Take an open offer back, or put animals back that had not left the club',
    description:
      'A departure is put back as it was: the animals live with their keeper, and their stays go on; what was corrected meanwhile stays. Refused ' +
      'with 409 where an animal came back, died or was withdrawn since, or a stay was changed (`changed` names them).',
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: TransferView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawTransfer(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() { reason = null }: TransferReasonRequest,
  ): Promise<TransferView> {
    return this.transfers.withdraw(id, match, reason);
  }

  @Needs('change', 'transfer')
  @Post(':id/returns')
  @ApiOperation({
    summary: 'Note that animals came back which had left the club',
    description: 'They live with the keeper of their record again; that they were away stays on record.',
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: TransferView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  returnAnimals(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: ReturnRequest,
  ): Promise<TransferView> {
    return this.transfers.comeBack(id, match, request);
  }
}
