import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { currentRequest } from '../platform/acting.ts';
import { isId } from '../platform/ids.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem } from '../platform/problem.ts';
import { finishSteps, inTransaction } from '../platform/transaction.ts';
import { ChangedSince, JournalKinds, type EntryToUndo, type Undo } from './journal-kinds.ts';
import { readEntries, readEntriesSince, type EntryRow } from './journal.queries.ts';
import { JournalService } from './journal.service.ts';
import type { JournalEntryView } from './journal.view.ts';
import { say } from '../platform/say.ts';

/** Undoes the changes that entries tell of. An undone change can be made again by undoing the entry that undid it. */
@Injectable()
export class ReversalService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(JournalKinds) private readonly kinds: JournalKinds,
    @Inject(JournalService) private readonly journal: JournalService,
  ) {}

  /**
   * Undoes the change of an entry and gives the entry that tells so. 403 as for the change itself, 404, 409 where the record was
   * changed since (`since` names the later entries) or the state before no longer fits the register.
   */
  async reverse(id: string): Promise<JournalEntryView> {
    return inTransaction(this.dataSource, async (manager) => {
      const [row] = isId(id) ? await readEntries(manager, this.kinds, [id]) : [];
      if (!row) throw new NotFoundProblem(say`journal entry`, id);
      const kind = this.kinds.of(row.kind);
      const recordId = kind?.isOnlyOne ? '' : row.recordId;
      const undo = kind?.undo?.[row.action];
      if (!undo || recordId === null)
        throw new ConflictProblem(say`Changes of this kind cannot be undone here. Change the record instead.`);
      await this.undo(manager, undo, { ...row, recordId });
      const written = currentRequest()?.journalEntryId;
      if (written === undefined) throw new Error('whatever undoes a change writes an entry');
      return this.journal.get(written, manager);
    });
  }

  private async undo(manager: EntityManager, undo: Undo, entry: EntryToUndo & EntryRow): Promise<void> {
    try {
      await undo(manager, entry);
      await finishSteps(manager);
    } catch (error) {
      if (error instanceof ChangedSince) throw await this.changedSince(manager, error, entry.id);
      if (error instanceof InvalidProblem)
        throw new ConflictProblem(
          say`What was before no longer fits the register. ${error.errors?.map(({ detail }) => detail).join(' ') ?? error.message}`,
        );
      throw error;
    }
  }

  private async changedSince(manager: EntityManager, error: ChangedSince, entryId: string): Promise<ConflictProblem> {
    const later = await readEntriesSince(
      manager,
      this.kinds,
      error.recordId,
      error.sinceVersion,
      error.entryId ?? entryId,
    );
    return new ConflictProblem(
      say`The record was changed again after this. Undo the later changes first, newest first.`,
      {
        since: await this.journal.viewsOf(manager, later),
      },
    );
  }
}
