import type { InbreedingRange } from './kernel/inbreeding.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

/** F of young that two animals would have, and how far back the records go that it rests on. */
export interface YoungInbreeding extends InbreedingRange {
  /** Whether 0 stands for want of knowledge. */
  readonly nothingKnown: boolean;
  /** Generations on the longest path from the young to a founder. */
  readonly depth: number;
  /** Generations back in which every ancestor is certainly a recorded one. */
  readonly fullDepth: number;
}

const ROUNDING = 1e-12;

/** Says of the F that young of two recorded animals would have what it rests on. Costs nothing but a look at both. */
export function restsOn(
  snapshot: LineageSnapshot,
  one: number,
  other: number,
  range: InbreedingRange,
): YoungInbreeding {
  const [first, second] = [snapshot.depthOf(one), snapshot.depthOf(other)];
  return {
    ...range,
    nothingKnown: range.expected < ROUNDING && (snapshot.isNothingKnown(one) || snapshot.isNothingKnown(other)),
    depth: 1 + Math.max(first.depth, second.depth),
    fullDepth: 1 + Math.min(first.fullDepth, second.fullDepth),
  };
}
