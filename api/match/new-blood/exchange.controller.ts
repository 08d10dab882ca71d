import { Body, Controller, HttpCode, Inject, Post, Req } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { signalOf } from '../../platform/given-up.ts';
import { ExchangeRequest } from './exchange.dto.ts';
import { ExchangeService } from './exchange.service.ts';
import { ExchangeView } from './exchange.view.ts';

@ApiTags('match')
@Controller('match/exchange')
export class ExchangeController {
  constructor(@Inject(ExchangeService) private readonly exchanges: ExchangeService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 50)
  @Post()
  @HttpCode(200)
  @ApiOperation({
    summary: 'What an exchange of animals between two keepers of a line does for both, and which ones would help both',
    description:
      'Measures what both have of a line before and after. Every exchange of one animal for one is tried; told are those after which both are more diverse, ' +
      'the best first. Who may not breed is not proposed, and told with the reason. Other lines and disputed labels are taken only where `allow` asks for ' +
      'them. Nothing is written; it is POSTed only because it can be long. ' +
      "The figures advise; the animals' welfare and the keeper's eye decide.",
  })
  @ApiOkResponse({ type: ExchangeView })
  @ApiProblems(400, 422, 503)
  measureExchange(@Body() asked: ExchangeRequest, @Req() request: Request): Promise<ExchangeView> {
    return this.exchanges.of(asked, signalOf(request));
  }
}
