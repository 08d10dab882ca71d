import { Body, Controller, HttpStatus, Inject, Post, Query, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { MayTake } from '../../platform/time-limits.ts';
import { ForeignSheetQuery, ForeignSheetRequest } from './foreign-sheet.dto.ts';
import { ForeignSheetView } from './foreign-sheet.view.ts';
import { ForeignSheetsService } from './foreign-sheets.service.ts';

@ApiTags('imports')
@Controller('foreign-sheets')
export class ForeignSheetsController {
  constructor(@Inject(ForeignSheetsService) private readonly sheets: ForeignSheetsService) {}

  @Needs('add', 'import')
  @MayTake(120)
  @Post()
  @ApiOperation({
    summary: 'Take in the animals of a provenance sheet that another register signed, with their ancestors',
    description:
      'The signature is checked with the keys of the registers that registrars here vouched for. Animals that came in by an earlier sheet are ' +
      'recognised by their number there, clutches and sources by what is told of them; what is known stays as it is. The rest is written as one ' +
      'import of the acting keeper, each record noting whence it came. Claims come in as stated by the other register, with the sheet as a paper that ' +
      'waits for a review: nothing is documented here because it was there. Undo it as any import.',
  })
  @ApiCreatedResponse({ type: ForeignSheetView, description: 'The animals came in.' })
  @ApiOkResponse({ type: ForeignSheetView, description: 'The sheet was only checked.' })
  @ApiProblems(400, 409, 413, 422)
  async takeForeignSheet(
    @ActingKeeper() keeper: Acting,
    @Query() { dryRun, visibility }: ForeignSheetQuery,
    @Body() request: ForeignSheetRequest,
    @Res({ passthrough: true }) response: Response,
  ): Promise<ForeignSheetView> {
    if (!dryRun) return this.sheets.take(keeper, request, visibility);
    response.status(HttpStatus.OK);
    return this.sheets.check(keeper, request);
  }
}
