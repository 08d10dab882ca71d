import { Controller, Get, HttpStatus, Inject, Post, Query, Req, Res } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { Costs, sending } from '../platform/allowances.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { ImportQuery } from './import.dto.ts';
import { ImportView, PastImportView } from './import.view.ts';
import { ImportsService } from './imports.service.ts';
import type { SheetRequest } from './receive-sheet.ts';

@ApiTags('imports')
@Controller('imports')
export class ImportsController {
  constructor(@Inject(ImportsService) private readonly imports: ImportsService) {}

  @Needs('add', 'import')
  @Costs(sending)
  @Post()
  @ApiOperation({
    summary: 'Take a register sheet into the register, whole or not at all',
    description:
      'The body is a CSV file in UTF-8, divided by comma, semicolon or tab, at most 100 MB and 1 000 000 animals. A refused sheet is told ' +
      'every problem with row, column and remedy (the first 1000, and their number as `problemCount`); nothing of it is stored.',
  })
  @ApiConsumes('text/csv', 'multipart/form-data')
  @ApiBody({
    schema: {
      type: 'object',
      required: ['file'],
      properties: { file: { type: 'string', format: 'binary', description: 'The sheet.' } },
    },
    description: 'The sheet itself as text/csv, or a form with the sheet as `file`.',
  })
  @ApiCreatedResponse({ type: ImportView, description: 'The sheet was taken.' })
  @ApiOkResponse({ type: ImportView, description: 'The sheet was checked and could be taken; nothing was stored.' })
  @ApiProblems(400, 409, 413, 415, 422, 503)
  async importSheet(
    @ActingKeeper() keeper: Acting,
    @Query() query: ImportQuery,
    @Req() request: SheetRequest,
    @Res({ passthrough: true }) response: Response,
  ): Promise<ImportView> {
    if (!request.sheet) throw new Error('no sheet was received: the middleware of this route is missing');
    if (!query.dryRun) return this.imports.take(keeper, request.sheet);
    response.status(HttpStatus.OK);
    return this.imports.check(keeper, request.sheet);
  }

  @Needs('read', 'import')
  @Get()
  @ApiOperation({ summary: 'Imports of the past, newest first' })
  @ApiPage(PastImportView)
  @ApiProblems(422)
  listImports(@Query() query: PageQuery): Promise<Page<PastImportView>> {
    return this.imports.list(query);
  }
}
