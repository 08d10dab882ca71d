import type { EntityManager } from 'typeorm';
import { ChangedSince, type EntryToUndo } from '../../journal/journal-kinds.ts';
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
import { lineKind } from '../lines/lines.service.ts';
import { observationKind } from '../observations/observations.service.ts';
import { pairingKind } from '../pairings/pairings.service.ts';
import type { Kept, WithdrawableRecord } from '../record.ts';
import { sourceKind } from '../sources/sources.service.ts';
import { speciesKind } from '../species/species.service.ts';
import { restoreRecord, withdrawRecord } from '../withdrawal.service.ts';

type AnyKind = Kind<WithdrawableRecord & Kept>;

/** Each kind speaks of its own entity; what is done here is the same for all of them. */
const kinds = {
  species: speciesKind,
  line: lineKind,
  source: sourceKind,
  individual: individualKind,
  pairing: pairingKind,
  clutch: clutchKind,
  observation: observationKind,
} as Readonly<Record<RecordKind, unknown>> as Readonly<Record<RecordKind, AnyKind>>;

const kindOf = (entry: EntryToUndo): RecordKind => entry.kind as RecordKind;

/** Locks the record of an entry as for a change (404, 403), and refuses where its version is no longer that of the entry. */
async function lockUnchanged(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await lockPedigree(manager);
  const record = await lockForChange(manager, kinds[kindOf(entry)], entry.recordId, 'any');
  if (record.version !== entry.recordVersion) throw new ChangedSince(entry.recordId, entry.recordVersion);
}

/** A record that was added is withdrawn. */
export async function undoAdding(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await lockUnchanged(manager, entry);
  await withdrawRecord(manager, kinds[kindOf(entry)], entry.recordId, 'any', 'Its entry was undone');
  sayOfChange(manager, entry.recordId, { reason: null, reversesId: entry.id });
}

/** A record that was changed becomes what it was before; warnings that were confirmed since stay confirmed. */
export async function undoChange(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await lockUnchanged(manager, entry);
  const { recordId, before } = entry;
  await lockStanding(manager, kinds[kindOf(entry)], recordId, 'any');
  const now = await asKept(manager, kindOf(entry), recordId);
  if (!now || !before) throw new NotFoundProblem(entry.kind, recordId);
  const warnings = 'warnings' in now.form ? { warnings: now.form['warnings'] } : {};
  await writeAsKept(manager, kindOf(entry), recordId, { ...before, ...warnings });
  sayOfChange(manager, recordId, { reversesId: entry.id });
}

/** A record that was withdrawn is restored. */
export async function undoWithdrawal(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await lockUnchanged(manager, entry);
  await restoreRecord(manager, kinds[kindOf(entry)], entry.recordId, 'any');
  sayOfChange(manager, entry.recordId, { reversesId: entry.id });
}

/** A record that was restored is withdrawn again, for the reason that it had. */
export async function undoRestoring(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  await lockUnchanged(manager, entry);
  const reason = entry.before?.['withdrawnReason'];
  const before = typeof reason === 'string' ? reason : 'Its restoring was undone';
  await withdrawRecord(manager, kinds[kindOf(entry)], entry.recordId, 'any', before);
  sayOfChange(manager, entry.recordId, { reversesId: entry.id });
}

type Warning = Readonly<Record<'code', string>>;
const warningsOf = (form: KeptForm | null): readonly Warning[] => (form?.['warnings'] ?? []) as readonly Warning[];

/**
 * The confirmation of a warning is taken back, or comes back, in its own words. Confirming raises no version, so the confirmations
 * themselves are compared.
 */
export async function undoConfirmation(manager: EntityManager, entry: EntryToUndo): Promise<void> {
  const kind = kindOf(entry);
  if (kind !== 'individual' && kind !== 'clutch') throw new NotFoundProblem('warning', entry.recordId);
  await lockForChange(manager, kinds[kind], entry.recordId, 'any');
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
