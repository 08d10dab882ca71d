import { Body, Controller, Delete, Get, Inject, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../withdrawal.dto.ts';
import { WithdrawalService } from '../withdrawal.service.ts';
import { NewLineRequest, LineChangeRequest, LineQuery } from './line.dto.ts';
import { listLines } from './line.queries.ts';
import { LinesService, lineKind } from './lines.service.ts';
import { LineView } from './line.view.ts';

@ApiTags('lines')
@Controller('lines')
export class LinesController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(LinesService) private readonly lines: LinesService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'line')
  @Get()
  @ApiOperation({ summary: 'Lines, by name' })
  @ApiPage(LineView)
  @ApiProblems(422)
  listLines(@Query() query: LineQuery): Promise<Page<LineView>> {
    return listLines(this.dataSource.manager, query);
  }

  @Needs('read', 'line')
  @Get(':id')
  @ApiOperation({ summary: 'One line' })
  @ApiOkResponse({ type: LineView })
  @ApiProblems(404)
  getLine(@Param('id') id: string): Promise<LineView> {
    return this.lines.get(id);
  }

  @Needs('add', 'line')
  @Post()
  @ApiOperation({ summary: 'Add a line' })
  @ApiCreatedResponse({ type: LineView })
  @ApiProblems(400, 409, 422)
  addLine(@Body() request: NewLineRequest): Promise<LineView> {
    return this.lines.add(request);
  }

  @Needs('change', 'line')
  @Patch(':id')
  @ApiOperation({ summary: 'Change a line' })
  @ApiIfMatch()
  @ApiOkResponse({ type: LineView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changeLine(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: LineChangeRequest,
  ): Promise<LineView> {
    return this.lines.change(id, match, request);
  }

  @Needs('change', 'line')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a line that no standing record needs' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: LineView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawLine(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<LineView> {
    return this.withdrawals.withdraw(lineKind, id, match, request.reason);
  }

  @Needs('change', 'line')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn line' })
  @ApiIfMatch()
  @ApiOkResponse({ type: LineView })
  @ApiProblems(404, 409, 412, 428)
  restoreLine(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<LineView> {
    return this.withdrawals.restore(lineKind, id, match);
  }
}
