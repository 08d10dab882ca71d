import type { Ancestry } from './ancestry.ts';
import type { GenePool } from './gene-pool.ts';
import type { Pedigree } from './pedigree.ts';
import type { FounderShare } from './shares.ts';

/**
 * Where the gene pool of a set begins: expected parts by origin, founders of one source taken together (Lacy 1989).
 *
 * @returns origins with a share above 0; they sum to 1 unless the set is empty.
 */
export function founderContributions(pedigree: Pedigree, ancestry: Ancestry, pool: GenePool): FounderShare[] {
  const bySource = new Map<number, number>();
  const founders: FounderShare[] = [];
  for (let founder = 0; founder < ancestry.founders; founder++) {
    const share = pool.through[founder] as number;
    if (share === 0) continue;
    const individual = ancestry.animals[founder] as number;
    const source = pedigree.sourceOf[individual] as number;
    if (source >= 0) bySource.set(source, (bySource.get(source) ?? 0) + share);
    else founders.push({ kind: 'individual', individual, share });
  }
  const sources = [...bySource].map(([source, share]): FounderShare => ({ kind: 'source', source, share }));
  const unknown: FounderShare[] = [];
  ancestry.clutches.forEach((clutch, local) => {
    const share = (pool.unknownFirst[local] as number) + (pool.unknownSecond[local] as number);
    if (share > 0) unknown.push({ kind: 'unknown parent', clutch, share });
  });
  return [...sources, ...founders, ...unknown];
}

/** Expected parts of a gene pool that come from some of its founders; those that give nothing are left out. */
export function founderParts(ancestry: Ancestry, pool: GenePool, wanted: ReadonlySet<number>): Map<number, number> {
  const parts = new Map<number, number>();
  if (wanted.size === 0) return parts;
  for (let founder = 0; founder < ancestry.founders; founder++) {
    const individual = ancestry.animals[founder] as number;
    const share = pool.through[founder] as number;
    if (share > 0 && wanted.has(individual)) parts.set(individual, share);
  }
  return parts;
}

/**
 * Effective number of founders, 1/Σp², p the expected part of each founder in the gene pool: so many founders that gave the same
 * each would leave the pool as even as it is (Lacy 1989). Every founder counts for itself, also beside others of its
 * source; so does each parent that nobody knows.
 *
 * @returns 1 or more; null for an empty set.
 */
export function effectiveFounders(ancestry: Ancestry, pool: GenePool): number | null {
  let squares = 0;
  for (let founder = 0; founder < ancestry.founders; founder++) squares += (pool.through[founder] as number) ** 2;
  for (let clutch = 0; clutch < ancestry.clutches.length; clutch++)
    squares += (pool.unknownFirst[clutch] as number) ** 2 + (pool.unknownSecond[clutch] as number) ** 2;
  return squares === 0 ? null : 1 / squares;
}
