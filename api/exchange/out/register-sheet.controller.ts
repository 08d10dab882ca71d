import { Controller, Get, Inject, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { RegisterSheetQuery } from './register-sheet.dto.ts';
import { RegisterSheetService, SHEET_ANIMALS_MOST } from './register-sheet.service.ts';

@ApiTags('imports')
@Controller('exports/register-sheet')
export class RegisterSheetController {
  constructor(@Inject(RegisterSheetService) private readonly sheets: RegisterSheetService) {}

  @Needs('read', 'import')
  @Costs(asking, () => 20)
  @Get()
  @ApiOperation({
    summary: 'A register sheet of animals, for a spreadsheet or another register',
    description:
      `CSV in UTF-8 with commas, in the form that \`POST /imports\` takes: one row an animal in the order of their numbers, at most ${SHEET_ANIMALS_MOST}. ` +
      'Only what whoever asks may see: a parent that may not be seen is "?", a source that may not be seen is left out. Codes are made unique in ' +
      'the sheet, by the registry number where they are not. A text that a spreadsheet would take for a formula has an apostrophe before it.',
  })
  @ApiOkResponse({
    description: 'The sheet.',
    content: { 'text/csv': { schema: { type: 'string', description: 'A row of names, then a row an animal.' } } },
  })
  @ApiProblems(422)
  async getRegisterSheet(
    @Query() query: RegisterSheetQuery,
    @Res({ passthrough: true }) response: Response,
  ): Promise<string> {
    const sheet = await this.sheets.write(query);
    response.setHeader('Content-Type', 'text/csv; charset=utf-8; header=present');
    response.setHeader('Content-Disposition', 'attachment; filename="register-sheet.csv"');
    return sheet;
  }
}
