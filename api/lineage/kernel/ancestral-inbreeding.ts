import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * Ancestral inbreeding by the recursion of Ballou (1997): the probability that an allele has met itself before in an inbred
 * ancestor, the mean over both parents of fa + (1 − fa) F; 0 for founders and unknown parents. Where candidates are uncertain
 * each clutch takes the expectation over its pairs of its parents' own expectations. F of a founder is what its source states.
 *
 * The recursion takes an allele's history and the parent's F as independent, which they are not: the exact value
 * (`ancestral-descent.ts`) can be lower. One pass over the clutches given.
 *
 * @param clutches a set of clutches with all their ancestors' clutches, parents first
 * @returns one value a clutch, in the same order, 0 to 1: that of its young.
 */
export function ancestralInbreeding(pedigree: Pedigree, inbreeding: Inbreeding, clutches: Int32Array): Float64Array {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const placeOf = new Map<number, number>();
  const values = new Float64Array(clutches.length);
  const passedOn = (parent: number): number => {
    if (parent < 0) return 0;
    const clutch = clutchOf[parent] as number;
    const before = clutch < 0 ? 0 : (values[placeOf.get(clutch) ?? -1] as number);
    return before + (1 - before) * inbreedingOf(pedigree, inbreeding, parent).expected;
  };
  clutches.forEach((clutch, place) => {
    placeOf.set(clutch, place);
    let sum = 0;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const both = passedOn(pairSire[pair] as number) + passedOn(pairDam[pair] as number);
      sum += 0.5 * (pairProbability[pair] as number) * both;
    }
    values[place] = sum;
  });
  return values;
}
