import { collectAncestry } from './ancestry.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * Pedigree completeness index over some generations, 2SD/(S+D): S is the mean over generations (parents are generation 1)
 * of the share of known ancestors on the sire's side, D on the dam's (MacCluer et al. 1983). Expected over candidates;
 * where sexes are not known, sides are the first and the second of each pair.
 *
 * @param generations 1 or more
 * @returns 0 to 1; 0 for founders and wherever one side is unknown.
 */
export function completenessIndex(
  pedigree: Pedigree,
  order: PedigreeOrder,
  individual: number,
  generations: number,
): number {
  if (!(Number.isInteger(generations) && generations >= 1))
    throw new RangeError(`Completeness needs a whole number of generations, 1 or more; ${generations} is none.`);
  const knownSums = sumsOfKnownAncestors(pedigree, order, individual, generations);
  const clutch = pedigree.clutchOf[individual] as number; // the search for ancestors has refused other numbers
  if (clutch < 0) return 0;
  const { pairStart, pairSire, pairDam, pairProbability } = pedigree;
  let sireSide = 0;
  let damSide = 0;
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
    const probability = pairProbability[pair] as number;
    sireSide += probability * knownSums(pairSire[pair] as number);
    damSide += probability * knownSums(pairDam[pair] as number);
  }
  const sum = sireSide + damSide;
  return sum === 0 ? 0 : (2 * sireSide * damSide) / sum / generations;
}

/**
 * For an ancestor of the individual: the share of its ancestors that is known, summed over generations 0 (itself) to
 * generations − 1 back.
 */
function sumsOfKnownAncestors(
  pedigree: Pedigree,
  order: PedigreeOrder,
  individual: number,
  generations: number,
): (ancestor: number) => number {
  const ancestry = collectAncestry(pedigree, order, [individual]);
  const { animals, clutches, youngStart, parentStart, parents, weights } = ancestry;
  const known = new Float64Array(animals.length * generations);
  for (let animal = 0; animal < animals.length; animal++) known[animal * generations] = 1;
  for (let clutch = 0; clutch < clutches.length; clutch++)
    for (let young = youngStart[clutch] as number; young < (youngStart[clutch + 1] as number); young++)
      for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++)
        for (let back = 1; back < generations; back++) {
          const at = young * generations + back;
          const ofParent = known[(parents[link] as number) * generations + back - 1] as number;
          known[at] = (known[at] as number) + (weights[link] as number) * ofParent;
        }
  return (ancestor) => {
    if (ancestor < 0) return 0;
    const from = ancestry.find(ancestor) * generations;
    let sum = 0;
    for (let back = 0; back < generations; back++) sum += known[from + back] as number;
    return sum;
  };
}
