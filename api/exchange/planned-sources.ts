import type { SourceKind } from '../../shared/vocabulary.ts';
import { sourceKinds } from '../../shared/vocabulary.ts';
import { countryNamed, readCountry, readNumber, readSourceKind } from './cell-words.ts';
import type { RegisterKnowledge } from './knowledge.ts';
import { sameKey } from './knowledge.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import { headerOf } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** The columns that tell of a source. */
export const sourceColumns = [
  'sourceKind',
  'sourceDate',
  'sourceBaseKinship',
  'countryOfExport',
  'label',
  'labelStandingNote',
] as const;
type SourceColumn = (typeof sourceColumns)[number];

/** A source as rows of a sheet tell it. */
export interface PlannedSource {
  /** The keeper's code, empty where there is none. */
  readonly code: string;
  /** The animal whose row told of it first. */
  readonly first: number;
  /** Its id where the registry has it already. */
  readonly existing: string | null;
  /** Details as cells have them, and the animal whose row has them. */
  readonly details: Map<SourceColumn, { text: string; animal: number }>;
}

/** A source's details as values. Only for a sheet without problems. */
export interface SourceValues {
  readonly kind: SourceKind;
  /** EDTF, or null. */
  readonly date: string | null;
  readonly baseKinship: number;
  readonly countryOfExport: string | null;
  readonly label: string | null;
  readonly labelNote: string | null;
}

/** The sources of a sheet, and which animal came from which. */
export interface SourcesOfSheet {
  readonly sources: readonly PlannedSource[];
  /** For each animal its source, −1 where it has none. */
  readonly sourceOf: Int32Array;
}

/**
 * Groups animals by source code; details come from the first row that has them. A row with details but neither a code nor a
 * parent is a source of its own.
 *
 * @param clutchOf clutch of each animal, −1 for none
 */
export function planSources(
  table: SheetTable,
  clutchOf: Int32Array,
  knowledge: RegisterKnowledge,
  report: SheetReport,
): SourcesOfSheet {
  const sources: PlannedSource[] = [];
  const byCode = new Map<string, number>();
  const sourceOf = new Int32Array(table.length).fill(-1);
  for (let animal = 0; animal < table.length; animal++) {
    const code = table.text('source', animal);
    const hatchedHere = (clutchOf[animal] ?? -1) >= 0 || namesParents(table, animal);
    checkDetails(table, animal, report);
    if (code === '' && !sourceColumns.some((column) => table.textNumber(column, animal) !== 0)) continue;
    if (code !== '' && hatchedHere) {
      report.refuse(
        animal,
        'source',
        say`An animal comes from a source or from parents, not from both. Take out the source ${code}, or the parents and the clutch.`,
      );
      continue;
    }
    if (hatchedHere) continue; // what is told of a source here is kept as notes, see kept-notes.ts
    let source = code === '' ? undefined : byCode.get(sameKey(code));
    if (source === undefined) {
      const existing = code === '' ? null : (knowledge.source(code) ?? null);
      source = sources.push({ code, first: animal, existing, details: new Map() }) - 1;
      if (code !== '') byCode.set(sameKey(code), source);
      if (existing !== null)
        report.warn(
          animal,
          'source',
          say`The source ${code} is already in the registry; its details stay as they are recorded there.`,
        );
    }
    sourceOf[animal] = source;
    const planned = sources[source];
    if (planned?.existing === null) takeDetails(table, animal, planned, report);
  }
  return { sources, sourceOf };
}

/** Whether a row names a parent, be it one that cannot be found. */
function namesParents(table: SheetTable, animal: number): boolean {
  return (['sire', 'dam', 'parents'] as const).some((column) => !['', '?'].includes(table.text(column, animal)));
}

/** The details of a source as values. */
export function sourceValues(source: PlannedSource): SourceValues {
  const text = (column: SourceColumn): string | null => source.details.get(column)?.text ?? null;
  return {
    kind: readSourceKind(text('sourceKind') ?? '') ?? 'unknown',
    date: text('sourceDate'),
    baseKinship: readNumber(text('sourceBaseKinship') ?? '0') ?? 0,
    countryOfExport: readCountry(text('countryOfExport') ?? ''),
    label: text('label'),
    labelNote: text('labelStandingNote'),
  };
}

/** Refuses details that cannot be read; dates are checked with all other dates. */
function checkDetails(table: SheetTable, animal: number, report: SheetReport): void {
  const kind = table.text('sourceKind', animal);
  if (readSourceKind(kind) === null)
    report.refuse(
      animal,
      'sourceKind',
      say`"${kind.slice(0, 60)}" is no kind of source. Write ${sourceKinds.join(', ')}.`,
    );
  const country = table.text('countryOfExport', animal);
  if (country !== '' && readCountry(country) === null) {
    const meant = countryNamed(country);
    const remedy =
      meant === null ? say`Write its code of two letters by ISO 3166, such as EC for Ecuador.` : say`Write ${meant}.`;
    report.refuse(animal, 'countryOfExport', say`"${country.slice(0, 60)}" is no code of a country. ${remedy}`);
  }
  const kinship = table.text('sourceBaseKinship', animal);
  if (kinship === '') return;
  const value = readNumber(kinship);
  if (value === null || value < 0 || value > 1)
    report.refuse(
      animal,
      'sourceBaseKinship',
      say`"${kinship.slice(0, 60)}" is no base kinship. It is a probability from 0 (unrelated) to 1, such as 0.125 for animals as close as half siblings.`,
    );
}

function takeDetails(table: SheetTable, animal: number, source: PlannedSource, report: SheetReport): void {
  for (const column of sourceColumns) {
    const text = table.text(column, animal);
    if (text === '') continue;
    const before = source.details.get(column);
    if (before === undefined) source.details.set(column, { text, animal });
    else if (before.text !== text && !meansSame(column, before.text, text))
      report.warn(
        animal,
        column,
        say`The source ${source.code} has "${before.text.slice(0, 80)}" as ${headerOf(column)} from row ${table.row(before.animal)}; "${text.slice(0, 80)}" here is not taken. If it is another source, give it another code.`,
      );
  }
}

function meansSame(column: SheetColumn, a: string, b: string): boolean {
  if (column === 'sourceBaseKinship') return readNumber(a) === readNumber(b);
  if (column === 'sourceKind') return readSourceKind(a) === readSourceKind(b);
  return column === 'countryOfExport' && readCountry(a) === readCountry(b);
}
