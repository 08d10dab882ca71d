import { collectAncestry } from '../../lineage/kernel/ancestry.ts';
import { genePool } from '../../lineage/kernel/gene-pool.ts';
import type { Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { setDiversity, type SetDiversity } from '../../lineage/kernel/set-diversity.ts';

/** What some animals that one keeper has of a line hold together. */
export interface HoldingMeasures {
  readonly animals: number;
  /** Null without animals. */
  readonly diversity: SetDiversity | null;
  /** Recorded founders that anything comes from, by their numbers, and the expected part of the gene pool that each gave. */
  readonly founders: Int32Array;
  readonly parts: Float64Array;
  /** Recorded sources that anything comes from. */
  readonly sources: Int32Array;
  /** Expected part that comes from parents nobody knows; 0 to 1. */
  readonly unknown: number;
}

/**
 * Measures animals as a set: mean kinship, gene diversity, founder genome equivalents (Lacy 1989; Ballou & Lacy 1995), and who founded them.
 * One pass over their ancestry.
 *
 * @param animals each once
 */
export function measureHolding(pedigree: Pedigree, inbreeding: Inbreeding, animals: Int32Array): HoldingMeasures {
  const ancestry = collectAncestry(pedigree, inbreeding.order, animals);
  const pool = genePool(pedigree, ancestry, animals);
  const found = Array.from({ length: ancestry.founders }, (_, local) => ({
    founder: ancestry.animals[local] ?? -1,
    part: pool.through[local] ?? 0,
  }))
    .filter(({ part }) => part > 0)
    .sort((one, other) => one.founder - other.founder);
  const sources = new Set(found.map(({ founder }) => pedigree.sourceOf[founder] ?? -1));
  sources.delete(-1);
  const known = found.reduce((sum, { part }) => sum + part, 0);
  return {
    animals: animals.length,
    diversity: setDiversity(pedigree, inbreeding, ancestry, pool),
    founders: Int32Array.from(found, ({ founder }) => founder),
    parts: Float64Array.from(found, ({ part }) => part),
    sources: Int32Array.from(sources).sort(),
    unknown: animals.length === 0 ? 0 : Math.max(0, 1 - known),
  };
}
