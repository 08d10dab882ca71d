import type { LineFamilies } from './line-families.ts';

/** Where families stand in time. */
export interface FamilyTimes {
  /** Decimal year of each family. */
  readonly years: Float64Array;
  /** 1 where the family does not stand at a recorded day: its date is vague, missing, or gave way to the order of descent. */
  readonly loose: Uint8Array;
  /** Families, parents before their young. */
  readonly order: Int32Array;
  /** Whether any date at all is recorded; else the years mean order only. */
  readonly isDated: boolean;
}

/** How families hang together: the families of the parents of each, and those of the young of each, without repeats. */
export interface FamilyKin {
  readonly above: readonly (readonly number[])[];
  readonly below: readonly (readonly number[])[];
}

export function familyKin({ families, familyOf, links }: LineFamilies): FamilyKin {
  const above: Set<number>[] = families.map(() => new Set());
  const below: Set<number>[] = families.map(() => new Set());
  for (const { animal, family } of links) {
    const from = familyOf[animal] ?? -1;
    if (from < 0 || from === family) continue;
    above[family]?.add(from);
    below[from]?.add(family);
  }
  const sorted = (sets: Set<number>[]): number[][] => sets.map((set) => [...set].sort((one, other) => one - other));
  return { above: sorted(above), below: sorted(below) };
}

/**
 * Gives every family a time. Recorded dates stand; vague ones give way to the order of descent, within what they may mean where that is
 * enough; missing ones are spread evenly between what is above and what is below them.
 *
 * @param least years from a family to those of its young at least, by the family's place: the room that its drawing takes
 */
export function familyTimes(
  { families }: LineFamilies,
  kin: FamilyKin,
  least: (family: number) => number,
): FamilyTimes {
  const order = parentsFirst(kin);
  const years = Float64Array.from(families, ({ dating }) => dating.year ?? NaN);
  const loose = Uint8Array.from(families, ({ dating }) => (dating.isFirm ? 0 : 1));
  const isDated = years.some((year) => !Number.isNaN(year));
  spreadUndated(years, order, kin);
  // what is vague makes room for its young first
  for (let at = order.length - 1; at >= 0; at--) {
    const family = order[at] ?? 0;
    if (loose[family] === 0) continue;
    const limit = (kin.below[family] ?? []).reduce(
      (soonest, young) => Math.min(soonest, (years[young] ?? Infinity) - least(family)),
      Infinity,
    );
    if ((years[family] ?? 0) > limit) years[family] = limit;
  }
  for (const family of order) {
    const limit = (kin.above[family] ?? []).reduce(
      (latest, parent) => Math.max(latest, (years[parent] ?? -Infinity) + least(parent)),
      -Infinity,
    );
    if ((years[family] ?? 0) >= limit) continue;
    years[family] = limit;
    loose[family] = 1;
  }
  return { years, loose, order, isDated };
}

/** Parents before their young, the first by place among those that may come next. */
function parentsFirst({ above, below }: FamilyKin): Int32Array {
  const waiting = Int32Array.from(above, (parents) => parents.length);
  const order = new Int32Array(above.length);
  let filled = 0;
  waiting.forEach((count, family) => {
    if (count === 0) order[filled++] = family;
  });
  for (let next = 0; next < filled; next++)
    for (const young of below[order[next] ?? 0] ?? []) {
      const left = (waiting[young] ?? 0) - 1;
      waiting[young] = left;
      if (left === 0) order[filled++] = young;
    }
  // the register lets no animal be its own ancestor; whatever would hang in a loop comes last rather than never
  waiting.forEach((count, family) => {
    if (count > 0) order[filled++] = family;
  });
  return order;
}

/** Usual years from one generation to the next where nothing better is known. */
const USUAL_GAP = 1.5;

function spreadUndated(years: Float64Array, order: Int32Array, { above, below }: FamilyKin): void {
  const count = years.length;
  const [fromAbove, stepsAbove] = [new Float64Array(count).fill(NaN), new Int32Array(count)];
  const [fromBelow, stepsBelow] = [new Float64Array(count).fill(NaN), new Int32Array(count)];
  const nearest = (
    family: number,
    kin: readonly number[],
    [from, steps]: [Float64Array, Int32Array],
    isNearer: (year: number, other: number) => boolean,
  ): void => {
    if (!Number.isNaN(years[family] ?? NaN)) {
      from[family] = years[family] ?? NaN;
      return;
    }
    for (const other of kin) {
      const year = from[other] ?? NaN;
      if (Number.isNaN(year) || !(Number.isNaN(from[family] ?? NaN) || isNearer(year, from[family] ?? NaN))) continue;
      from[family] = year;
      steps[family] = (steps[other] ?? 0) + 1;
    }
  };
  for (const family of order) nearest(family, above[family] ?? [], [fromAbove, stepsAbove], (a, b) => a > b);
  for (let at = count - 1; at >= 0; at--) {
    const family = order[at] ?? 0;
    nearest(family, below[family] ?? [], [fromBelow, stepsBelow], (a, b) => a < b);
  }
  for (const family of order) {
    if (!Number.isNaN(years[family] ?? NaN)) continue;
    const [up, down] = [fromAbove[family] ?? NaN, fromBelow[family] ?? NaN];
    const [over, under] = [stepsAbove[family] ?? 0, stepsBelow[family] ?? 0];
    years[family] = Number.isNaN(up)
      ? Number.isNaN(down)
        ? 0
        : down - under * USUAL_GAP
      : Number.isNaN(down)
        ? up + over * USUAL_GAP
        : up + ((down - up) * over) / (over + under);
  }
}
