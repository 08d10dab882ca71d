import type { FlagCode, FlagSeverity } from '../../shared/vocabulary.ts';
import type { LabelFindings, NamedRecord } from './label-findings.ts';
import { say, together } from '../platform/say.ts';

/** What the audit holds against a label, what caused it, and what would clear it. */
export interface Flag {
  readonly code: FlagCode;
  readonly severity: FlagSeverity;
  readonly detail: string;
  readonly records: readonly NamedRecord[];
  readonly clearedBy: string;
}

/** Judges the findings of one animal. */
export type Rule = (findings: LabelFindings) => Flag | null;

/** Most records that one flag names; `detail` tells how many there are. */
export const FLAG_RECORDS_MOST = 50;

/** Shares are sums of many halves: what misses 1 by less than this is whole. */
export const ROUNDING = 1e-9;

/** Records as a flag names them, each once. */
export function named(records: readonly NamedRecord[]): NamedRecord[] {
  const once = new Map(records.filter(({ id }) => id !== '').map((record) => [record.id, record]));
  return [...once.values()]
    .slice(0, FLAG_RECORDS_MOST)
    .map(({ kind, id, name, isPrivate }) => ({ kind, id, name, isPrivate }));
}

/** Records in a sentence. Those without an id are only counted. */
export function listed(records: readonly NamedRecord[]): string {
  const names = [...new Set(records.filter(({ id }) => id !== '').map(({ name }) => name))];
  const unnamed = records.filter(({ id }) => id === '').length;
  if (names.length === 0) return say`its founders`;
  if (names.length > 4 || unnamed > 0) {
    const shown = names.slice(0, 3);
    return say`${inARow(shown)} and ${names.length - shown.length + unnamed} more`;
  }
  return names.length === 1 ? (names[0] ?? '') : say`${inARow(names.slice(0, -1))} and ${names.at(-1)}`;
}

const inARow = (names: readonly string[]): string => together(names, (all) => all.join(', '));

/** A number of things. */
export function counted(count: number, noun: string): string {
  return say`${count} ${`${noun}${count === 1 ? '' : noun === 'clutch' ? 'es' : 's'}`}`;
}

/** A share in words: one decimal, but never 0 % or 100 % where it is not quite. */
export function percent(share: number): string {
  if (share > 0 && share < 0.0005) return say`less than 0.1 %`;
  if (share < 1 - ROUNDING && share > 0.9995) return say`more than 99.9 %`;
  return `${Number((100 * share).toFixed(1))} %`;
}
