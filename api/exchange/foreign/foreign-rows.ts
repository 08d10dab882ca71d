import { parseRegistryNumber } from '../../../shared/registry-number.ts';
import type { SheetClutch, SheetDocument, SheetSource } from '../../../shared/sheet/sheet-document.ts';
import { headerOf, sheetColumns, type SheetColumn } from '../../../shared/register-sheet.ts';
import type { ToldAnimal } from './foreign-keys.ts';
import { say } from '../../platform/say.ts';

/** What a sheet of another register would be as a register sheet: a header and a row for each animal that is not known here yet. */
export interface ForeignRows {
  readonly records: readonly (readonly string[])[];
  /** The animal of each row, the header not counted. */
  readonly animals: readonly ToldAnimal[];
}

/** How animals, clutches and sources of another register are called here. */
export class ForeignCodes {
  /** @param prefix short for the register, put before each of its numbers */
  constructor(
    private readonly prefix: string,
    private readonly sheetNumber: string,
  ) {}

  /** The code of an animal: its number there, or its place on the sheet where it is private. */
  animal({ number, ref }: Pick<ToldAnimal, 'number' | 'ref'>): string {
    return number === null ? this.onSheet(ref) : `${this.prefix} ${number}`;
  }

  /** The code of what has no number: a clutch or a source. */
  onSheet(ref: string): string {
    return `${this.prefix} ${this.sheetNumber} ${ref}`;
  }
}

type Cells = Partial<Record<SheetColumn, string>>;

/** What is left of 1 below this is the rounding of a sum. */
const leastOdds = 1e-6;

/** Something that a sheet says and that cannot be taken in; the message says what. */
export class ForeignRowProblem extends Error {}

/**
 * Turns a sheet into rows of a register sheet, so that what comes in is checked and written as any sheet is.
 *
 * @param isKnown whether an animal is in the register here already: it gets no row, and is named as a parent by its code all the same
 * @param hasRecord whether a clutch is in the register already: what is recorded of it is not told again
 * @throws ForeignRowProblem for what no register sheet can say
 */
export function foreignRows(
  sheet: SheetDocument,
  registerName: string,
  codes: ForeignCodes,
  isKnown: (animal: ToldAnimal) => boolean,
  hasRecord: (clutch: SheetClutch) => boolean,
): ForeignRows {
  const all: ToldAnimal[] = [...sheet.animals, ...sheet.ancestors];
  const byRef = new Map(all.map((animal) => [animal.ref, animal]));
  const clutches = new Map(sheet.clutches.map((clutch) => [clutch.ref, clutch]));
  const sources = new Map(sheet.sources.map((source) => [source.ref, source]));
  const codeOf = (ref: string): string => {
    const animal = byRef.get(ref);
    return animal ? codes.animal(animal) : '';
  };
  for (const { number, ref } of all)
    if (number !== null && parseRegistryNumber(number) === null)
      throw new ForeignRowProblem(say`"${number}", the number of ${ref}, is no registry number.`);
  const animals = all.filter((animal) => !isKnown(animal));
  const rowOf = (animal: ToldAnimal): Cells => {
    const clutch = clutches.get(animal.clutch ?? '');
    const source = sources.get(animal.source ?? '');
    return {
      code: codes.animal(animal),
      species: animal.species ?? '',
      line: animal.line ?? '',
      sex: animal.sex === null ? 'u' : animal.sex.charAt(0),
      hatched: animal.hatched ?? '',
      ...('status' in animal ? { outOfWater: animal.outOfWater ?? '', status: animal.status } : { status: 'unknown' }),
      ...(clutch
        ? { clutch: codes.onSheet(clutch.ref), ...(hasRecord(clutch) ? {} : parentCells(clutch, codeOf)) }
        : {}),
      ...(source && !clutch ? { source: codes.onSheet(source.ref), ...sourceCells(source) } : {}),
      notes: notesOf(animal, sheet, registerName),
    };
  };
  const records = animals.map(rowOf).map((cells) => sheetColumns.map((column) => cells[column] ?? ''));
  return { records: [sheetColumns.map(headerOf), ...records], animals };
}

function parentCells(clutch: SheetClutch, codeOf: (ref: string) => string): Cells {
  const laid = { laid: clutch.laid ?? '' };
  if (clutch.pairs !== null) return { parents: groupOf(clutch, codeOf), ...laid };
  const side = (role: 'sire' | 'dam', unknown: number): string => {
    const candidates = clutch.parents.filter(({ as }) => as === role);
    if (candidates.length === 0) return '';
    const told = candidates.map(({ animal, probability }) => `${codeOf(animal)}:${probability}`);
    return [...told, ...(unknown > leastOdds ? [`?:${unknown}`] : [])].join('/');
  };
  return { sire: side('sire', clutch.unknownSire), dam: side('dam', clutch.unknownDam), ...laid };
}

/** A register sheet knows groups of which any two are equally likely the pair, and no other joint odds. */
function groupOf({ pairs, ref }: SheetClutch, codeOf: (ref: string) => string): string {
  const told = pairs ?? [];
  const members = [...new Set(told.flatMap(({ a, b }) => [a, b]))];
  const isWhole = told.length === (members.length * (members.length - 1)) / 2;
  const isEven = told.every(({ probability }) => Math.abs(probability * told.length - 1) < 1e-9);
  if (!isWhole || !isEven)
    throw new ForeignRowProblem(
      say`The clutch ${ref} has joint odds that differ between its pairs, which cannot be taken in. Enter these animals by hand.`,
    );
  return members.map(codeOf).join('/');
}

function sourceCells({
  kind,
  date,
  baseKinship,
  countryOfExport,
  labelAsReceived,
  title,
  permitReferences,
}: SheetSource): Cells {
  const permits = permitReferences.length > 0 ? ` Permits named there: ${permitReferences.join(', ')}.` : '';
  return {
    sourceKind: kind ?? 'unknown',
    sourceDate: date ?? '',
    sourceBaseKinship: String(baseKinship ?? 0),
    countryOfExport: countryOfExport ?? '',
    label: labelAsReceived ?? '',
    labelStandingNote: `There it is called "${title}".${permits}`.slice(0, 2000),
  };
}

function notesOf(animal: ToldAnimal, sheet: SheetDocument, registerName: string): string {
  const there = animal.number === null ? 'which keeps it private' : `where its number is ${animal.number}`;
  const code = 'code' in animal && animal.code !== null ? ` and its code ${animal.code}` : '';
  const more =
    'hasMoreAncestors' in animal && animal.hasMoreAncestors
      ? ' Further ancestors are recorded there, which the sheet does not tell.'
      : '';
  return (
    `Taken in from the provenance sheet ${sheet.number} of ${registerName}, issued ${sheet.issued.slice(0, 10)}, ${there}${code}. ` +
    `What the sheet says was signed there, and was not reviewed here.${more}`
  );
}
