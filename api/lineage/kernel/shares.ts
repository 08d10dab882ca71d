import { collectAncestry } from './ancestry.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** An origin that an animal's genes are expected to come from, with the share of its genome. */
export type FounderShare =
  | { readonly kind: 'source'; readonly source: number; readonly share: number }
  /** A founder of unknown origin. */
  | { readonly kind: 'individual'; readonly individual: number; readonly share: number }
  /** Parents of a clutch that nobody knows. */
  | { readonly kind: 'unknown parent'; readonly clutch: number; readonly share: number };

/** What counts as 0 when a clutch's weights should add up to 1. */
const ROUNDING = 1e-12;

/**
 * Expected genome shares of an individual: half from each parent, averaged over candidates. A founder is all of itself.
 *
 * @returns sources, then founders of unknown origin, then unknown parents, each with a share above 0; they sum to 1.
 * @throws RangeError for an individual that does not exist.
 */
export function founderShares(pedigree: Pedigree, order: PedigreeOrder, individual: number): FounderShare[] {
  const ancestry = collectAncestry(pedigree, order, [individual]);
  const { animals, localOf, founders, clutches, youngStart, parentStart, parents, weights } = ancestry;
  const share = new Float64Array(animals.length);
  share[localOf[individual] as number] = 1;
  const unknown: FounderShare[] = [];
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let sum = 0;
    for (let young = youngStart[clutch] as number; young < (youngStart[clutch + 1] as number); young++)
      sum += share[young] as number;
    let missing = 1;
    for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
      const parent = parents[link] as number;
      const weight = weights[link] as number;
      share[parent] = (share[parent] as number) + weight * sum;
      missing -= weight;
    }
    if (missing > ROUNDING)
      unknown.push({ kind: 'unknown parent', clutch: clutches[clutch] as number, share: missing * sum });
  }
  const bySource = new Map<number, number>();
  const individuals: FounderShare[] = [];
  for (let founder = 0; founder < founders; founder++) {
    const number = animals[founder] as number;
    const source = pedigree.sourceOf[number] as number;
    const own = share[founder] as number;
    if (source >= 0) bySource.set(source, (bySource.get(source) ?? 0) + own);
    else individuals.push({ kind: 'individual', individual: number, share: own });
  }
  const sources = [...bySource].map(([source, own]): FounderShare => ({ kind: 'source', source, share: own }));
  return [...sources, ...individuals, ...unknown];
}

/** A share of the genome with its lowest possible value; n values each, 0 to 1. */
export interface WeightedShare {
  readonly expected: Float64Array;
  readonly least: Float64Array;
}

/**
 * Share of every individual's genome that comes from founders with some property, such as "its label is traced".
 *
 * `least` lets each clutch of the ancestry take the candidate pair with the lowest share, so the true share cannot be
 * lower, whichever candidates are the parents.
 *
 * @param weightOfSource k: 0 to 1, how far founders of a source have the property
 * @param weightOfUnknownOrigin n: the same for founders of unknown origin; other entries are not read
 * @param weightOfUnknownParent the same for parents that nobody knows
 */
export function shareOf(
  pedigree: Pedigree,
  order: PedigreeOrder,
  weightOfSource: Float64Array,
  weightOfUnknownOrigin: Float64Array,
  weightOfUnknownParent: number,
): WeightedShare {
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const expected = new Float64Array(order.clutches.length);
  const least = new Float64Array(order.clutches.length);
  const shareIn = (ofClutches: Float64Array, individual: number): number => {
    if (individual < 0) return weightOfUnknownParent;
    const clutch = clutchOf[individual] as number;
    if (clutch >= 0) return ofClutches[clutch] as number;
    const source = sourceOf[individual] as number;
    return (source >= 0 ? weightOfSource[source] : weightOfUnknownOrigin[individual]) as number;
  };
  for (const clutch of order.clutches) {
    let sum = 0;
    let lowest = Infinity;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const sire = pairSire[pair] as number;
      const dam = pairDam[pair] as number;
      sum += 0.5 * (pairProbability[pair] as number) * (shareIn(expected, sire) + shareIn(expected, dam));
      lowest = Math.min(lowest, 0.5 * (shareIn(least, sire) + shareIn(least, dam)));
    }
    expected[clutch] = sum;
    least[clutch] = Math.min(lowest, sum); // rounding must not lift the least above the expected
  }
  return {
    expected: Float64Array.from(clutchOf, (_, individual) => shareIn(expected, individual)),
    least: Float64Array.from(clutchOf, (_, individual) => shareIn(least, individual)),
  };
}
