import { GenomeFlow } from './genome-flow.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** An origin that an animal's genes are expected to come from, with the share of its genome. */
export type FounderShare =
  | {
      readonly kind: 'source';
      readonly source: number;
      /** One founder of it that was told apart from the others; left out: all others together. */
      readonly founder?: number;
      readonly share: number;
    }
  /** A founder of unknown origin. */
  | { readonly kind: 'individual'; readonly individual: number; readonly share: number }
  /** Parents of a clutch that nobody knows. */
  | { readonly kind: 'unknown parent'; readonly clutch: number; readonly share: number };

/**
 * Expected genome shares of an individual: half from each parent, averaged over candidates. A founder is all of itself.
 *
 * @returns as `originShares`
 * @throws RangeError for an individual that does not exist.
 */
export function founderShares(pedigree: Pedigree, order: PedigreeOrder, individual: number): FounderShare[] {
  if (pedigree.clutchOf[individual] === undefined) throw new RangeError(`There is no individual ${individual}.`);
  const places = new Int32Array(order.clutches.length).fill(-1);
  return originShares(pedigree, new GenomeFlow(pedigree, order, places, individual));
}

/**
 * Where a genome begins: the founders that it flows from, those of one source taken together.
 *
 * @param apart founders that are told apart from the others of their source
 * @returns sources, then founders of unknown origin, then unknown parents, each with a share above 0; they sum to 1.
 */
export function originShares(
  pedigree: Pedigree,
  flow: GenomeFlow,
  apart: { has(founder: number): boolean } = NOBODY,
): FounderShare[] {
  const { individuals, unknownParents } = flow.shares();
  const bySource = new Map<number, number>();
  const founders: FounderShare[] = [];
  for (const [individual, share] of individuals) {
    const source = pedigree.sourceOf[individual] as number; // the flow ends at individuals that exist
    if (source < 0) founders.push({ kind: 'individual', individual, share });
    else if (apart.has(individual)) founders.push({ kind: 'source', source, founder: individual, share });
    else bySource.set(source, (bySource.get(source) ?? 0) + share);
  }
  const sources = [...bySource].map(([source, share]): FounderShare => ({ kind: 'source', source, share }));
  const unknown = [...unknownParents].map(([clutch, share]): FounderShare => ({
    kind: 'unknown parent',
    clutch,
    share,
  }));
  return [...sources, ...founders, ...unknown].filter(({ share }) => share > 0);
}

const NOBODY: ReadonlySet<number> = new Set();

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
