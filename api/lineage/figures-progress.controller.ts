import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { Needs } from '../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { FiguresProgressService } from './figures-progress.service.ts';
import { FiguresProgressView } from './figures-progress.view.ts';

/** How far the stored figures have come. */
@ApiTags('lineage')
@Controller('lineage')
export class FiguresProgressController {
  constructor(@Inject(FiguresProgressService) private readonly progress: FiguresProgressService) {}

  @Needs('ask', 'lineage')
  @Get('progress')
  @ApiOperation({
    summary: 'Whether the stored figures follow every change, and how far a recomputation has come',
    description:
      'With `Accept: text/event-stream` the answer is a stream of events named `progress`, one now and one at every change, each carrying the same ' +
      'object as JSON; it stays open until one side leaves. At most eight streams a keeper.',
  })
  @ApiProduces('application/json', 'text/event-stream')
  @ApiOkResponse({ type: FiguresProgressView })
  @ApiProblems(429)
  tellProgress(@ActingKeeper() keeper: Acting, @Req() request: Request, @Res() response: Response): Promise<void> {
    return this.progress.answer(keeper, request, response);
  }
}
