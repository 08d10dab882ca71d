import { collectAncestry } from '../../lineage/kernel/ancestry.ts';
import { founderContributions } from '../../lineage/kernel/founders.ts';
import { genePool } from '../../lineage/kernel/gene-pool.ts';
import type { Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import type { FounderShare } from '../../lineage/kernel/shares.ts';
import type { GeneOrigin, PresentGenes } from './present-genes.ts';

/** Which origins of genes are told one by one. */
export interface ToldOrigins {
  /** Those with the largest expected share in the breeders first, with that share. */
  readonly origins: readonly FounderShare[];
  /** For each gene the place of its origin, or the number of origins told for all others. */
  readonly shareOf: Int32Array;
  /** How many others there are. */
  readonly others: number;
}

/** The origins with the largest expected shares in some breeders; one that stands there twice counts twice. */
export function toldOrigins(
  pedigree: Pedigree,
  { order }: Inbreeding,
  present: PresentGenes,
  breeders: Int32Array,
  most: number,
): ToldOrigins {
  const ancestry = collectAncestry(pedigree, order, breeders);
  const contributions = founderContributions(pedigree, ancestry, genePool(pedigree, ancestry, breeders));
  const firstMet = new Map(present.origins.map((origin, place) => [keyOf(origin), place]));
  const placeMet = (origin: GeneOrigin): number => firstMet.get(keyOf(origin)) ?? 0;
  // what differs by rounding alone is the same: the order of the records decides
  const sorted = contributions.sort(
    (one, other) => rounded(other.share) - rounded(one.share) || placeMet(one) - placeMet(other),
  );
  const origins = sorted.slice(0, most);
  const placeOf = new Map(origins.map((origin, place) => [keyOf(origin), place]));
  const placeOfOrigin = present.origins.map((origin) => placeOf.get(keyOf(origin)) ?? origins.length);
  return {
    origins,
    shareOf: present.originOf.map((origin) => placeOfOrigin[origin] ?? origins.length),
    others: sorted.length - origins.length,
  };
}

function keyOf(origin: GeneOrigin): string {
  switch (origin.kind) {
    case 'source':
      return `source ${origin.source}`;
    case 'individual':
      return `individual ${origin.individual}`;
    case 'unknown parent':
      return `clutch ${origin.clutch}`;
  }
}

function rounded(share: number): number {
  return Math.round(share * 2 ** 44);
}
