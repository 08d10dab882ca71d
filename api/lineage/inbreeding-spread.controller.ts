import { Controller, Get, Inject, Param, Query, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { Needs } from '../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { asking, Costs } from '../platform/allowances.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { InbreedingSpreadQuery } from './inbreeding-spread.dto.ts';
import { InbreedingSpreadService } from './inbreeding-spread.service.ts';
import { InbreedingSpreadView } from './inbreeding-spread.view.ts';

/** Which coefficients an animal with uncertain ancestors can have. */
@ApiTags('lineage')
@Controller('individuals/:id/lineage')
export class InbreedingSpreadController {
  constructor(@Inject(InbreedingSpreadService) private readonly spreads: InbreedingSpreadService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 50)
  @Get('spread')
  @ApiOperation({
    summary: 'Which inbreeding coefficients one animal can have, where parents among its ancestors are uncertain',
    description: [
      'The expected F may be a value that no young can have. Each assignment chooses one candidate pair for every uncertain clutch among the',
      'ancestors, for all its young together, and F is then exact. Up to 4096 assignments are gone through one by one, more are drawn by their',
      'probabilities. With `Accept: text/event-stream` the answer is a stream: events named `progress` with `done` and `total` (assignments), then',
      'one event `result` with the same object as the JSON answer, or one event `problem` with a problem document. Closing it ends the',
      'computation. At most eight streams a keeper.',
    ].join(' '),
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiProduces('application/json', 'text/event-stream')
  @ApiOkResponse({ type: InbreedingSpreadView })
  @ApiProblems(404, 422, 503)
  getSpread(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Query() query: InbreedingSpreadQuery,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    return this.spreads.answer({ keeper, request, response }, id, query);
  }
}
