import type { IndividualItem, Inbreeding, StandingShare, YoungInbreeding } from '$lib/api/types.ts';
import { youngDepthInWords } from '$lib/match/mate-words.ts';
import { percent, percentRange } from '$lib/ui/figures.ts';

export type Side = 'row' | 'column';

/** One animal of the grid with what the register counts for it. */
export interface Matched {
  animal: IndividualItem;
  side: Side;
  standings: StandingShare[];
  /** True where nothing is recorded above it, so that every kinship of it counts from nothing. */
  nothingKnown: boolean;
  /** Mean kinship with the living of its line and depth, in words. */
  told: string[];
}

export interface Cell {
  row: IndividualItem;
  column: IndividualItem;
  /** Expected inbreeding of their young, 0 to 1: the kinship of the two. Null for an animal with itself. */
  expected: number | null;
  /** One of the two has no recorded ancestors, and nobody above both is known: the 0 says nothing. */
  nothingKnown: boolean;
  /** Least and greatest where parents are uncertain, in words; else empty. */
  range: string;
  /** How far back the young would be known, in words. */
  depth: string;
}

export interface Grid {
  rows: Matched[];
  columns: Matched[];
  cells: Cell[][];
}

/** What is needed to place animals on both sides of a grid. */
export interface Figured {
  inbreeding: Pick<Inbreeding, 'nothingKnown'>;
  standings: StandingShare[];
  depth: number;
  meanKinship: number | null;
}

/** The side an animal stands on: males left, females above; unsexed ones where they were put, else on the shorter side. */
export function sidesOf(animals: readonly IndividualItem[], put: ReadonlyMap<string, Side>): Map<string, Side> {
  const sides = new Map<string, Side>();
  const count = { row: 0, column: 0 };
  const place = (id: string, side: Side) => {
    sides.set(id, side);
    count[side] += 1;
  };
  for (const animal of animals)
    if (animal.sex !== 'unsexed') place(animal.id, animal.sex === 'male' ? 'row' : 'column');
  for (const animal of animals)
    if (animal.sex === 'unsexed')
      place(animal.id, put.get(animal.id) ?? (count.row <= count.column ? 'row' : 'column'));
  return sides;
}

/** Builds the grid, both sides sorted by mean expected F of the young, least related first, then by registry number. */
export function buildGrid(
  animals: readonly IndividualItem[],
  put: ReadonlyMap<string, Side>,
  young: (one: string, other: string) => YoungInbreeding | null,
  figures: ReadonlyMap<string, Figured>,
): Grid {
  const sides = sidesOf(animals, put);
  const matched = animals.map((animal) => ({
    animal,
    side: sides.get(animal.id) ?? 'row',
    standings: figures.get(animal.id)?.standings ?? [],
    nothingKnown: figures.get(animal.id)?.inbreeding.nothingKnown ?? false,
    told: toldOf(figures.get(animal.id)),
  }));
  const rows = matched.filter((one) => one.side === 'row');
  const columns = matched.filter((one) => one.side === 'column');
  const mean = (one: Matched) => {
    const others = one.side === 'row' ? columns : rows;
    const values = others.flatMap((other) => young(one.animal.id, other.animal.id)?.expected ?? []);
    return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  };
  const order = (list: Matched[]) =>
    list
      .map((one) => ({ one, mean: mean(one) }))
      .sort(
        (a, b) => a.mean - b.mean || a.one.animal.number.localeCompare(b.one.animal.number, 'en', { numeric: true }),
      )
      .map(({ one }) => one);
  const sorted = { rows: order(rows), columns: order(columns) };
  const cells = sorted.rows.map((row) =>
    sorted.columns.map((column) => cellOf(row.animal, column.animal, young(row.animal.id, column.animal.id))),
  );
  return { ...sorted, cells };
}

function cellOf(row: IndividualItem, column: IndividualItem, young: YoungInbreeding | null): Cell {
  if (!young) return { row, column, expected: null, nothingKnown: false, range: '', depth: '' };
  const { expected, least, greatest, nothingKnown } = young;
  const range = greatest - least > 1e-9 ? percentRange(least, greatest) : '';
  return { row, column, expected, nothingKnown, range, depth: youngDepthInWords(young) };
}

/** No figure of a pair stands without the depth of both. */
function toldOf(figures: Figured | undefined): string[] {
  if (!figures) return [];
  const kinship = figures.meanKinship === null ? [] : [`mk ${percent(figures.meanKinship)}`];
  return [...kinship, figures.inbreeding.nothingKnown ? 'origin unknown' : `depth ${figures.depth}`];
}

/** Below the figure stands its range; a true 0 has its depth there. */
export function secondLine({ expected, range, depth, nothingKnown }: Cell): string {
  if (range !== '') return range.replace('\u202f%', '');
  return expected === 0 && !nothingKnown ? depth : '';
}

/** A zero that rests on an animal of which no ancestor is recorded. */
export function isBlind(cell: Cell): boolean {
  return cell.nothingKnown;
}
