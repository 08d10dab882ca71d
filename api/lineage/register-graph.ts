import type { LabelKind, Sex, SourceKind, Status } from '../../shared/vocabulary.ts';
import type { Pedigree } from './kernel/pedigree.ts';

/** A line as the lineage needs it. */
export interface LineNode {
  readonly id: string;
  readonly name: string;
  readonly labelKind: LabelKind;
}

/** A source as the lineage needs it. */
export interface SourceNode {
  readonly id: string;
  readonly kind: SourceKind;
  readonly labelAsReceived: string | null;
  readonly baseKinship: number;
}

/** The parents of a clutch as they are recorded; individuals by their dense number, −1 for a frog nobody knows. */
export type ClutchParents =
  | { readonly mode: 'lists'; readonly sires: readonly Candidate[]; readonly dams: readonly Candidate[] }
  | { readonly mode: 'pairs'; readonly pairs: readonly Couple[] };

interface Candidate {
  readonly individual: number;
  readonly probability: number;
}

interface Couple {
  readonly a: number;
  readonly b: number;
  readonly probability: number;
}

/**
 * The whole register as arithmetic needs it: the kernel's typed arrays, and what leads from ids to dense numbers and back.
 * Individuals, clutches, sources and lines are numbered in the order of their ids, so that every copy of the service adds up
 * in the same order and comes to the same last digit.
 */
export interface RegisterGraph {
  readonly pedigree: Pedigree;
  readonly individualIds: readonly string[];
  readonly clutchIds: readonly string[];
  readonly sources: readonly SourceNode[];
  readonly lines: readonly LineNode[];
  /** Dense number of each id. */
  readonly individualOf: ReadonlyMap<string, number>;
  /** Dense number of each registry serial. */
  readonly individualOfSerial: ReadonlyMap<number, number>;
  readonly serials: Float64Array;
  readonly sexOf: readonly Sex[];
  readonly statusOf: readonly Status[];
  /** Line of each individual, or −1. */
  readonly lineOf: Int32Array;
  /** 1 where the record was withdrawn; such an animal still counts as an ancestor. */
  readonly withdrawn: Uint8Array;
  /** m: 1 where the parents of a clutch are recorded as joint pairs. */
  readonly jointPairs: Uint8Array;
}

/** The recorded parents of a clutch: the sides of its lists, or its joint pairs. */
export function parentsOf({ pedigree, jointPairs }: RegisterGraph, clutch: number): ClutchParents {
  const { pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const pairs: Couple[] = [];
  for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
    pairs.push({ a: pairSire[pair] ?? -1, b: pairDam[pair] ?? -1, probability: pairProbability[pair] ?? 0 });
  if (jointPairs[clutch] === 1) return { mode: 'pairs', pairs };
  return { mode: 'lists', sires: side(pairs, 'a'), dams: side(pairs, 'b') };
}

/** One side of lists that were multiplied out: Σ p(s,d) over the other side. */
function side(pairs: readonly Couple[], end: 'a' | 'b'): Candidate[] {
  const probabilities = new Map<number, number>();
  for (const pair of pairs) probabilities.set(pair[end], (probabilities.get(pair[end]) ?? 0) + pair.probability);
  return [...probabilities].map(([individual, probability]) => ({ individual, probability: Math.min(1, probability) }));
}
