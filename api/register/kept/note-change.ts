import type { EntityManager } from 'typeorm';
import type { JournalAction, Visibility } from '../../../shared/vocabulary.ts';
import { writeEntries, type KeptForm, type NewEntry } from '../../platform/journal-entry.ts';
import { beforeCommit } from '../../platform/transaction.ts';
import { allAsKept, asKept, type Kept, type RecordKind } from './kept-form.queries.ts';

/** What a change says of itself, where the record's state before and after does not tell. */
export interface Saying {
  readonly action?: JournalAction;
  readonly reason?: string | null;
  readonly reversesId?: string;
}

interface Note {
  readonly id: string;
  saying: Saying;
}

/** The records that each open transaction changes, so that each gets one entry, however often it was touched. */
const noted = new WeakMap<EntityManager, Map<string, Note>>();

/**
 * Notes that this transaction changes a record: reads it as it is, and at the end of the work writes the entry that tells what
 * became of it. A record whose version was not raised, and that is as it was, was not changed. Callers hold the record's lock.
 */
export async function noteChange(manager: EntityManager, kind: RecordKind, id: string): Promise<void> {
  if (notesOf(manager).has(id)) return;
  const before = await asKept(manager, kind, id);
  note(manager, kind, id, before);
}

/** Notes that this transaction adds a record; its entry is written at the end of the work. */
export function noteAdded(manager: EntityManager, kind: RecordKind, id: string): void {
  note(manager, kind, id, null);
}

/**
 * As `noteChange` for many records at once, which are read by one statement before and one after. Callers hold their locks.
 */
export async function noteChanges(manager: EntityManager, kind: RecordKind, ids: readonly string[]): Promise<void> {
  const fresh = ids.filter((id) => !notesOf(manager).has(id));
  if (fresh.length > 0) noteMany(manager, kind, fresh, await allAsKept(manager, kind, fresh));
}

/** As `noteAdded` for many records at once. */
export function noteAddedMany(manager: EntityManager, kind: RecordKind, ids: readonly string[]): void {
  if (ids.length > 0) noteMany(manager, kind, ids, new Map());
}

/** Says more of a noted change than its state tells. */
export function sayOfChange(manager: EntityManager, id: string, saying: Saying): void {
  const known = notesOf(manager).get(id);
  if (!known) throw new Error('only a change that was noted can be described');
  known.saying = { ...known.saying, ...saying };
}

/** Leaves the entry to somebody else: the caller writes one of its own that tells of this record too. */
export function leaveEntryToCaller(manager: EntityManager, id: string): void {
  notesOf(manager).set(id, { id, saying: {} });
}

function notesOf(manager: EntityManager): Map<string, Note> {
  const notes = noted.get(manager) ?? new Map<string, Note>();
  noted.set(manager, notes);
  return notes;
}

function note(manager: EntityManager, kind: RecordKind, id: string, before: Kept | null): void {
  noteMany(manager, kind, [id], before === null ? new Map() : new Map([[id, before]]));
}

function noteMany(
  manager: EntityManager,
  kind: RecordKind,
  ids: readonly string[],
  before: ReadonlyMap<string, Kept>,
): void {
  const notes = ids.map((id): Note => ({ id, saying: {} }));
  for (const one of notes) notesOf(manager).set(one.id, one);
  beforeCommit(manager, async () => {
    const after = await allAsKept(manager, kind, ids);
    const entries = notes.map((own) => entryOf(kind, own, before.get(own.id) ?? null, after.get(own.id) ?? null));
    await writeEntries(
      manager,
      entries.filter((entry) => entry !== null),
    );
  });
}

/** The entry of a noted change; null where the record is as it was. */
function entryOf(kind: RecordKind, own: Note, before: Kept | null, after: Kept | null): NewEntry | null {
  if (after === null) throw new Error('a record is never destroyed');
  if (before?.version === after.version && isSame(before.form, after.form)) return null;
  return {
    action: own.saying.action ?? actionOf(before, after),
    kind,
    recordId: own.id,
    recordVersion: after.version,
    ownerId: after.ownerId,
    visibility: stricter(before?.visibility ?? after.visibility, after.visibility),
    before: before?.form ?? null,
    after: after.form,
    reason: own.saying.reason ?? null,
    reversesId: own.saying.reversesId ?? null,
  };
}

function actionOf(before: Kept | null, after: Kept): JournalAction {
  if (before === null) return 'added';
  const [was, is] = [before.form['withdrawnAt'] ?? null, after.form['withdrawnAt'] ?? null];
  if (was === null && is !== null) return 'withdrawn';
  return was !== null && is === null ? 'restored' : 'changed';
}

const ranks = { private: 0, club: 1, public: 2 } as const;

/** The visibility that fewer people have. */
export function stricter(one: Visibility, other: Visibility): Visibility {
  return ranks[one] < ranks[other] ? one : other;
}

/** Both come from the same statement, so equal states have equal texts. */
export const isSame = (one: KeptForm, other: KeptForm): boolean => JSON.stringify(one) === JSON.stringify(other);
