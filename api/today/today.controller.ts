import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { TodayQuery } from './today.dto.ts';
import { TodayService } from './today.service.ts';
import { TodayView } from './today.view.ts';

@ApiTags('today')
@Controller('today')
export class TodayController {
  constructor(@Inject(TodayService) private readonly today: TodayService) {}

  @Needs('read', 'clutch')
  @Get()
  @ApiOperation({
    summary: 'What is due: clutches, animals to sex, answers, reviews, warnings',
    description:
      'Days are reckoned from the profiles of the species: the usual range, else the known one. What is more than 60 days late is only counted. ' +
      'Clutches whose dates leave more than 31 days open are not expected on any day.',
  })
  @ApiOkResponse({ type: TodayView })
  @ApiProblems(422)
  getToday(@ActingKeeper() keeper: Acting, @Query() query: TodayQuery): Promise<TodayView> {
    return this.today.get(keeper, query);
  }
}
