import { Controller, Get, HttpCode, Inject, Param, Post, Query, Req, Res, type StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiOperation, ApiParam, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { ForAnyone } from '../../platform/for-anyone.ts';
import { Unkept } from '../../platform/idempotency.interceptor.ts';
import { serveFile } from '../../provenance/files/serve-file.ts';
import { answerCacheable } from './answer-cacheable.ts';
import { PublicPictureQuery } from './public-sheet.dto.ts';
import { PublicSheetView, SheetVerificationView } from './public-sheet.view.ts';
import { PublicSheetsService } from './public-sheets.service.ts';
import { receivedSheetFile } from './receive-sheet-file.ts';
import { sendSheetFile, sendSheetPaper, sheetMediaType } from './send-sheet-file.ts';
import { SheetsService } from './sheets.service.ts';
import { AsItStands } from '../../platform/readers-words.interceptor.ts';

const token = { name: 'token', description: 'What stands at the end of the address that the QR code leads to.' };

/** Sheets for whoever was handed one: no account is needed, and whoever asks is told the same. */
@ApiTags('provenance sheets')
@AsItStands()
@Controller('sheets')
export class PublicSheetsController {
  constructor(
    @Inject(PublicSheetsService) private readonly sheets: PublicSheetsService,
    @Inject(SheetsService) private readonly papers: SheetsService,
  ) {}

  @ForAnyone()
  @Unkept()
  @Costs(asking)
  @Post('verification')
  @HttpCode(200)
  @ApiOperation({
    summary: 'What a sheet file is: genuine, changed, of another register, revoked',
    description:
      'Anybody may ask, of any file up to 1 MB; it is looked at and kept nowhere. Send its very bytes as application/jose+json or application/octet-stream, since a file that was read and ' +
      'written anew is another one.',
  })
  @ApiConsumes(sheetMediaType, 'application/octet-stream')
  @ApiBody({ description: 'The file.', schema: { type: 'string', format: 'binary' } })
  @ApiOkResponse({ type: SheetVerificationView })
  @ApiProblems(413, 415, 422)
  verifySheetFile(@Req() request: Request): Promise<SheetVerificationView> {
    return this.sheets.verify(receivedSheetFile(request));
  }

  @ForAnyone()
  @Get(':token')
  @ApiParam(token)
  @ApiOperation({
    summary:
      'A provenance sheet by its public address: is it genuine, does it still stand, what says the register today',
    description:
      'What became private since it was issued is not told, and neither is any difference that would tell of it. May be kept for a minute (ETag).',
  })
  @ApiOkResponse({ type: PublicSheetView })
  @ApiProblems(404)
  async getPublicSheet(
    @Param('token') name: string,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<PublicSheetView | undefined> {
    return answerCacheable(request, response, await this.sheets.get(name));
  }

  @ForAnyone()
  @Get(':token/file')
  @ApiParam(token)
  @ApiOperation({ summary: 'The signed file of a sheet by its public address' })
  @ApiProduces(sheetMediaType)
  @ApiOkResponse({ description: 'The file.', content: { [sheetMediaType]: { schema: { type: 'object' } } } })
  @ApiProblems(404, 410)
  async getPublicSheetFile(
    @Param('token') name: string,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile> {
    return sendSheetFile(response, await this.sheets.file(name));
  }

  @ForAnyone()
  @Get(':token/paper')
  @ApiParam(token)
  @ApiOperation({ summary: 'A sheet on paper by its public address: what its signed file says, as a PDF' })
  @ApiProduces('application/pdf')
  @ApiOkResponse({
    description: 'The document.',
    content: { 'application/pdf': { schema: { type: 'string', format: 'binary', description: 'A PDF.' } } },
  })
  @ApiProblems(404, 410, 503)
  async getPublicSheetPaper(@Param('token') name: string): Promise<StreamableFile> {
    return sendSheetPaper(await this.papers.paper(await this.sheets.file(name)));
  }

  @ForAnyone()
  @Get(':token/photographs/:sha256')
  @ApiParam(token)
  @ApiParam({ name: 'sha256', description: 'SHA-256 of the picture as the sheet has it, hexadecimal.' })
  @ApiOperation({ summary: 'A photograph that stands on a sheet' })
  @ApiProduces('image/jpeg')
  @ApiOkResponse({
    description: 'The picture.',
    content: { 'image/jpeg': { schema: { type: 'string', format: 'binary' } } },
  })
  @ApiProblems(404, 422, 503)
  async getPublicPhotograph(
    @Param('token') name: string,
    @Param('sha256') sha256: string,
    @Query() { size }: PublicPictureQuery,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile | undefined> {
    return serveFile(request, response, await this.sheets.photograph(name, sha256, size ?? 'whole'));
  }
}
