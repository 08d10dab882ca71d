import type { YoungOfAnimal } from '$lib/api/types.ts';
import type { ChartDescendant } from './descendant-layout.ts';

/** A clutch of the chart as a row of its table. */
export interface DescendantRow {
  key: string;
  /** 1 is the generation of the animal's own young. */
  generation: number;
  parent: ChartDescendant;
  young: YoungOfAnimal;
}

/** The clutches that a chart of descendants draws, generation by generation, each under every parent that it has there. */
export function descendantRows(
  root: ChartDescendant,
  youngOf: ReadonlyMap<string, readonly YoungOfAnimal[]>,
  opened: ReadonlySet<string>,
): DescendantRow[] {
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
