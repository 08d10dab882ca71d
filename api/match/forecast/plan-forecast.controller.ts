import { Body, Controller, HttpCode, Inject, Param, Post, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { Unkept } from '../../platform/idempotency.interceptor.ts';
import { PlanForecastRequest } from './plan-forecast.dto.ts';
import { PlanForecastService } from './plan-forecast.service.ts';
import { PlanForecastView } from './plan-forecast.view.ts';

/** What would come of a plan. */
@ApiTags('match')
@Controller('lines/:id')
export class PlanForecastController {
  constructor(@Inject(PlanForecastService) private readonly forecasts: PlanForecastService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 100)
  // nothing is written, and a repeat is drawn alike; an answer that may be a stream is not kept
  @Unkept()
  @Post('plan-forecast')
  @HttpCode(200)
  @ApiOperation({
    summary:
      'Gene diversity, inbreeding and founder shares of the next generations under a plan, under the pairings of today, and at random',
    description: [
      'Gene dropping: each replicate draws the genes of the founders, with the base kinship of their sources, drops them through the recorded',
      'ancestry to the breeders, all young of a clutch by the same parents, and then through the matings of each course. Nothing is written.',
      'With `Accept: text/event-stream` the answer is a stream: events named `progress` with `done` and `total` (replicates), then one event',
      '`result` with the same object as the JSON answer, or one event `problem` with a problem document. Closing it ends the computation, as',
      'leaving the JSON answer does. At most eight streams a keeper. A question may cost at most some 50 seconds of computing, counted',
      'beforehand; over that the answer says how many replicates fit. An Idempotency-Key changes nothing.',
      "The figures advise; the animals' welfare and the keeper's eye decide.",
    ].join(' '),
  })
  @ApiParam({ name: 'id', description: 'Id of the line.', format: 'uuid' })
  @ApiProduces('application/json', 'text/event-stream')
  @ApiOkResponse({ type: PlanForecastView })
  @ApiProblems(400, 404, 409, 422, 503)
  askForecast(
    @ActingKeeper() keeper: Acting,
    @Param('id') id: string,
    @Body() body: PlanForecastRequest,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    return this.forecasts.answer({ keeper, request, response }, id, body);
  }
}
