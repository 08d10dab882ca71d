import type { LineKinshipView } from './measures.view.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { isLiving } from './register-graph.ts';

interface LivingKinships {
  /** Mean kinships of the living, the least first. */
  readonly sorted: Float64Array;
  readonly mean: number;
}

/** What was sorted once for a line stays as long as its mean kinships do. */
const known = new WeakMap<ReadonlyMap<number, number>, LivingKinships>();

/** The mean kinships of the animal's line, and where its own stands among them; null without a line or without living animals. */
export function lineStandingOf(snapshot: LineageSnapshot, individual: number): LineKinshipView | null {
  const line = snapshot.graph.lineOf[individual] ?? -1;
  if (line < 0) return null;
  const means = snapshot.meanKinshipsOfLine(line);
  const living = known.get(means) ?? sortLiving(snapshot, means);
  known.set(means, living);
  if (living.sorted.length === 0) return null;
  const own = isLiving(snapshot.graph, individual) ? means.get(individual) : undefined;
  return {
    mean: living.mean,
    living: living.sorted.length,
    rank: own === undefined ? null : 1 + countBelow(living.sorted, own),
  };
}

function sortLiving({ graph }: LineageSnapshot, means: ReadonlyMap<number, number>): LivingKinships {
  const values: number[] = [];
  for (const [animal, mean] of means) if (isLiving(graph, animal)) values.push(mean);
  const sorted = Float64Array.from(values).sort();
  return { sorted, mean: sorted.reduce((sum, mean) => sum + mean, 0) / sorted.length };
}

/** How many of sorted values are less; those that differ by rounding count as the same. */
function countBelow(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < value - 1e-12) low = middle + 1;
    else high = middle;
  }
  return low;
}
