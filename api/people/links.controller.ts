import { Body, Controller, Delete, Get, Inject, Param, Post, Query, Req } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { ApiProblems } from '../platform/api-problems.ts';
import { ForAnyone } from '../platform/for-anyone.ts';
import { ShownOnce, Unkept } from '../platform/idempotency.interceptor.ts';
import { ApiPage, PageQuery, type Page } from '../platform/paging.ts';
import { JoiningService } from './joining.service.ts';
import { LinkUseRequest, NewLinkRequest } from './links.dto.ts';
import { LinksService } from './links.service.ts';
import { LinkOfferView, LinkView, NewLinkView } from './links.view.ts';
import { Needs } from './permission.guard.ts';
import { SessionView } from './session.view.ts';

@ApiTags('links')
@Controller('links')
export class LinksController {
  constructor(
    @Inject(LinksService) private readonly links: LinksService,
    @Inject(JoiningService) private readonly joining: JoiningService,
  ) {}

  @Needs('add', 'link')
  @ShownOnce()
  @Post()
  @ApiOperation({
    summary: 'Make a link by which somebody joins the club, or sets a new passphrase',
    description:
      'The secret is in this answer and stored nowhere; a repeat under the same Idempotency-Key gets 409. An invitation lasts 7 days, a reset 1 day; each works once.',
  })
  @ApiCreatedResponse({ type: NewLinkView })
  @ApiProblems(400, 409, 422)
  makeLink(@Body() request: NewLinkRequest): Promise<NewLinkView> {
    return this.links.make(request);
  }

  @Needs('read', 'link')
  @Get()
  @ApiOperation({ summary: 'Links that can still be used, the newest first' })
  @ApiPage(LinkView)
  @ApiProblems(422)
  listLinks(@Query() query: PageQuery): Promise<Page<LinkView>> {
    return this.links.list(query);
  }

  @Needs('change', 'link')
  @Delete(':link')
  @ApiParam({ name: 'link', description: 'Id of the link.' })
  @ApiOperation({ summary: 'Revoke a link' })
  @ApiOkResponse({ type: LinkView })
  @ApiProblems(404)
  revokeLink(@Param('link') id: string): Promise<LinkView> {
    return this.links.revoke(id);
  }

  @ForAnyone()
  @Get(':link')
  @ApiParam({ name: 'link', description: 'The secret at the end of the link.' })
  @ApiOperation({ summary: 'What a link offers to whoever opens it' })
  @ApiOkResponse({ type: LinkOfferView })
  @ApiProblems(404)
  lookAtLink(@Param('link') secret: string): Promise<LinkOfferView> {
    return this.joining.look(secret);
  }

  @ForAnyone()
  @Unkept()
  @Post(':link/use')
  @ApiParam({ name: 'link', description: 'The secret at the end of the link.' })
  @ApiOperation({ summary: 'Use a link: join the club or set a new passphrase, and be signed in' })
  @ApiCreatedResponse({ type: SessionView })
  @ApiProblems(400, 404, 409, 422)
  useLink(@Req() request: Request, @Param('link') secret: string, @Body() body: LinkUseRequest): Promise<SessionView> {
    return this.joining.use(request, secret, body);
  }
}
