import type { IndividualItem, Inbreeding, StandingShare } from '$lib/api/types.ts';

export type Side = 'row' | 'column';

/** One animal of the grid with what the register counts for it. */
export interface Matched {
  animal: IndividualItem;
  side: Side;
  standings: StandingShare[];
  /** True where nothing is recorded above it, so that every kinship of it counts from nothing. */
  nothingKnown: boolean;
}

export interface Cell {
  row: IndividualItem;
  column: IndividualItem;
  /** Expected inbreeding of their young, 0 to 1: the kinship of the two. Null for an animal with itself. */
  expected: number | null;
  /** One of the two has no recorded ancestors: a 0 here says nothing. */
  nothingKnown: boolean;
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
  kinship: (one: string, other: string) => number | null,
  figures: ReadonlyMap<string, Figured>,
): Grid {
  const sides = sidesOf(animals, put);
  const matched = animals.map((animal) => ({
    animal,
    side: sides.get(animal.id) ?? 'row',
    standings: figures.get(animal.id)?.standings ?? [],
    nothingKnown: figures.get(animal.id)?.inbreeding.nothingKnown ?? false,
  }));
  const rows = matched.filter((one) => one.side === 'row');
  const columns = matched.filter((one) => one.side === 'column');
  const mean = (one: Matched) => {
    const others = one.side === 'row' ? columns : rows;
    const values = others.flatMap((other) => kinship(one.animal.id, other.animal.id) ?? []);
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
    sorted.columns.map((column) => ({
      row: row.animal,
      column: column.animal,
      expected: kinship(row.animal.id, column.animal.id),
      nothingKnown: row.nothingKnown || column.nothingKnown,
    })),
  );
  return { ...sorted, cells };
}

/** A zero that rests on an animal of which no ancestor is recorded. */
export function isBlind(cell: Cell): boolean {
  return cell.nothingKnown && (cell.expected ?? 0) < 1e-9;
}
