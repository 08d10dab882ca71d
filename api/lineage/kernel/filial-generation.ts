import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** Stands for a filial generation that cannot be known. */
export const UNKNOWN_GENERATION = -1;

/**
 * Filial generation of every individual: 0 for wild-collected founders, otherwise one more than the least of its parents,
 * so that one wild parent makes F1 (CITES Resolution Conf. 10.16; the running number beyond F2 is our own convention).
 *
 * @param wildSource k: 1 for a source whose animals were collected in the wild, else 0
 * @returns n: the generation, or UNKNOWN_GENERATION where a founder's origin leaves it open or candidates disagree.
 */
export function filialGeneration(pedigree: Pedigree, order: PedigreeOrder, wildSource: Uint8Array): Int32Array {
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam } = pedigree;
  const ofClutch = new Int32Array(order.clutches.length);
  const generationOf = (individual: number): number => {
    if (individual < 0) return UNKNOWN_GENERATION;
    const clutch = clutchOf[individual] as number;
    if (clutch >= 0) return ofClutch[clutch] as number;
    const source = sourceOf[individual] as number;
    return source >= 0 && wildSource[source] === 1 ? 0 : UNKNOWN_GENERATION;
  };
  for (const clutch of order.clutches) {
    const start = pairStart[clutch] as number;
    const generation = ofPair(generationOf(pairSire[start] as number), generationOf(pairDam[start] as number));
    let agreed = generation;
    for (let pair = start + 1; pair < (pairStart[clutch + 1] as number); pair++) {
      const other = ofPair(generationOf(pairSire[pair] as number), generationOf(pairDam[pair] as number));
      if (other !== generation) agreed = UNKNOWN_GENERATION;
    }
    ofClutch[clutch] = agreed;
  }
  return clutchOf.map((_, individual) => generationOf(individual));
}

function ofPair(sire: number, dam: number): number {
  if (sire === 0 || dam === 0) return 1; // whatever the other is, no parent can be nearer the wild
  if (sire === UNKNOWN_GENERATION || dam === UNKNOWN_GENERATION) return UNKNOWN_GENERATION;
  return 1 + Math.min(sire, dam);
}
