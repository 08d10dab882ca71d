import { sexes, statuses, type LabelKind, type Sex, type SourceKind, type Status } from '../../shared/vocabulary.ts';
import type { IdTable } from './id-table.ts';
import type { Pedigree } from './kernel/pedigree.ts';
import type { ClaimsOfRecords } from './register-claims.ts';
import type { SerialTable } from './serial-table.ts';

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

/** In `withdrawn`: the record was withdrawn; the animal still counts as an ancestor. */
export const WITHDRAWN = 1;
/** In `withdrawn`: the row is gone (its raising was undone); its number stays empty until the register is next read whole. */
export const REMOVED = 2;

/**
 * The whole register as arithmetic needs it: the kernel's typed arrays, and what leads from ids to dense numbers and back.
 * Individuals, clutches, sources and lines are numbered in the order of their ids as they were read, later ones behind.
 *
 * `individuals`, `clutches` and `bySerial` may know of later records: a number beyond the arrays is none.
 */
export interface RegisterGraph {
  readonly pedigree: Pedigree;
  readonly individuals: IdTable;
  readonly clutches: IdTable;
  readonly bySerial: SerialTable;
  readonly sources: readonly SourceNode[];
  readonly lines: readonly LineNode[];
  readonly claims: ClaimsOfRecords;
  readonly serials: Float64Array;
  /** n: place in `sexes`. */
  readonly sexCodes: Uint8Array;
  /** n: place in `statuses`. */
  readonly statusCodes: Uint8Array;
  /** Line of each individual, or −1. */
  readonly lineOf: Int32Array;
  /** n: 0, or `WITHDRAWN` or `REMOVED`. */
  readonly withdrawn: Uint8Array;
  /** m: 1 where the parents of a clutch are recorded as joint pairs. */
  readonly jointPairs: Uint8Array;
}

/** Sex of an individual. */
export function sexOf({ sexCodes }: RegisterGraph, individual: number): Sex {
  return sexes[sexCodes[individual] ?? -1] ?? 'unsexed';
}

/** Status of an individual. */
export function statusOf({ statusCodes }: RegisterGraph, individual: number): Status {
  return statuses[statusCodes[individual] ?? -1] ?? 'unknown';
}

/** Whether an animal lives and its record stands. */
export function isLiving({ statusCodes, withdrawn }: RegisterGraph, individual: number): boolean {
  return statusCodes[individual] === ALIVE && withdrawn[individual] === 0;
}

const ALIVE = statuses.indexOf('alive');

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
