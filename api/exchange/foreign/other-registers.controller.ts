import { Body, Controller, Delete, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { ApiPage, PageQuery, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../../register/withdrawal.dto.ts';
import { MoreKeysRequest, NewOtherRegisterRequest } from './other-register.dto.ts';
import { OtherRegisterView } from './other-register.view.ts';
import { listOtherRegisters } from './other-registers.queries.ts';
import { OtherRegistersService } from './other-registers.service.ts';

@ApiTags('other registers')
@Controller('other-registers')
export class OtherRegistersController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(OtherRegistersService) private readonly registers: OtherRegistersService,
  ) {}

  @Needs('read', 'other-register')
  @Get()
  @ApiOperation({ summary: 'Registers of other clubs whose sheets are, or were, believed here' })
  @ApiPage(OtherRegisterView)
  @ApiProblems(422)
  listOtherRegisters(@Query() query: PageQuery): Promise<Page<OtherRegisterView>> {
    return listOtherRegisters(this.dataSource.manager, query);
  }

  @Needs('read', 'other-register')
  @Get(':id')
  @ApiOperation({ summary: 'One register of another club' })
  @ApiOkResponse({ type: OtherRegisterView })
  @ApiProblems(404)
  getOtherRegister(@Param('id') id: string): Promise<OtherRegisterView> {
    return this.registers.get(id);
  }

  @Needs('add', 'other-register')
  @Post()
  @ApiOperation({
    summary: 'Believe the sheets of another register, by its keys',
    description:
      'For registrars. The service fetches nothing: the file of keys is handed in, and whoever hands it in has compared the names of the keys with somebody there.',
  })
  @ApiCreatedResponse({ type: OtherRegisterView })
  @ApiProblems(400, 409, 422)
  addOtherRegister(
    @ActingKeeper() keeper: Acting,
    @Body() request: NewOtherRegisterRequest,
  ): Promise<OtherRegisterView> {
    return this.registers.add(keeper, request);
  }

  @Needs('change', 'other-register')
  @Post(':id/keys')
  @ApiOperation({ summary: 'Add keys that another register took up since' })
  @ApiCreatedResponse({ type: OtherRegisterView })
  @ApiProblems(400, 404, 409, 422)
  addKeysOfOtherRegister(@Param('id') id: string, @Body() request: MoreKeysRequest): Promise<OtherRegisterView> {
    return this.registers.addKeys(id, request);
  }

  @Needs('change', 'other-register')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Believe the sheets of another register no more; what came in stays' })
  @ApiCreatedResponse({ type: OtherRegisterView })
  @ApiProblems(400, 404, 409, 422)
  withdrawOtherRegister(@Param('id') id: string, @Body() request: WithdrawalRequest): Promise<OtherRegisterView> {
    return this.registers.withdraw(id, request.reason);
  }

  @Needs('change', 'other-register')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Believe the sheets of another register again' })
  @ApiOkResponse({ type: OtherRegisterView })
  @ApiProblems(404, 409)
  restoreOtherRegister(@Param('id') id: string): Promise<OtherRegisterView> {
    return this.registers.restore(id);
  }
}
