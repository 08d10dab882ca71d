import type { Inbreeding, InbreedingRange } from './inbreeding.ts';
import { kinshipMatrix } from './kinship.ts';
import type { Pedigree } from './pedigree.ts';

/** One possible pair of parents of young not yet hatched; −1 is a frog nobody knows. */
export interface PlannedPair {
  readonly sire: number;
  readonly dam: number;
  /** Above 0, at most 1. */
  readonly probability: number;
}

/**
 * Inbreeding that the young of a clutch not yet laid would have: Σ p φ(sire,dam), with the least and greatest φ.
 *
 * @throws RangeError without a pair, for odds that do not sum to 1, for an individual that does not exist or that is
 *   both parents.
 */
export function forecastYoung(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  pairs: readonly PlannedPair[],
): InbreedingRange {
  requirePairs(pairs);
  const parents = [...new Set(pairs.flatMap(({ sire, dam }) => [sire, dam]))].filter((parent) => parent !== -1);
  const placeOf = new Map(parents.map((parent, place) => [parent, place]));
  const kinships = kinshipMatrix(pedigree, inbreeding, Int32Array.from(parents));
  let expected = 0;
  let least = Infinity;
  let greatest = -Infinity;
  for (const { sire, dam, probability } of pairs) {
    const row = placeOf.get(sire);
    const column = placeOf.get(dam);
    const known = row !== undefined && column !== undefined;
    const kinship = known ? (kinships[row * parents.length + column] as number) : 0;
    expected += probability * kinship;
    least = Math.min(least, kinship);
    greatest = Math.max(greatest, kinship);
  }
  return { expected, least, greatest };
}

function requirePairs(pairs: readonly PlannedPair[]): void {
  let sum = 0;
  for (const { sire, dam, probability } of pairs) {
    if (sire === dam && sire !== -1) throw new RangeError(`Individual ${sire} cannot be both parents of one pair.`);
    if (!(probability > 0 && probability <= 1 + 1e-9))
      throw new RangeError(`A pair has probability ${probability}; it must be above 0, at most 1.`);
    sum += probability;
  }
  if (!(Math.abs(sum - 1) <= 1e-9)) throw new RangeError(`The pair probabilities sum to ${sum}, not to 1.`);
}
