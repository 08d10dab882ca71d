import type { Pedigree } from './pedigree.ts';

/**
 * Expected genome shares by classes of founders, such as the standing of their labels, for all animals of some clutches at once: one pass
 * over the pairs of parents.
 *
 * @param clutches parents first, with all clutches that their parents hatched from
 * @param classOf class of a founder, 0 .. classes−1; of a parent that nobody knows for −1
 * @returns what gives the shares of an animal by class, 0 to 1 each; they sum to 1. Good until it is next called.
 */
export function classShares(
  pedigree: Pedigree,
  clutches: Int32Array,
  classes: number,
  classOf: (founder: number) => number,
): (individual: number) => Float64Array {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const places = new Map(Array.from(clutches, (clutch, place) => [clutch, place]));
  const shares = new Float64Array(clutches.length * classes);
  const whole = new Float64Array(classes);
  const of = (individual: number): Float64Array => {
    const clutch = individual < 0 ? -1 : (clutchOf[individual] ?? -1);
    if (clutch >= 0) {
      const place = places.get(clutch) ?? 0;
      return shares.subarray(place * classes, (place + 1) * classes);
    }
    whole.fill(0);
    whole[classOf(individual)] = 1;
    return whole;
  };
  clutches.forEach((clutch, place) => {
    const sums = shares.subarray(place * classes, (place + 1) * classes);
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      for (const parent of [pairSire[pair] ?? -1, pairDam[pair] ?? -1]) {
        const half = 0.5 * (pairProbability[pair] ?? 0);
        of(parent).forEach((share, at) => (sums[at] = (sums[at] ?? 0) + half * share));
      }
  });
  return of;
}
