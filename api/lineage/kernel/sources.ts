import type { Pedigree } from './pedigree.ts';

/** For every source: 1 if its founders are kin to each other or to those of another source, so that it must be a node; else 0. */
export function sourcesWithKinship(pedigree: Pedigree): Uint8Array {
  const flags = new Uint8Array(pedigree.baseKinship.length);
  pedigree.baseKinship.forEach((kinship, source) => (flags[source] = kinship > 0 ? 1 : 0));
  for (const { a, b, kinship } of pedigree.sourceKinships ?? []) if (kinship > 0) flags[a] = flags[b] = 1;
  return flags;
}

/** Inbreeding coefficient of an individual without a clutch: that of its source's founders, 0 where the origin is unknown. */
export function founderInbreedingOf(pedigree: Pedigree, individual: number): number {
  const source = pedigree.sourceOf[individual] as number;
  if (source < 0) return 0;
  return (pedigree.founderInbreeding ?? pedigree.baseKinship)[source] as number;
}

/** Kinship of two different founders, of the same source or of two: 0 unless their sources say otherwise. */
export function sourceKinship(pedigree: Pedigree, first: number, second: number): number {
  if (first === second) return pedigree.baseKinship[first] as number;
  for (const { a, b, kinship } of pedigree.sourceKinships ?? [])
    if ((a === first && b === second) || (a === second && b === first)) return kinship;
  return 0;
}
