import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { VersionMatch } from '../platform/etag.ts';
import { ConflictProblem, NotFoundProblem } from '../platform/problem.ts';
import { lockPedigree } from '../platform/revision.ts';
import { inTransaction } from '../platform/transaction.ts';
import { lockForChange, refuseMerged, writeChange, type Kind } from './change.ts';
import { sayOfChange } from './kept/note-change.ts';
import { present } from './present.ts';
import type { Kept, WithdrawableRecord } from './record.ts';
import { dependantsOf, missingBeneath } from './withdrawal.queries.ts';
import { say } from '../platform/say.ts';

type Versioned = { readonly version: number };

/** Withdraws records and restores them. Nothing is destroyed, and nothing that others stand on can go. */
@Injectable()
export class WithdrawalService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** Withdraws a record; 409 names the standing records that need it, or says that it is withdrawn already. 404, 412. */
  async withdraw<Entity extends WithdrawableRecord & Kept, View extends Versioned>(
    kind: Kind<Entity, View>,
    id: string,
    match: VersionMatch,
    reason: string,
  ): Promise<View> {
    return inTransaction(this.dataSource, async (manager) => {
      await withdrawRecord(manager, kind, id, match, reason);
      return present(await kind.find(manager, id), () => new NotFoundProblem(kind.word, id));
    });
  }

  /** Restores a withdrawn record; 409 where it stands, or where a record that it needs is itself withdrawn. 404, 412. */
  async restore<Entity extends WithdrawableRecord & Kept, View extends Versioned>(
    kind: Kind<Entity, View>,
    id: string,
    match: VersionMatch,
  ): Promise<View> {
    return inTransaction(this.dataSource, async (manager) => {
      await restoreRecord(manager, kind, id, match);
      return present(await kind.find(manager, id), () => new NotFoundProblem(kind.word, id));
    });
  }
}

/** Withdraws a record within a transaction; errors as for the service. */
export async function withdrawRecord<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
  match: VersionMatch,
  reason: string,
): Promise<void> {
  // nothing can become dependent on the record while the lock is held
  await lockPedigree(manager);
  const record = await lockForChange(manager, kind, id, match);
  if (record.withdrawnAt !== null) throw new ConflictProblem(say`This ${kind.word} is withdrawn already.`);
  const dependants = await dependantsOf(manager, kind.word, id);
  if (dependants.length > 0)
    throw new ConflictProblem(
      say`Other records need this ${kind.word}. Withdraw them first, or change what they say.`,
      {
        dependants,
      },
    );
  await writeChange(manager, kind, record, { withdrawnAt: new Date(), withdrawnReason: reason } as never);
  sayOfChange(manager, id, { reason });
}

/** Restores a record within a transaction; errors as for the service. */
export async function restoreRecord<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
  match: VersionMatch,
): Promise<void> {
  await lockPedigree(manager);
  const record = await lockForChange(manager, kind, id, match);
  if (record.withdrawnAt === null) throw new ConflictProblem(say`This ${kind.word} is not withdrawn.`);
  refuseMerged(record);
  const missing = await missingBeneath(manager, kind.word, id);
  if (missing.length > 0)
    throw new ConflictProblem(say`This ${kind.word} needs records that are withdrawn. Restore them first.`, {
      dependants: missing,
    });
  await writeChange(manager, kind, record, { withdrawnAt: null, withdrawnReason: null } as never);
}
