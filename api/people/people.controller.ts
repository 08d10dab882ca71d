import { Controller, Get, Inject, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../people/permission.guard.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { ActingKeeper, type Acting } from '../platform/acting.ts';
import { listKeepers, readClub } from './people.queries.ts';
import { ClubView, KeeperView } from './people.view.ts';

@ApiTags('people')
@Controller()
export class PeopleController {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  @Needs('read', 'keeper')
  @Get('keepers')
  @ApiOperation({ summary: 'The keepers of the club, by name' })
  @ApiPage(KeeperView)
  @ApiProblems(422)
  listKeepers(@Query() query: PageQuery): Promise<Page<KeeperView>> {
    return listKeepers(this.dataSource.manager, query);
  }

  @Needs('read', 'club')
  @Get('club')
  @ApiOperation({ summary: 'The club, and the keeper who acts' })
  @ApiOkResponse({ type: ClubView })
  async getClub(@ActingKeeper() keeper: Acting): Promise<ClubView> {
    const club = await readClub(this.dataSource.manager);
    return { name: club?.name ?? '', demo: club?.demo ?? false, actingKeeper: { id: keeper.id, name: keeper.name } };
  }
}
