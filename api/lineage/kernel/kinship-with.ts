import type { Inbreeding, InbreedingRange } from './inbreeding.ts';
import { kinshipMatrix } from './kinship.ts';
import { meanKinshipOf } from './mean-kinship.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * Expected kinship of one individual with each of others, which is the inbreeding coefficient of young that the two would have: two
 * passes over their ancestry, whatever their number (Colleau 2002).
 *
 * @returns one value for each of `others`, 0 to 1; ½(1+F) where it is the same individual.
 * @throws RangeError for an individual that does not exist.
 */
export function kinshipWith(pedigree: Pedigree, inbreeding: Inbreeding, one: number, others: Int32Array): Float64Array {
  return meanKinshipOf(pedigree, inbreeding, Int32Array.of(one), others);
}

/**
 * The same with the least and the greatest value over the candidate pairs of whichever of the two hatched from the later clutch: what
 * young of the two may have once it is known who its parents were. For clutch-mates, over the pairs of their clutch. Costs a pass
 * for each candidate parent of `one`.
 *
 * @param others none of them `one`
 */
export function kinshipRangesWith(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  one: number,
  others: Int32Array,
): InbreedingRange[] {
  const { positionOf } = inbreeding.order;
  const positionOfAnimal = (animal: number): number => positionOf[pedigree.clutchOf[animal] ?? -1] ?? -1;
  const own = positionOfAnimal(one);
  const later = others.filter((other) => positionOfAnimal(other) > own);
  const parentsOfLater = [...new Set(Array.from(later).flatMap((other) => parentsIn(pairsOf(pedigree, other))))];
  const asked = Int32Array.from([...others, ...parentsOfLater]);
  const found = kinshipWith(pedigree, inbreeding, one, asked);
  const ofOne = new Map(parentsOfLater.map((parent, place) => [parent, found[others.length + place] ?? 0]));
  const earlier = others.filter((other) => positionOfAnimal(other) < own);
  const ownPairs = pairsOf(pedigree, one);
  const fromParents = earlier.length === 0 ? [] : parentsIn(ownPairs);
  const ofParents = new Map(fromParents.map((parent) => [parent, kinshipWith(pedigree, inbreeding, parent, earlier)]));
  const placeOf = new Map(Array.from(earlier, (other, place) => [other, place]));
  const mates = Array.from(others).some((other) => positionOfAnimal(other) === own && own >= 0)
    ? ownPairs.map(siblingKinship(pedigree, inbreeding, parentsIn(ownPairs)))
    : [];
  return Array.from(others, (other, place) => {
    const expected = found[place] ?? 0;
    const position = positionOfAnimal(other);
    if (position > own) {
      const halved = pairsOf(pedigree, other).map(([a, b]) => ((ofOne.get(a) ?? 0) + (ofOne.get(b) ?? 0)) / 2);
      return rangeOf(expected, halved);
    }
    if (position < 0 && own < 0) return rangeOf(expected, []);
    if (position === own) return rangeOf(expected, mates);
    const at = placeOf.get(other) ?? -1;
    const of = (parent: number): number => ofParents.get(parent)?.[at] ?? 0;
    return rangeOf(
      expected,
      ownPairs.map(([a, b]) => (of(a) + of(b)) / 2),
    );
  });
}

type Pair = readonly [number, number];

function pairsOf({ clutchOf, pairStart, pairSire, pairDam }: Pedigree, animal: number): Pair[] {
  const clutch = clutchOf[animal] ?? -1;
  const pairs: Pair[] = [];
  if (clutch < 0) return pairs;
  for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
    pairs.push([pairSire[pair] ?? -1, pairDam[pair] ?? -1]);
  return pairs;
}

const parentsIn = (pairs: readonly Pair[]): number[] => [...new Set(pairs.flat())].filter((parent) => parent >= 0);

/** Kinship of two young of one clutch if a pair are their parents: ¼(φaa + φbb + 2φab); an unknown parent is unrelated, with φ ½ to itself. */
function siblingKinship(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  parents: readonly number[],
): (pair: Pair) => number {
  const kinships = kinshipMatrix(pedigree, inbreeding, Int32Array.from(parents));
  const placeOf = new Map(parents.map((parent, place) => [parent, place]));
  const between = (a: number, b: number): number => {
    const row = placeOf.get(a);
    const column = placeOf.get(b);
    return row === undefined || column === undefined ? 0 : (kinships[row * parents.length + column] ?? 0);
  };
  const self = (parent: number): number => (parent < 0 ? 0.5 : between(parent, parent));
  return ([a, b]) => (self(a) + self(b) + 2 * between(a, b)) / 4;
}

/** Sums of two roundings differ in their last digit: the expected value lies within the range in any case. */
function rangeOf(expected: number, values: readonly number[]): InbreedingRange {
  if (values.length < 2) return { expected, least: expected, greatest: expected };
  return { expected, least: Math.min(expected, ...values), greatest: Math.max(expected, ...values) };
}
