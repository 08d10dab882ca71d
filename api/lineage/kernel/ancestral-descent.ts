import { collectAncestry } from './ancestry.ts';
import { dropGenes, type GeneDropOptions } from './gene-drop.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** A probability, exact or from a sample. */
export interface Estimate {
  readonly value: number;
  /** 0 where the value is exact. */
  readonly standardError: number;
}

/** The history of an animal's genes. */
export interface AncestralDescent {
  /** Probability that a gene of the animal has met a copy of itself in an ancestor; what Ballou's recursion approaches. */
  readonly ancestral: Estimate;
  /** Part of F in which at least one of the two copies has met itself before (after Kalinowski, Hedrick & Miller 2000). */
  readonly oldInbreeding: Estimate;
  /** The rest of F: genes that meet themselves for the first time. */
  readonly newInbreeding: Estimate;
  /** Whether all ways of descent were counted, or so many sampled. */
  readonly isExact: boolean;
  readonly ways: number;
}

/**
 * Ancestral inbreeding as a gene drop tells it (Suwanlee et al. 2007), and F parted into old and new inbreeding (after
 * Kalinowski, Hedrick & Miller 2000); probabilities, 0 to 1. Exact for animals with few ancestors, else sampled.
 *
 * @throws RangeError for an individual that does not exist, and as `dropGenes`
 */
export function ancestralDescent(
  pedigree: Pedigree,
  order: PedigreeOrder,
  individual: number,
  options?: GeneDropOptions,
): AncestralDescent {
  const ancestry = collectAncestry(pedigree, order, [individual]);
  const at = 2 * ancestry.find(individual); // the search has refused other numbers
  const { isExact, ways, means, standardErrors } = dropGenes(
    pedigree,
    ancestry,
    'kin',
    3,
    ({ genes, hasMet }, into) => {
      const met = (hasMet[at] as number) + (hasMet[at + 1] as number);
      const isDoubled = genes[at] === genes[at + 1];
      into[0] = met / 2;
      into[1] = isDoubled && met > 0 ? 1 : 0;
      into[2] = isDoubled && met === 0 ? 1 : 0;
    },
    options,
  );
  const estimate = (place: number): Estimate => ({
    value: means[place] as number,
    standardError: standardErrors[place] as number,
  });
  return { ancestral: estimate(0), oldInbreeding: estimate(1), newInbreeding: estimate(2), isExact, ways };
}
