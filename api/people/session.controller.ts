import { Body, Controller, Delete, Get, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { viewer } from '../platform/acting.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { ForAnyone } from '../platform/for-anyone.ts';
import { Unkept } from '../platform/idempotency.interceptor.ts';
import { Needs } from './permission.guard.ts';
import { DemoSignInRequest, SetupRequest, SignInRequest } from './session.dto.ts';
import { SessionService } from './session.service.ts';
import { SessionView } from './session.view.ts';
import { SetupService } from './setup.service.ts';

@ApiTags('signing in')
@Controller()
export class SessionController {
  constructor(
    @Inject(SessionService) private readonly sessions: SessionService,
    @Inject(SetupService) private readonly setup: SetupService,
  ) {}

  @ForAnyone()
  @Get('session')
  @ApiOperation({ summary: 'Who asks, in which club, and what they may do' })
  @ApiOkResponse({ type: SessionView })
  @ApiProblems(401)
  getSession(): Promise<SessionView> {
    return this.sessions.describe(viewer());
  }

  @ForAnyone()
  @Unkept()
  @Post('session')
  @ApiOperation({
    summary: 'Sign in with name and passphrase',
    description: 'The answer sets the cookie of the session: HttpOnly, 7 days without use, 30 days at most.',
  })
  @ApiCreatedResponse({ type: SessionView })
  @ApiProblems(400, 401, 403, 422, 429)
  signIn(@Req() request: Request, @Body() body: SignInRequest): Promise<SessionView> {
    return this.sessions.signIn(request, body);
  }

  @ForAnyone()
  @Unkept()
  @Post('session/demo')
  @ApiOperation({ summary: 'Sign in as an invented keeper; in a demo club only' })
  @ApiCreatedResponse({ type: SessionView })
  @ApiProblems(400, 403, 404, 422)
  signInToDemo(@Req() request: Request, @Body() body: DemoSignInRequest): Promise<SessionView> {
    return this.sessions.signInToDemo(request, body);
  }

  @ForAnyone()
  @Delete('session')
  @ApiOperation({ summary: 'Sign out in this browser' })
  @ApiOkResponse({ type: SessionView })
  @ApiProblems(403)
  signOut(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<SessionView> {
    return this.sessions.signOut(request, response);
  }

  @Needs('change', 'account')
  @Delete('sessions')
  @ApiOperation({ summary: 'Sign out in every browser; tokens of programs stay' })
  @ApiOkResponse({ type: SessionView })
  @ApiProblems(401, 403)
  signOutEverywhere(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<SessionView> {
    return this.sessions.signOutEverywhere(request, response);
  }

  @ForAnyone()
  @Unkept()
  @Post('setup')
  @ApiOperation({
    summary: 'Name the club and its first administrator, who is signed in at once',
    description: 'Works once, with the code that the service prints in its terminal while nobody can administer it.',
  })
  @ApiCreatedResponse({ type: SessionView })
  @ApiProblems(400, 403, 409, 422, 429)
  setUp(@Req() request: Request, @Body() body: SetupRequest): Promise<SessionView> {
    return this.setup.setUp(request, body);
  }
}
