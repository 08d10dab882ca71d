import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import { writeEntry, type KeptForm } from '../../platform/journal-entry.ts';
import { allAsKept } from './kept-form.queries.ts';

/** A young of a clutch as an entry tells of it. */
export interface KeptYoung {
  readonly individualId: string;
  readonly version: number;
  readonly form: KeptForm;
}

/** The clutch of some young, as its row stands. */
export interface RaisedFrom {
  readonly id: string;
  readonly version: number;
  readonly keeperId: string | null;
}

/** The young as the database keeps them, in the order of the ids. */
export async function youngAsKept(manager: EntityManager, ids: readonly string[]): Promise<KeptYoung[]> {
  const young = await allAsKept(manager, 'individual', ids);
  return [...young].map(([individualId, { version, form }]) => ({ individualId, version, form }));
}

/**
 * Writes one entry for all young that were raised at once (or taken back, or restored): it stands in the history of the clutch and of
 * each of them.
 */
export async function noteRaised(
  manager: EntityManager,
  clutch: RaisedFrom,
  ids: readonly string[],
  undoing?: { readonly action: JournalAction; readonly reversesId: string; readonly before: readonly KeptYoung[] },
): Promise<string> {
  return writeEntry(manager, {
    action: undoing?.action ?? 'raised',
    kind: 'clutch',
    recordId: clutch.id,
    recordVersion: clutch.version,
    ownerId: clutch.keeperId,
    before: undoing ? { young: undoing.before } : null,
    after: { young: await youngAsKept(manager, ids) },
    reversesId: undoing?.reversesId ?? null,
    aboutIds: ids,
  });
}
