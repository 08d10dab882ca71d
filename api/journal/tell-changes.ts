import { isDate } from '../../shared/edtf.ts';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { sayDate } from '../platform/date-words.ts';
import type { KeptForm } from '../platform/journal-entry.ts';
import { say, together } from '../platform/say.ts';
import type { JournalKind, NameOf } from './journal-kinds.ts';

/** A field that an entry changed, in words. */
export interface ToldChange {
  readonly field: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** Properties that name another record, and the kind of that record. */
const references: Readonly<Record<string, string>> = {
  speciesId: 'species',
  lineId: 'line',
  sourceId: 'source',
  individualId: 'individual',
  aId: 'individual',
  bId: 'individual',
  maleId: 'individual',
  femaleId: 'individual',
  mergedIntoId: 'individual',
  keptId: 'individual',
  duplicateId: 'individual',
  clutchId: 'clutch',
  pairingId: 'pairing',
  keeperId: 'keeper',
  importId: 'import',
  claimId: 'claim',
  repeatsId: 'evidence',
  photographId: 'photograph',
  reviewerId: 'keeper',
  fromId: 'keeper',
  toId: 'keeper',
};

/** Every record that a state names, however deep: kind and id. */
export function referencesIn(value: unknown): [kind: string, id: string][] {
  if (Array.isArray(value)) return value.flatMap(referencesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([property, inner]): [string, string][] => {
    const kind = references[property];
    return kind !== undefined && typeof inner === 'string' ? [[kind, inner]] : referencesIn(inner);
  });
}

/** What changed between two states, field by field, in the order of the states; fields that are equal are left out. */
export function tellChanges(
  kind: JournalKind | undefined,
  before: KeptForm | null,
  after: KeptForm | null,
  nameOf: NameOf,
): ToldChange[] {
  const [was, is] = [tellState(kind, before, nameOf), tellState(kind, after, nameOf)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .map((field) => ({ field, before: was.get(field) ?? null, after: is.get(field) ?? null }))
    .filter((change) => change.before !== change.after);
}

function tellState(kind: JournalKind | undefined, form: KeptForm | null, nameOf: NameOf): Map<string, string> {
  const told = new Map<string, string>();
  for (const [property, value] of Object.entries(form ?? {})) {
    const rows = kind?.rows?.[property];
    const field = rows?.field ?? property.replace(/(?<=.)Id$/, '');
    const text =
      rows && Array.isArray(value) ? tellRows(rows.line, value, nameOf) : tellValue(kind, property, value, nameOf);
    if (text !== '') told.set(field, inLines([told.get(field) ?? '', text].filter((part) => part !== '')));
  }
  return told;
}

function tellRows(
  line: (row: Readonly<Record<string, unknown>>, nameOf: NameOf) => string,
  rows: readonly unknown[],
  nameOf: NameOf,
): string {
  const lines = rows.map((row) => line(row as Readonly<Record<string, unknown>>, nameOf));
  return inLines(lines.filter((text) => text !== '').sort());
}

/** Texts below each other; the only one as it is. */
const inLines = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? '') : together(texts, (told) => told.join('\n'));

function tellValue(kind: JournalKind | undefined, property: string, value: unknown, nameOf: NameOf): string {
  if (value === null || value === undefined) return '';
  const words = kind?.words?.[property];
  if (words !== undefined) return words(value);
  const reference = references[property];
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.map((inner) => tellValue(kind, property, inner, nameOf)).join(', ');
  if (typeof value === 'object')
    return together(
      Object.entries(value).map(([name, inner]) => say`${name}: ${tellValue(kind, name, inner, nameOf)}`),
      (told) => told.join(', '),
    );
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  if (reference !== undefined) return nameOf(reference, text);
  // the number of a sheet is kept as it is read, with its check character
  if (property === 'number' && /^\d+$/.test(text)) return formatRegistryNumber(text);
  return kind?.dates?.includes(property) && isDate(text) ? sayDate(text) : text;
}
