import { emptyFacts, writeFacts } from './clutch-facts.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** Stands for a filial generation that cannot be known. */
export const UNKNOWN_GENERATION = -1;

/**
 * Filial generation of every individual: 0 for wild-collected founders, otherwise one more than the least of its parents,
 * so that one wild parent makes F1 (CITES Resolution Conf. 10.16; the running number beyond F2 is our own convention).
 *
 * @param wild k: 1 for a source whose animals were collected in the wild, else 0
 * @returns n: the generation, or UNKNOWN_GENERATION where a founder's origin leaves it open or candidates disagree.
 */
export function filialGeneration(pedigree: Pedigree, order: PedigreeOrder, wild: Uint8Array): Int32Array {
  const facts = emptyFacts(order.clutches.length);
  writeFacts(pedigree, { wild }, facts, order.clutches);
  return pedigree.clutchOf.map((clutch, individual) => {
    if (clutch >= 0) return facts.filial[clutch] as number;
    const source = pedigree.sourceOf[individual] as number;
    return source >= 0 && wild[source] === 1 ? 0 : UNKNOWN_GENERATION;
  });
}
