import type { EntityManager } from 'typeorm';
import { ChangedSince, type EntryToUndo, type Undo } from '../../journal/journal-kinds.ts';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { lockForChange, lockStanding, type Kind } from '../change.ts';
import { clutchKind } from '../clutches/clutches.service.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { asKept, type RecordKind } from '../kept/kept-form.queries.ts';
import { writeKeptWarnings } from '../kept/kept-rows.ts';
import { sayOfChange } from '../kept/note-change.ts';
import { writeAsKept } from '../kept/write-as-kept.ts';
import type { Kept, WithdrawableRecord } from '../record.ts';
import { restoreRecord, withdrawRecord } from '../withdrawal.service.ts';
import { say } from '../../platform/say.ts';

/** A kind of record, whatever its entity. */
export type AnyKind = Kind<WithdrawableRecord & Kept>;

const tableIn = (entry: EntryToUndo): RecordKind => entry.kind as RecordKind;

/** Locks the record of an entry as for a change (404, 403), and refuses where its version is no longer that of the entry. */
export async function lockUnchanged(manager: EntityManager, kind: AnyKind, entry: EntryToUndo): Promise<void> {
  await lockPedigree(manager);
  const record = await lockForChange(manager, kind, entry.recordId, 'any');
  if (record.version !== entry.recordVersion) throw new ChangedSince(entry.recordId, entry.recordVersion);
}

/** How each change of a record of one kind is undone. */
export function undoOf(kind: AnyKind): Readonly<Record<'added' | 'changed' | 'withdrawn' | 'restored', Undo>> {
  return {
    /** A record that was added is withdrawn. */
    added: async (manager, entry) => {
      await lockUnchanged(manager, kind, entry);
      await withdrawRecord(manager, kind, entry.recordId, 'any', 'Its entry was undone');
      sayOfChange(manager, entry.recordId, { reason: null, reversesId: entry.id });
    },
    /** A record that was changed becomes what it was before; warnings that were confirmed since stay confirmed. */
    changed: async (manager, entry) => {
      await lockUnchanged(manager, kind, entry);
      const { recordId, before } = entry;
      await lockStanding(manager, kind, recordId, 'any');
      const now = await asKept(manager, tableIn(entry), recordId);
      if (!now || !before) throw new NotFoundProblem(entry.kind, recordId);
      const warnings = 'warnings' in now.form ? { warnings: now.form['warnings'] } : {};
      await writeAsKept(manager, tableIn(entry), recordId, { ...before, ...warnings });
      sayOfChange(manager, recordId, { reversesId: entry.id });
    },
    /** A record that was withdrawn is restored. */
    withdrawn: async (manager, entry) => {
      await lockUnchanged(manager, kind, entry);
      await restoreRecord(manager, kind, entry.recordId, 'any');
      sayOfChange(manager, entry.recordId, { reversesId: entry.id });
    },
    /** A record that was restored is withdrawn again, for the reason that it had. */
    restored: async (manager, entry) => {
      await lockUnchanged(manager, kind, entry);
      const reason = entry.before?.['withdrawnReason'];
      const before = typeof reason === 'string' ? reason : 'Its restoring was undone';
      await withdrawRecord(manager, kind, entry.recordId, 'any', before);
      sayOfChange(manager, entry.recordId, { reversesId: entry.id });
    },
  };
}

type Warning = Readonly<Record<'code', string>>;
const warningsOf = (form: KeptForm | null): readonly Warning[] => (form?.['warnings'] ?? []) as readonly Warning[];

/**
 * The confirmation of a warning is taken back, or comes back, in its own words. Confirming raises no version, so the confirmations
 * themselves are compared.
 */
export async function undoConfirmation(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  const kind = tableIn(entry);
  if (kind !== 'individual' && kind !== 'clutch') throw new NotFoundProblem(say`warning`, entry.recordId);
  await lockForChange(
    manager,
    (kind === 'clutch' ? clutchKind : individualKind) as unknown as AnyKind,
    entry.recordId,
    'any',
  );
  const now = await asKept(manager, kind, entry.recordId);
  const [was, became, is] = [warningsOf(entry.before), warningsOf(entry.after), warningsOf(now?.form ?? null)];
  const find = (rows: readonly Warning[], code: string): Warning | undefined => rows.find((row) => row.code === code);
  const text = (row: Warning | undefined): string => JSON.stringify(row ?? null);
  const codes = [...new Set([...was, ...became].map(({ code }) => code))].filter(
    (code) => text(find(was, code)) !== text(find(became, code)),
  );
  if (codes.some((code) => text(find(became, code)) !== text(find(is, code))))
    throw new ChangedSince(entry.recordId, entry.recordVersion);
  const others = is.filter(({ code }) => !codes.includes(code));
  const warnings = [...others, ...was.filter(({ code }) => codes.includes(code))];
  await writeKeptWarnings(manager, kind, entry.recordId, { warnings });
  const action = entry.action === 'confirmed' ? 'unconfirmed' : 'confirmed';
  sayOfChange(manager, entry.recordId, { action, reversesId: entry.id });
}
