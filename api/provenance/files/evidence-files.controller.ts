import { Controller, Get, Inject, Param, Put, Req, Res, type StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ApiIfMatch, ApiProblems } from '../../platform/api-problems.ts';
import { IfMatch, type VersionMatch } from '../../platform/etag.ts';
import { EvidenceView } from '../evidence/evidence.view.ts';
import { ApiFile } from './api-file.ts';
import { EvidenceFilesService } from './evidence-files.service.ts';
import { receivedFile, type FileRequest } from './received-file.ts';
import { serveFile } from './serve-file.ts';

@ApiTags('evidence')
@Controller('evidence/:id/file')
export class EvidenceFilesController {
  constructor(@Inject(EvidenceFilesService) private readonly files: EvidenceFilesService) {}

  @Needs('read', 'evidence')
  @Get()
  @ApiOperation({
    summary: 'The file of a piece of evidence',
    description: 'To members who may see its claim. A PDF is a download; a picture was made anew from its pixels.',
  })
  @ApiFile('application/pdf', 'image/jpeg', 'image/png', 'image/webp')
  @ApiProblems(404, 503)
  async getEvidenceFile(
    @Param('id') id: string,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StreamableFile | undefined> {
    return serveFile(request, response, await this.files.get(id));
  }

  @Needs('change', 'evidence')
  @Put()
  @ApiOperation({
    summary: 'Put a file to a piece of evidence that nobody has reviewed yet',
    description:
      'The body is the file itself, or a form with the file as `file`: a PDF of at most 20 MB, or a picture (JPEG, PNG, WebP, AVIF) of at most 25 MB, if ' +
      'nothing else is set. What it is is told by its content. A PDF with a script, a form that sends, another file inside or a lock is refused; a picture is made anew from its ' +
      'pixels. Only the keeper who brought the evidence may.',
  })
  @ApiConsumes('application/octet-stream', 'application/pdf', 'multipart/form-data')
  @ApiBody({
    schema: {
      type: 'object',
      required: ['file'],
      properties: { file: { type: 'string', format: 'binary', description: 'The file.' } },
    },
  })
  @ApiIfMatch()
  @ApiOkResponse({ type: EvidenceView })
  @ApiProblems(400, 404, 409, 412, 413, 415, 422, 428, 503)
  putEvidenceFile(
    @Param('id') id: string,
    @IfMatch() match: VersionMatch,
    @Req() sent: FileRequest,
  ): Promise<EvidenceView> {
    return this.files.put(id, match, receivedFile(sent));
  }
}
