import { Controller, Get, Inject, Param, Query, Req, Res, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { signalOf } from '../../platform/given-up.ts';
import { AuditPaperQuery } from './audit-paper.dto.ts';
import { LineAuditService } from './line-audit.service.ts';
import { LineAuditView } from './line-audit.view.ts';

/** What the register says of a whole line. */
@ApiTags('lines')
@Controller('lines/:id')
export class LineAuditController {
  constructor(@Inject(LineAuditService) private readonly audits: LineAuditService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Get('audit')
  @ApiOperation({
    summary:
      'Audit of a line: flags, blood from outside, labels and their evidence, diversity over the years, and what to find out first',
    description:
      'It tells of the members that whoever asks may see. Computed in a thread, under two seconds for a line of 100 000 animals; given up when the connection closes.',
  })
  @ApiOkResponse({ type: LineAuditView })
  @ApiProblems(404, 503)
  getAudit(@Param('id') id: string, @Req() request: Request): Promise<LineAuditView> {
    return this.audits.get(id, signalOf(request));
  }

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Get('audit.csv')
  @ApiOperation({
    summary: 'Members of a line with their flags, for a spreadsheet',
    description:
      'One row a member that whoever asks may see, in the order of their numbers. Shares from 0 to 1; a text that a spreadsheet would take for a formula has an apostrophe before it.',
  })
  @ApiOkResponse({
    description: 'The members.',
    content: { 'text/csv': { schema: { type: 'string', description: 'A row of names, then a row a member.' } } },
  })
  @ApiProblems(404, 503)
  async getTable(
    @Param('id') id: string,
    @Req() request: Request,
    @Res({ passthrough: true }) response: Response,
  ): Promise<string> {
    const table = await this.audits.table(id, signalOf(request));
    response.setHeader('Content-Type', 'text/csv; charset=utf-8; header=present');
    response.setHeader('Content-Disposition', 'attachment; filename="line-audit.csv"');
    return table;
  }

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Get('audit.pdf')
  @ApiOperation({
    summary: 'Audit of a line as a PDF',
    description:
      'The same as `audit`, in pages of A4 or Letter, tagged for screen readers. Long lists are cut, and say how many more there are. Written in a thread.',
  })
  @ApiOkResponse({
    description: 'The document.',
    content: { 'application/pdf': { schema: { type: 'string', format: 'binary', description: 'A PDF.' } } },
  })
  @ApiProblems(404, 422, 503)
  async getPaper(
    @Param('id') id: string,
    @Query() query: AuditPaperQuery,
    @Req() request: Request,
  ): Promise<StreamableFile> {
    const paper = await this.audits.paper(id, query.paper ?? 'a4', signalOf(request));
    return new StreamableFile(paper, {
      type: 'application/pdf',
      disposition: 'attachment; filename="line-audit.pdf"',
      length: paper.length,
    });
  }
}
