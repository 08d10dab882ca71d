import { headerOf, sheetColumns, type SheetColumn } from '../../../shared/register-sheet.ts';
import { csvRow } from '../../platform/csv.ts';
import { parentsOut, type ParentsOut } from './parents-out.ts';
import type { SheetAnimal, SheetCandidate, SheetClutch, SheetPair, SheetSource } from './sheet-animals.queries.ts';
import { registryNumber, uniqueCodes } from './sheet-codes.ts';

/** What a sheet is written from: only what whoever asks may see. */
export interface SheetContent {
  readonly animals: readonly SheetAnimal[];
  readonly clutches: readonly SheetClutch[];
  readonly candidates: readonly SheetCandidate[];
  readonly pairs: readonly SheetPair[];
  readonly sources: readonly SheetSource[];
}

/**
 * A register sheet as CSV, one row an animal. Taken into an empty register, it gives the same animals, clutches and sources, and the same
 * figures. Codes are made unique within the sheet: where two keepers use one code, the later animal goes by its registry number.
 */
export function writeSheet(content: SheetContent): string {
  const codes = uniqueCodes(content.animals, ({ number }) => registryNumber(number));
  const clutchCodes = uniqueCodes(content.clutches, (_, place) => `C-${place + 1}`);
  const sourceCodes = uniqueCodes(content.sources, (_, place) => `S-${place + 1}`);
  const clutches = new Map(content.clutches.map((clutch) => [clutch.id, clutch]));
  const sources = new Map(content.sources.map((source) => [source.id, source]));
  const nameOf = (id: string, number: string): string => codes.get(id) ?? registryNumber(number);
  const parents = parentsByClutch(content, nameOf);
  const rows = content.animals.map((animal) => {
    const clutch = animal.clutchId === null ? undefined : clutches.get(animal.clutchId);
    const source = animal.sourceId === null ? undefined : sources.get(animal.sourceId);
    const cells: Partial<Record<SheetColumn, string | null>> = {
      ...ownCells(animal),
      code: nameOf(animal.id, animal.number),
      ...(clutch ? { clutch: clutchCodes.get(clutch.id) ?? '', laid: clutch.laid } : {}),
      ...(source ? sourceCells(source, sourceCodes.get(source.id) ?? '') : {}),
    };
    const { note = '', ...of } = parents.get(animal.clutchId ?? '') ?? {};
    Object.assign(cells, of);
    if (note !== '') cells.notes = [animal.notes, note].filter(Boolean).join('\n');
    return csvRow(sheetColumns.map((column) => cells[column]));
  });
  return csvRow(sheetColumns.map(headerOf)) + rows.join('');
}

function ownCells(animal: SheetAnimal): Partial<Record<SheetColumn, string | null>> {
  const { species, line, sex, status, hatched, outOfWater, died, notes } = animal;
  return { species, line, sex, status, hatched, outOfWater, died, notes };
}

function sourceCells(source: SheetSource, code: string): Partial<Record<SheetColumn, string | null>> {
  return {
    source: code,
    sourceKind: source.kind,
    sourceDate: source.date,
    sourceBaseKinship: String(source.baseKinship),
    countryOfExport: source.countryOfExport,
    label: source.label,
    labelStandingNote: source.labelNote,
  };
}

function parentsByClutch(
  content: SheetContent,
  nameOf: (id: string, number: string) => string,
): Map<string, ParentsOut> {
  const candidates = byClutch(content.candidates);
  const pairs = byClutch(content.pairs);
  return new Map(
    content.clutches.map(({ id }) => [id, parentsOut(candidates.get(id) ?? [], pairs.get(id) ?? [], nameOf)]),
  );
}

function byClutch<Of extends { readonly clutchId: string }>(rows: readonly Of[]): Map<string, Of[]> {
  const found = new Map<string, Of[]>();
  for (const row of rows) {
    const group = found.get(row.clutchId);
    if (group) group.push(row);
    else found.set(row.clutchId, [row]);
  }
  return found;
}
