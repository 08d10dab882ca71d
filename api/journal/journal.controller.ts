import { Controller, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { ApiPage, type Page } from '../platform/paging.ts';
import { JournalQuery } from './journal.dto.ts';
import { JournalService } from './journal.service.ts';
import { JournalEntryView, JournalHeadView } from './journal.view.ts';
import { ReversalService } from './reversal.service.ts';

@ApiTags('journal')
@Controller('journal')
export class JournalController {
  constructor(
    @Inject(JournalService) private readonly journal: JournalService,
    @Inject(ReversalService) private readonly reversals: ReversalService,
  ) {}

  @Needs('read', 'journal')
  @Get()
  @ApiOperation({ summary: 'The journal, newest first; with `record` the history of one record' })
  @ApiPage(JournalEntryView)
  @ApiProblems(422)
  listJournal(@Query() query: JournalQuery): Promise<Page<JournalEntryView>> {
    return this.journal.list(query);
  }

  @Needs('read', 'journal')
  @Get('head')
  @ApiOperation({ summary: 'Where the chain of the journal stands: the hash to keep' })
  @ApiOkResponse({ type: JournalHeadView })
  getJournalHead(): Promise<JournalHeadView> {
    return this.journal.head();
  }

  @Needs('read', 'journal')
  @Get(':id')
  @ApiOperation({ summary: 'One entry of the journal' })
  @ApiOkResponse({ type: JournalEntryView })
  @ApiProblems(404)
  getJournalEntry(@Param('id') id: string): Promise<JournalEntryView> {
    return this.journal.get(id);
  }

  @Needs('add', 'journal')
  @Post(':id/reversal')
  @ApiOperation({
    summary: 'Undo the change that an entry tells of',
    description:
      'Needs the permission for the change itself. The reversal is a change with an entry of its own, which can be reversed again. ' +
      'Refused with 409 where the record was changed since; `since` lists the later entries, newest first.',
  })
  @ApiCreatedResponse({ type: JournalEntryView, description: 'The entry that undid the change.' })
  @ApiProblems(404, 409, 422)
  reverseJournalEntry(@Param('id') id: string): Promise<JournalEntryView> {
    return this.reversals.reverse(id);
  }
}
