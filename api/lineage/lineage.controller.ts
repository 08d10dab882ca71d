import { Body, Controller, HttpCode, Inject, Post, UseInterceptors } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { asking, Costs, entries } from '../platform/allowances.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { PackedAnswer } from '../platform/packed-answer.interceptor.ts';
import { FiguresService } from './figures.service.ts';
import { FiguresView } from './figures.view.ts';
import { ForecastRequest } from './forecast.dto.ts';
import { ForecastService } from './forecast.service.ts';
import { ForecastView } from './forecast.view.ts';
import { FiguresRequest, KinshipRequest } from './kinship.dto.ts';
import { KinshipService } from './kinship.service.ts';
import { KinshipView } from './kinship.view.ts';

/** Questions about several animals at once: they change nothing, and are POSTed only because they can be long. */
@ApiTags('lineage')
@Controller('lineage')
export class LineageController {
  constructor(
    @Inject(KinshipService) private readonly kinships: KinshipService,
    @Inject(ForecastService) private readonly forecasts: ForecastService,
    @Inject(FiguresService) private readonly figures: FiguresService,
  ) {}

  @Needs('ask', 'lineage')
  @Costs(asking, (request) => 1 + Math.ceil(entries(request, 'individuals') ** 2 / 2500))
  @Post('kinship')
  @HttpCode(200)
  @ApiOperation({
    summary: 'How related some animals are to each other',
    description:
      'Up to 500 animals; of up to 60 also what their young would be. Counts only what the register knows; 0 means that no common ancestor is recorded.',
  })
  @ApiOkResponse({ type: KinshipView })
  @ApiProblems(400, 422)
  findKinship(@Body() request: KinshipRequest): Promise<KinshipView> {
    return this.kinships.among(request);
  }

  @Needs('ask', 'lineage')
  @Costs(asking, (request) => 1 + Math.ceil((entries(request, 'sires') * entries(request, 'dams')) / 40))
  @Post('forecast')
  @HttpCode(200)
  @ApiOperation({
    summary: 'What young of a pairing not yet made would be',
    description:
      'Inbreeding with its range over the possible pairs, label shares and flags. Any sire may pair with any dam, by their weights. Figures advise; the keeper decides.',
  })
  @ApiOkResponse({ type: ForecastView })
  @ApiProblems(400, 422)
  forecast(@Body() request: ForecastRequest): Promise<ForecastView> {
    return this.forecasts.of(request);
  }

  @Needs('ask', 'lineage')
  @Costs(asking, (request) => 1 + Math.ceil(entries(request, 'individuals') / 10))
  @UseInterceptors(PackedAnswer)
  @Post('figures')
  @HttpCode(200)
  @ApiOperation({
    summary: 'Inbreeding, standings and flags of a list of animals',
    description: 'Up to 200 animals, for lists that show figures beside each.',
  })
  @ApiOkResponse({ type: FiguresView })
  @ApiProblems(400, 422)
  listFigures(@Body() request: FiguresRequest): Promise<FiguresView> {
    return this.figures.of(request.individuals);
  }
}
