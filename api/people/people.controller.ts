import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { ApiIfMatch, ApiProblems } from '../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../platform/etag.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { ClubService } from './club.service.ts';
import { KeepersService } from './keepers.service.ts';
import { ClubChangeRequest, KeeperChangeRequest } from './people.dto.ts';
import { listMembers } from './people.queries.ts';
import { ClubView, MemberView } from './people.view.ts';
import { Needs } from './permission.guard.ts';

@ApiTags('people')
@Controller()
export class PeopleController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(KeepersService) private readonly keepers: KeepersService,
    @Inject(ClubService) private readonly club: ClubService,
  ) {}

  @Needs('read', 'keeper')
  @Get('keepers')
  @ApiOperation({ summary: 'The keepers of the club, by name; those who left too' })
  @ApiPage(MemberView)
  @ApiProblems(422)
  listKeepers(@Query() query: PageQuery): Promise<Page<MemberView>> {
    return listMembers(this.dataSource.manager, query);
  }

  @Needs('read', 'keeper')
  @Get('keepers/:id')
  @ApiOperation({ summary: 'One keeper' })
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(404)
  getKeeper(@Param('id') id: string): Promise<MemberView> {
    return this.keepers.get(id);
  }

  @Needs('change', 'account')
  @Patch('keepers/:id')
  @ApiOperation({ summary: 'Change one’s own name or region; for administrators also those and the roles of others' })
  @ApiIfMatch()
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeKeeper(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: KeeperChangeRequest,
  ): Promise<MemberView> {
    return this.keepers.change(id, match, request);
  }

  @Needs('change', 'account')
  @Post('keepers/:id/departure')
  @ApiOperation({
    summary: 'Leave the club; for administrators also: note that somebody left',
    description: 'Ends every session, token and link of the keeper. The records stay, under the name.',
  })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: MemberView })
  @ApiProblems(404, 409, 412, 422, 428)
  departKeeper(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<MemberView> {
    return this.keepers.depart(id, match);
  }

  @Needs('change', 'keeper')
  @Delete('keepers/:id/departure')
  @ApiOperation({ summary: 'Take a keeper who left back in' })
  @ApiIfMatch()
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(404, 409, 412, 428)
  takeKeeperBack(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<MemberView> {
    return this.keepers.takeBack(id, match);
  }

  @Needs('read', 'club')
  @Get('club')
  @ApiOperation({ summary: 'The settings of the club' })
  @ApiOkResponse({ type: ClubView })
  @ApiProblems(404)
  getClub(): Promise<ClubView> {
    return this.club.get();
  }

  @Needs('change', 'club')
  @Patch('club')
  @ApiOperation({ summary: 'Change the settings of the club' })
  @ApiIfMatch()
  @ApiOkResponse({ type: ClubView })
  @ApiProblems(400, 404, 412, 422, 428)
  changeClub(@IfMatch() match: VersionMatch, @Body() request: ClubChangeRequest): Promise<ClubView> {
    return this.club.change(match, request);
  }
}
