import { referenceName } from '$lib/records/reference-name.ts';
import { partInWords, partsOf } from '$lib/ui/shares.ts';
import type { ChartDescendant, Family, YoungOf } from './families.ts';

/** A clutch of the chart as a row of its table. */
export interface DescendantRow {
  key: string;
  /** 1 is the generation of the animal's own young. */
  generation: number;
  parent: ChartDescendant;
  young: Family;
}

/** The clutches that a chart of descendants draws, generation by generation, each under every parent that it has there. */
export function descendantRows(root: ChartDescendant, youngOf: YoungOf, opened: ReadonlySet<string>): DescendantRow[] {
  const rows: DescendantRow[] = [];
  const met = new Set([root.id]);
  let level: ChartDescendant[] = [root];
  for (let generation = 1; level.length > 0; generation++) {
    const next: ChartDescendant[] = [];
    for (const parent of level) {
      if (!opened.has(parent.id)) continue;
      for (const young of youngOf.get(parent.id) ?? []) {
        rows.push({ key: `${parent.id} ${young.clutch.id}`, generation, parent, young });
        for (const animal of young.animals)
          if (!met.has(animal.id)) {
            met.add(animal.id);
            next.push(animal);
          }
      }
    }
    level = next;
  }
  return rows;
}

/** Animals whose label shares are the same, in words. */
export interface SharesInWords {
  /** Their names; empty where they are all that anything is told of. */
  whose: string;
  shares: string;
}

/** The label shares of some animals in words, those that are alike together; of a private animal none are told. */
export function sharesOfYoung(animals: readonly ChartDescendant[]): SharesInWords[] {
  const alike = new Map<string, string[]>();
  for (const animal of animals) {
    const shares = sharesOf(animal);
    if (shares !== '') alike.set(shares, [...(alike.get(shares) ?? []), referenceName(animal)]);
  }
  return [...alike].map(([shares, names]) => ({ whose: alike.size === 1 ? '' : names.join(', '), shares }));
}

/** The label shares of one animal in words; empty where none are told. */
export function sharesOf({ isPrivate, standings = [] }: ChartDescendant): string {
  return isPrivate ? '' : partsOf(standings).map(partInWords).join(', ');
}
