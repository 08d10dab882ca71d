import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/** How often genes at one locus were copies of the same gene of a founder, 0 to 1. */
export interface Dropped {
  /** m: the two of one young of the clutch. */
  readonly inbreeding: Float64Array;
  /** m: one drawn from each of two young of the clutch. */
  readonly within: Float64Array;
}

/**
 * Drops genes through a register whose founders are all of unknown origin (MacCluer et al. 1986): every clutch takes one of
 * its candidate pairs for all its young, unknown parents bring genes of their own.
 */
export function dropGenes(pedigree: Pedigree, drops: number, random: () => number): Dropped {
  const clutches = pedigree.pairStart.length - 1;
  const inbreeding = new Float64Array(clutches);
  const within = new Float64Array(clutches);
  for (let drop = 0; drop < drops; drop++) {
    const genes = new Int32Array(2 * pedigree.clutchOf.length);
    let fresh = 1;
    pedigree.clutchOf.forEach((clutch, animal) => {
      if (clutch >= 0) return;
      genes[2 * animal] = fresh++;
      genes[2 * animal + 1] = fresh++;
    });
    for (let clutch = 0; clutch < clutches; clutch++) {
      const pair = drawPair(pedigree, clutch, random());
      const parents = [pedigree.pairSire[pair] ?? -1, pedigree.pairDam[pair] ?? -1].map((parent) =>
        parent < 0 ? [fresh++, fresh++] : [genes[2 * parent] ?? 0, genes[2 * parent + 1] ?? 0],
      );
      const gamete = (): number[] => parents.map((parent) => parent[random() < 0.5 ? 0 : 1] ?? 0);
      const one = gamete();
      const other = gamete();
      if (one[0] === one[1]) inbreeding[clutch] = (inbreeding[clutch] ?? 0) + 1 / drops;
      const drawn = [one, other].map((pairOfGenes) => pairOfGenes[random() < 0.5 ? 0 : 1]);
      if (drawn[0] === drawn[1]) within[clutch] = (within[clutch] ?? 0) + 1 / drops;
      pedigree.clutchOf.forEach((from, young) => {
        if (from === clutch) genes.set(gamete(), 2 * young);
      });
    }
  }
  return { inbreeding, within };
}

function drawPair({ pairStart, pairProbability }: Pedigree, clutch: number, draw: number): number {
  const end = pairStart[clutch + 1] ?? 0;
  let left = draw;
  for (let pair = pairStart[clutch] ?? 0; pair < end; pair++) {
    left -= pairProbability[pair] ?? 0;
    if (left < 0) return pair;
  }
  return end - 1;
}
