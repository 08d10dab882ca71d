import type { SheetAncestor, SheetAnimal, SheetClutch, SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { SHEET_GENERATIONS } from '../../../shared/sheet/sheet-document.ts';
import type { Drawing, Paper } from '../../platform/pdf/paper.ts';
import { percent } from '../../provenance/flag-words.ts';

/** Height of a line of text, of one ancestor of the last generation, and of the smallest chart, in points. */
const LINE = 9;
const ROW = 13;
const LEAST = 72;
/** Most candidates that are named at one place of a chart. */
const CANDIDATES_MOST = 3;

/** The records of a sheet by their references. */
export interface SheetRecords {
  readonly animals: ReadonlyMap<string, SheetAnimal | SheetAncestor>;
  readonly clutches: ReadonlyMap<string, SheetClutch>;
}

export function recordsOf({ animals, ancestors, clutches }: SheetDocument): SheetRecords {
  return {
    animals: new Map([...animals, ...ancestors].map((animal) => [animal.ref, animal])),
    clutches: new Map(clutches.map((clutch) => [clutch.ref, clutch])),
  };
}

/** What stands at one place of a chart: a side of a clutch. */
interface Place {
  readonly lines: readonly string[];
  /** The animal, where there is only one that it can be. */
  readonly only: SheetAnimal | SheetAncestor | null;
}

/** Draws the ancestors of the young of a clutch, sires above dams, four generations from left to right. */
export function drawChart(paper: Paper, clutch: SheetClutch, records: SheetRecords, of: string): void {
  const instead = `Chart of the ancestors of ${of} over ${SHEET_GENERATIONS} generations, sires above dams. The table of ancestors tells the same in words.`;
  const height = Math.max(LEAST, ROW * 2 ** generationsOf(clutch, records, 1));
  paper.figure(height + 14, instead, (drawing) => {
    drawing.text(of, 0, height / 2 - 5, drawing.width / (SHEET_GENERATIONS + 1) - 12);
    drawParents(drawing, clutch, records, { generation: 1, top: 0, height });
  });
}

/** How many generations a chart has to draw. */
function generationsOf(clutch: SheetClutch, records: SheetRecords, generation: number): number {
  const above = sidesOf(clutch, records).flatMap(({ only }) => records.clutches.get(only?.clutch ?? '') ?? []);
  if (generation === SHEET_GENERATIONS) return generation;
  return Math.max(generation, ...above.map((one) => generationsOf(one, records, generation + 1)));
}

interface Span {
  readonly generation: number;
  readonly top: number;
  readonly height: number;
}

function drawParents(drawing: Drawing, clutch: SheetClutch, records: SheetRecords, span: Span): void {
  const { generation, top, height } = span;
  const column = drawing.width / (SHEET_GENERATIONS + 1);
  const x = generation * column;
  const middle = top + height / 2;
  for (const [at, { lines, only }] of sidesOf(clutch, records).entries()) {
    const half = { generation: generation + 1, top: top + (at * height) / 2, height: height / 2 };
    const y = half.top + half.height / 2;
    drawing.line([
      [x - 10, middle],
      [x - 6, middle],
      [x - 6, y],
      [x - 2, y],
    ]);
    const first = y - (LINE * lines.length) / 2;
    lines.forEach((line, place) => drawing.text(line, x, first + place * LINE, column - 12));
    const above = only?.clutch ? records.clutches.get(only.clutch) : undefined;
    if (above && generation < SHEET_GENERATIONS) drawParents(drawing, above, records, half);
  }
}

/** The two sides of a clutch; where the sexes are not known, both list all that may be parents. */
function sidesOf(clutch: SheetClutch, records: SheetRecords): Place[] {
  return (['sire', 'dam'] as const).map((side): Place => {
    const candidates = clutch.parents.filter(({ as }) => as === side || as === 'either');
    const unknown = side === 'sire' ? clutch.unknownSire : clutch.unknownDam;
    const [first] = candidates;
    if (!first) return { lines: [`${side} unknown`], only: null };
    const animal = records.animals.get(first.animal) ?? null;
    if (candidates.length === 1 && unknown === 0) return { lines: [nameOf(animal)], only: animal };
    const named = candidates.map(
      ({ animal: ref, probability }) => `${nameOf(records.animals.get(ref) ?? null)} ${percent(probability)}`,
    );
    const all = [...named, ...(unknown > 0 ? [`unknown ${percent(unknown)}`] : [])];
    const shown = all.slice(0, all.length > CANDIDATES_MOST ? CANDIDATES_MOST - 1 : CANDIDATES_MOST);
    return {
      lines: shown.length < all.length ? [...shown, `or ${all.length - shown.length} others`] : shown,
      only: null,
    };
  });
}

/** An animal in a chart or table: its number and the year in which it hatched. */
export function nameOf(animal: SheetAnimal | SheetAncestor | null): string {
  if (!animal) return 'unknown';
  if (animal.number === null) return 'private animal';
  const year = /\d{3}[\dX]/u.exec(animal.hatched ?? '')?.[0];
  return year === undefined ? animal.number : `${animal.number}, ${year}`;
}
