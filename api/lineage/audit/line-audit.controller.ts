import { Controller, Get, Inject, Param, Req } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Request } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { signalOf } from './given-up.ts';
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
}
