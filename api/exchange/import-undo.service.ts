import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { authorize } from '../people/permissions.ts';
import { isId } from '../platform/ids.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { ConflictProblem, NotFoundProblem } from '../platform/problem.ts';
import { lockPedigree } from '../platform/revision.ts';
import { inTransaction } from '../platform/transaction.ts';
import {
  dependantsOfImport,
  missingBeneathImport,
  takenMeanwhile,
  type InTheWay,
} from './import-dependants.queries.ts';
import { lockImport, restoreImport, withdrawImport, type LockedImport } from './import-undo.queries.ts';
import { allowLongWork, findImport } from './import.queries.ts';
import type { WholeImportView } from './import.view.ts';
import { say } from '../platform/say.ts';

/** Takes a whole import back, and back again. */
@Injectable()
export class ImportUndoService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One import of the past; 404 where there is none. */
  async get(id: string): Promise<WholeImportView> {
    return shown(this.dataSource.manager, id);
  }

  /**
   * Withdraws in one transaction everything that an import made and that still stands. 403 to others than its keeper and registrars,
   * 404, 409 where it was undone already or where records from outside need one of its own.
   */
  async withdraw(id: string, reason: string): Promise<WholeImportView> {
    return inTransaction(this.dataSource, async (manager) => {
      await undoImport(manager, id, reason);
      return shown(manager, id);
    });
  }

  /**
   * Restores all that the undo of an import withdrew. 403, 404, 409 where it was not undone, where a code or a name was taken
   * meanwhile, or where a record that it needs is withdrawn.
   */
  async restore(id: string): Promise<WholeImportView> {
    return inTransaction(this.dataSource, async (manager) => {
      await restoreUndone(manager, id);
      return shown(manager, id);
    });
  }
}

/** Undoes an import inside a transaction; see `ImportUndoService.withdraw`. `reversesId`: the entry of the journal that this answers. */
export async function undoImport(
  manager: EntityManager,
  id: string,
  reason: string,
  reversesId?: string,
): Promise<void> {
  const { keeperId, withdrawnAt, isRemembered } = await lockForUndo(manager, id);
  if (withdrawnAt !== null) throw new ConflictProblem(say`This import was undone already.`);
  if (!isRemembered)
    throw new ConflictProblem(
      say`This import was made before the register kept which sheet brought a record. Withdraw its records one by one.`,
    );
  const at = new Date();
  refuseDependants(await dependantsOfImport(manager, id, at));
  const withdrawn = await withdrawImport(manager, id, at, reason);
  // stays and remarks are written without the lock of the lineage: one that came in between is seen now
  refuseDependants(await dependantsOfImport(manager, id, at));
  await writeEntry(manager, {
    action: 'import-undone',
    kind: 'import',
    recordId: id,
    ownerId: keeperId,
    before: { withdrawnAt: null, withdrawnReason: null },
    after: { withdrawnAt: at.toISOString(), withdrawnReason: reason, withdrawn },
    reason,
    reversesId: reversesId ?? null,
  });
}

/** Restores an import inside a transaction; see `ImportUndoService.restore`. `reversesId`: the entry of the journal that this answers. */
export async function restoreUndone(manager: EntityManager, id: string, reversesId?: string): Promise<void> {
  const { keeperId, withdrawnAt, withdrawnReason } = await lockForUndo(manager, id);
  if (withdrawnAt === null) throw new ConflictProblem(say`This import was not undone.`);
  refuse(
    await takenMeanwhile(manager, id, withdrawnAt),
    'taken',
    say`Codes or names of this import are in use again. Change or withdraw the records that have them.`,
  );
  const restored = await restoreImport(manager, id, withdrawnAt);
  refuse(
    await missingBeneathImport(manager, id),
    'dependants',
    say`This import needs records that are withdrawn. Restore them first.`,
  );
  await writeEntry(manager, {
    action: 'import-restored',
    kind: 'import',
    recordId: id,
    ownerId: keeperId,
    before: { withdrawnAt: withdrawnAt.toISOString(), withdrawnReason },
    after: { withdrawnAt: null, withdrawnReason: null, restored },
    reversesId: reversesId ?? null,
  });
}

async function lockForUndo(manager: EntityManager, id: string): Promise<LockedImport> {
  await allowLongWork(manager);
  await lockPedigree(manager);
  const found = isId(id) ? await lockImport(manager, id) : null;
  if (!found) throw new NotFoundProblem(say`import`, id);
  authorize('change', 'import', found);
  return found;
}

const refuseDependants = (found: InTheWay): void =>
  refuse(
    found,
    'dependants',
    say`Other records need what this import made. Withdraw them first, or change what they say.`,
  );

function refuse({ records, total, privateCount }: InTheWay, name: string, detail: string): void {
  if (total === 0) return;
  const hidden =
    privateCount === 0
      ? ''
      : say` ${privateCount} of the ${total} are private records of other keepers; ask a registrar.`;
  throw new ConflictProblem(detail + hidden, { [name]: records, total, privateCount });
}

async function shown(manager: EntityManager, id: string): Promise<WholeImportView> {
  const found = isId(id) ? await findImport(manager, id) : null;
  if (!found) throw new NotFoundProblem(say`import`, id);
  return found;
}
