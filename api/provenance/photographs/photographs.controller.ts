import {
  Body,
  Controller,
  Delete,
  Get,
  Inject,
  Param,
  Patch,
  Post,
  Query,
  Req,
  Res,
  type StreamableFile,
} from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import { Needs } from '../../people/permission.guard.ts';
import { ActingKeeper, type Acting } from '../../platform/acting.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { ApiPage, type Page } from '../../platform/paging.ts';
import { WithdrawalRequest } from '../../register/withdrawal.dto.ts';
import { WithdrawalService } from '../../register/withdrawal.service.ts';
import { ApiFile } from '../files/api-file.ts';
import { receivedFile, type FileRequest } from '../files/received-file.ts';
import { serveFile } from '../files/serve-file.ts';
import {
  NewPhotographRequest,
  PhotographChangeRequest,
  PhotographForm,
  PhotographQuery,
  PictureQuery,
} from './photograph.dto.ts';
import { listPhotographs } from './photograph.queries.ts';
import { PhotographRecordView } from './photograph.view.ts';
import { PhotographsService, photographKind } from './photographs.service.ts';

@ApiTags('photographs')
@Controller('photographs')
export class PhotographsController {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(PhotographsService) private readonly photographs: PhotographsService,
    @Inject(WithdrawalService) private readonly withdrawals: WithdrawalService,
  ) {}

  @Needs('read', 'photograph')
  @Get()
  @ApiOperation({ summary: 'Photographs of animals, those taken last first' })
  @ApiPage(PhotographRecordView)
  @ApiProblems(422)
  listPhotographs(@Query() query: PhotographQuery): Promise<Page<PhotographRecordView>> {
    return listPhotographs(this.dataSource.manager, query);
  }

  @Needs('read', 'photograph')
  @Get(':id')
  @ApiOperation({ summary: 'What is known of one photograph' })
  @ApiOkResponse({ type: PhotographRecordView })
  @ApiProblems(404)
  getPhotograph(@Param('id') id: string): Promise<PhotographRecordView> {
    return this.photographs.get(id);
  }

  @Needs('read', 'photograph')
  @Get(':id/file')
  @ApiOperation({
    summary: 'The picture of a photograph',
    description:
      'Made anew from the pixels of what was sent, so that it tells no position. To whoever may see the animal. Its ETag never changes.',
  })
  @ApiFile('image/jpeg')
  @ApiProblems(404, 422, 503)
  async getPicture(
    @Param('id') id: string,
    @Query() query: PictureQuery,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile | undefined> {
    return serveFile(request, response, await this.photographs.picture(id, query));
  }

  @Needs('add', 'photograph')
  @Post()
  @ApiOperation({
    summary: 'Add a photograph of an animal',
    description:
      'A form with the picture as `file`: JPEG, PNG, WebP or AVIF by its content, at most 25 MB if nothing else is set, and 60 million pixels. It ' +
      'is decoded and made anew as a JPEG of at most 4096 pixels, upright, without its position or anything else that the file held. The keeper of the animal ' +
      'and registrars may add one.',
  })
  @ApiConsumes('multipart/form-data')
  @ApiBody({ type: PhotographForm })
  @ApiCreatedResponse({ type: PhotographRecordView })
  @ApiProblems(400, 409, 413, 415, 422, 503)
  addPhotograph(
    @ActingKeeper() keeper: Acting,
    @Body() request: NewPhotographRequest,
    @Req() sent: FileRequest,
  ): Promise<PhotographRecordView> {
    return this.photographs.add(keeper, request, receivedFile(sent));
  }

  @Needs('change', 'photograph')
  @Patch(':id')
  @ApiOperation({ summary: 'Change what is said of a photograph; the picture stays' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PhotographRecordView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  changePhotograph(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: PhotographChangeRequest,
  ): Promise<PhotographRecordView> {
    return this.photographs.change(id, match, request);
  }

  @Needs('change', 'photograph')
  @Post(':id/withdrawal')
  @ApiOperation({ summary: 'Withdraw a photograph; it is listed no more' })
  @ApiIfMatch()
  @ApiCreatedResponse({ type: PhotographRecordView })
  @ApiProblems(400, 404, 409, 412, 422, 428)
  withdrawPhotograph(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Body() request: WithdrawalRequest,
  ): Promise<PhotographRecordView> {
    return this.withdrawals.withdraw(photographKind, id, match, request.reason);
  }

  @Needs('change', 'photograph')
  @Delete(':id/withdrawal')
  @ApiOperation({ summary: 'Restore a withdrawn photograph' })
  @ApiIfMatch()
  @ApiOkResponse({ type: PhotographRecordView })
  @ApiProblems(404, 409, 412, 428)
  restorePhotograph(@Param('id') id: string, @IfMatch() match: VersionMatch): Promise<PhotographRecordView> {
    return this.withdrawals.restore(photographKind, id, match);
  }
}
