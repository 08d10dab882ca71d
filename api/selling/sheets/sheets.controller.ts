import { Body, Controller, Get, Inject, Param, Post, Query, Res, StreamableFile } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { asking, Costs, entries } from '../../platform/allowances.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { sendSheetFile, sendSheetPaper, sheetMediaType } from './send-sheet-file.ts';
import { NewSheetRequest, SheetQuery, SheetRevocationRequest } from './sheets.dto.ts';
import { SheetsService } from './sheets.service.ts';
import { SheetView } from './sheets.view.ts';
import { AsItStands } from '../../platform/readers-words.interceptor.ts';

@ApiTags('provenance sheets')
@AsItStands()
@Controller('provenance-sheets')
export class SheetsController {
  constructor(@Inject(SheetsService) private readonly sheets: SheetsService) {}

  @Needs('read', 'sheet')
  @Get()
  @ApiOperation({
    summary: 'Provenance sheets, the newest first',
    description: 'One’s own, those of animals that one keeps now, and to registrars all.',
  })
  @ApiPage(SheetView)
  @ApiProblems(422)
  listSheets(@Query() query: SheetQuery): Promise<Page<SheetView>> {
    return this.sheets.list(query);
  }

  @Needs('read', 'sheet')
  @Get(':id')
  @ApiOperation({ summary: 'One provenance sheet' })
  @ApiOkResponse({ type: SheetView })
  @ApiProblems(404)
  getSheet(@Param('id') id: string): Promise<SheetView> {
    return this.sheets.get(id);
  }

  @Needs('read', 'sheet')
  @Get(':id/file')
  @ApiOperation({
    summary: 'The signed file of a sheet, byte for byte as it was signed',
    description:
      'A flattened JWS (RFC 7515, 7.2.2) in canonical form (RFC 8785), signed with Ed25519 (RFC 8037), of which the payload stands beside the signature as `sheet`: the payload is the canonical ' +
      'text of that. `npm run sheet:verify` checks it without a server.',
  })
  @ApiProduces(sheetMediaType)
  @ApiOkResponse({ description: 'The file.', content: { [sheetMediaType]: { schema: { type: 'object' } } } })
  @ApiProblems(404)
  async getSheetFile(@Param('id') id: string, @Res({ passthrough: true }) response: Response): Promise<StreamableFile> {
    return sendSheetFile(response, await this.sheets.file(id));
  }

  @Needs('read', 'sheet')
  @Costs(asking, () => 20)
  @Get(':id/paper')
  @ApiOperation({
    summary: 'A sheet on paper',
    description:
      'What the signed file says, as a PDF: A4, tagged for screen readers, fonts embedded, ancestors drawn, with the QR code of the public page where the register has an address (PUBLIC_URL).',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({
    description: 'The document.',
    content: { 'application/pdf': { schema: { type: 'string', format: 'binary', description: 'A PDF.' } } },
  })
  @ApiProblems(404, 503)
  async getSheetPaper(@Param('id') id: string): Promise<StreamableFile> {
    return sendSheetPaper(await this.sheets.paper(await this.sheets.file(id)));
  }

  @Needs('add', 'sheet')
  @Costs(asking, (request) => 20 * entries(request, 'animals'))
  @Post()
  @ApiOperation({
    summary: 'Make and sign a provenance sheet of one’s own animals',
    description:
      'It says what the register knows at this moment: identity, label with its standing, sources, parents and four generations of ancestors, inbreeding with depth and completeness. What every ' +
      'member may see of ancestors stands on it, without codes, keepers, notes and exact places; private records are there by their place alone. It replaces older sheets of the same animals. ' +
      'What is signed is never changed or undone: it can be revoked.',
  })
  @ApiCreatedResponse({ type: SheetView })
  @ApiProblems(400, 409, 422, 503)
  makeSheet(@ActingKeeper() keeper: Acting, @Body() request: NewSheetRequest): Promise<SheetView> {
    return this.sheets.issue(keeper, request);
  }

  @Needs('change', 'sheet')
  @Post(':id/revocation')
  @ApiOperation({
    summary: 'Revoke a provenance sheet, for good',
    description:
      'Its public page says so, and why, and shows nothing else of it any more. A file that was handed out stays with whoever has it.',
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: SheetView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  revokeSheet(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: SheetRevocationRequest,
  ): Promise<SheetView> {
    return this.sheets.revoke(id, match, request.reason);
  }
}
