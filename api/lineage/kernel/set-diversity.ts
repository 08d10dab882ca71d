import type { Ancestry } from './ancestry.ts';
import type { GenePool } from './gene-pool.ts';
import type { Inbreeding } from './inbreeding.ts';
import { mendelianVariance } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf, sourceKinship, sourcesWithKinship } from './sources.ts';

/** The measures that follow from the mean kinship of a set. */
export interface SetDiversity {
  /** Mean of all kinships of the set, each animal with itself included; 0 to 1. */
  readonly meanKinship: number;
  /** 1 − mean kinship: what is left of the diversity of unrelated founders; 0 to 1. */
  readonly geneDiversity: number;
  /** 1/(2 · mean kinship): so many unrelated founders hold as much diversity (Lacy 1989; Ballou & Lacy 1995). */
  readonly founderGenomeEquivalents: number;
}

/**
 * Mean kinship, gene diversity and founder genome equivalents of a set (Lacy 1989; Ballou & Lacy 1995), with expected kinships
 * where parents are uncertain.
 *
 * The mean kinship is xᵀφx with φ = T D Tᵀ, so the parts of the gene pool that came through each node, squared, times what the
 * node has of its own, sum to it: no matrix, no second pass.
 *
 * @param pool gene pool of the set over this ancestry
 * @returns null for an empty set.
 */
export function setDiversity(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  ancestry: Ancestry,
  pool: GenePool,
): SetDiversity | null {
  const { clutches, youngStart } = ancestry;
  let sum = amongFounders(pedigree, ancestry, pool.through);
  for (let local = 0; local < clutches.length; local++) {
    const whole = pool.ofClutch[local] as number;
    if (whole === 0) continue;
    const clutch = clutches[local] as number;
    sum += (inbreeding.clutchResidual[clutch] as number) * whole * whole;
    let squares = 0;
    for (let young = youngStart[local] as number; young < (youngStart[local + 1] as number); young++)
      squares += (pool.through[young] as number) ** 2;
    sum += mendelianVariance(inbreeding, clutch) * squares;
  }
  if (sum === 0) return null; // the kinship of an animal with itself is ½ at least
  return { meanKinship: sum, geneDiversity: 1 - sum, founderGenomeEquivalents: 1 / (2 * sum) };
}

/** Σ x_i x_j φ(i,j) over the founders, those of one source and of kin sources together. */
function amongFounders(pedigree: Pedigree, { animals, founders }: Ancestry, through: Float64Array): number {
  const isNode = sourcesWithKinship(pedigree);
  const pooled = new Map<number, number>();
  let sum = 0;
  for (let founder = 0; founder < founders; founder++) {
    const part = through[founder] as number;
    const individual = animals[founder] as number;
    const source = pedigree.sourceOf[individual] as number;
    let own = 0.5 * (1 + founderInbreedingOf(pedigree, individual));
    if (source >= 0 && isNode[source] === 1) {
      own -= pedigree.baseKinship[source] as number;
      pooled.set(source, (pooled.get(source) ?? 0) + part);
    }
    sum += own * part * part;
  }
  const between = (pedigree.sourceKinships ?? []).length > 0;
  for (const [source, part] of pooled) {
    sum += (pedigree.baseKinship[source] as number) * part * part;
    if (between)
      for (const [other, otherPart] of pooled)
        if (other !== source) sum += sourceKinship(pedigree, source, other) * part * otherPart;
  }
  return sum;
}
