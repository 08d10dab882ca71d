import { Body, Controller, HttpStatus, Inject, Post, Query, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { ChangeTogetherRequest, TogetherQuery } from './together.dto.ts';
import { TogetherService } from './together.service.ts';
import { ChangedTogetherView } from './together.view.ts';

@ApiTags('individuals')
@Controller('individuals/changes')
export class TogetherController {
  constructor(@Inject(TogetherService) private readonly together: TogetherService) {}

  @Needs('change', 'individual')
  @Post()
  @ApiOperation({
    summary: 'Change several animals at once, all of them or none',
    description:
      'Fields that each of them gets, where they go to live, and a remark on each, any of these or all; in one transaction. Fields are for animals ' +
      'of one’s own (a registrar: all) at the version that was read; a move is for pairings of one’s own; a remark for any animal that one may see. ' +
      'Animals that are so already are left alone. With `dryRun` it tells what would become of each animal, and why not, and writes nothing. ' +
      'Each animal has its own entry in the journal, and the first entry of the request, whose id the header Journal-Entry carries, undoes all of it.',
  })
  @ApiCreatedResponse({ type: ChangedTogetherView, description: 'They were changed.' })
  @ApiOkResponse({ type: ChangedTogetherView, description: 'It was only looked at; nothing was written.' })
  @ApiProblems(400, 404, 409, 422)
  async changeTogether(
    @ActingKeeper() keeper: Acting,
    @Query() { dryRun }: TogetherQuery,
    @Body() request: ChangeTogetherRequest,
    @Res({ passthrough: true }) response: Response,
  ): Promise<ChangedTogetherView> {
    if (!dryRun) return this.together.change(keeper, request);
    response.status(HttpStatus.OK);
    return this.together.look(keeper, request);
  }
}
