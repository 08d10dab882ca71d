import { Body, Controller, Delete, Get, HttpStatus, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { MayTake } from '../platform/time-limits.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { WithdrawalRequest } from '../register/withdrawal.dto.ts';
import { ImportQuery } from './import.dto.ts';
import { ImportView, PastImportView, WholeImportView } from './import.view.ts';
import { ImportUndoService } from './import-undo.service.ts';
import { ImportsService } from './imports.service.ts';
import type { SheetRequest } from './receive-sheet.ts';

@ApiTags('imports')
@Controller('imports')
export class ImportsController {
  constructor(
    @Inject(ImportsService) private readonly imports: ImportsService,
    @Inject(ImportUndoService) private readonly undo: ImportUndoService,
  ) {}

  @Needs('add', 'import')
  @MayTake(600)
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
    if (!query.dryRun) return this.imports.take(keeper, request.sheet, query.visibility);
    response.status(HttpStatus.OK);
    return this.imports.check(keeper, request.sheet);
  }

  @Needs('read', 'import')
  @Get()
  @ApiOperation({
    summary: 'Imports of the past, newest first, but for those that made something private of another keeper',
  })
  @ApiPage(PastImportView)
  @ApiProblems(422)
  listImports(@Query() query: PageQuery): Promise<Page<PastImportView>> {
    return this.imports.list(query);
  }

  @Needs('read', 'import')
  @Get(':id')
  @ApiOperation({ summary: 'One import of the past, and how much of it still stands' })
  @ApiOkResponse({ type: WholeImportView })
  @ApiProblems(404)
  getImport(@Param('id') id: string): Promise<WholeImportView> {
    return this.undo.get(id);
  }

  @Needs('change', 'import')
  @MayTake(600)
  @Post(':id/withdrawal')
  @ApiOperation({
    summary: 'Undo an import: withdraw everything that it made and that still stands',
    description:
      'All of it or nothing, and only while no standing record from outside needs one that the import made: young, clutches, animals of its ' +
      'lines, stays in pairings, remarks, mergings. Else 409 names the first twenty as `dependants`, with their number as `total`, private ' +
      'records of other keepers among them as `privateCount`. The sheet can then be taken again. Its keeper and registrars may do it.',
  })
  @ApiCreatedResponse({ type: WholeImportView })
  @ApiProblems(400, 404, 409, 422)
  undoImport(@Param('id') id: string, @Body() request: WithdrawalRequest): Promise<WholeImportView> {
    return this.undo.withdraw(id, request.reason);
  }

  @Needs('change', 'import')
  @MayTake(600)
  @Delete(':id/withdrawal')
  @ApiOperation({
    summary: 'Restore an import that was undone, as a whole',
    description:
      '409 names as `taken` the records that have codes or names of it meanwhile, or as `dependants` the withdrawn records that it needs.',
  })
  @ApiOkResponse({ type: WholeImportView })
  @ApiProblems(404, 409)
  restoreImport(@Param('id') id: string): Promise<WholeImportView> {
    return this.undo.restore(id);
  }
}
