import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { PlacesQuery } from './places.dto.ts';
import { findPlaces } from './places.queries.ts';
import { PlacesView } from './places.view.ts';

@ApiTags('claims')
@Controller('places')
export class PlacesController {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  @Needs('read', 'claim')
  @Get()
  @ApiOperation({
    summary: 'Claimed places for a map',
    description:
      'Standing claims of a place that has coordinates or at least a country, with how well each stands and how many founders it speaks of. ' +
      'Strangers see places generalised (Darwin Core dataGeneralizations), so that nobody is led to wild animals.',
  })
  @ApiOkResponse({ type: PlacesView })
  @ApiProblems(422)
  findPlaces(@Query() query: PlacesQuery): Promise<PlacesView> {
    return findPlaces(this.dataSource.manager, query);
  }
}
