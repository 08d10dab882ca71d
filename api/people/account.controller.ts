import { Body, Controller, Delete, Get, Inject, Param, Post, Put, Query, Req } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { ApiProblems } from '../platform/api-problems.ts';
import { ShownOnce } from '../platform/idempotency.interceptor.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { NewTokenRequest, PassphraseChangeRequest } from './account.dto.ts';
import { NewTokenView, TokenView } from './account.view.ts';
import { PassphraseChangeService } from './passphrase-change.service.ts';
import { Needs } from './permission.guard.ts';
import { SessionView } from './session.view.ts';
import { TokensService } from './tokens.service.ts';

@ApiTags('account')
@Controller('account')
export class AccountController {
  constructor(
    @Inject(PassphraseChangeService) private readonly passphrase: PassphraseChangeService,
    @Inject(TokensService) private readonly tokens: TokensService,
  ) {}

  @Needs('change', 'account')
  @Put('password')
  @ApiOperation({ summary: 'Change one’s own passphrase; every other session of the keeper ends' })
  @ApiOkResponse({ type: SessionView })
  @ApiProblems(400, 409, 422)
  changePassphrase(@Req() request: Request, @Body() body: PassphraseChangeRequest): Promise<SessionView> {
    return this.passphrase.change(request, body);
  }

  @Needs('add', 'account')
  @ShownOnce()
  @Post('tokens')
  @ApiOperation({
    summary: 'Make a token for a program',
    description:
      'In a session only. The secret is in this answer and stored nowhere; a repeat under the same Idempotency-Key gets 409.',
  })
  @ApiCreatedResponse({ type: NewTokenView })
  @ApiProblems(400, 409, 422)
  makeToken(@Body() request: NewTokenRequest): Promise<NewTokenView> {
    return this.tokens.make(request);
  }

  @Needs('read', 'account')
  @Get('tokens')
  @ApiOperation({ summary: 'One’s own tokens, the newest first' })
  @ApiPage(TokenView)
  @ApiProblems(422)
  listTokens(@Query() query: PageQuery): Promise<Page<TokenView>> {
    return this.tokens.list(query);
  }

  @Needs('change', 'account')
  @Delete('tokens/:id')
  @ApiOperation({ summary: 'Revoke a token' })
  @ApiOkResponse({ type: TokenView })
  @ApiProblems(404)
  revokeToken(@Param('id') id: string): Promise<TokenView> {
    return this.tokens.revoke(id);
  }
}
