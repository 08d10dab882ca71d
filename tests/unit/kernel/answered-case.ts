import { Matrix } from 'ml-matrix';
import { expect } from 'vitest';
import { alleleRetention, type AlleleRetention } from '../../../api/lineage/kernel/allele-retention.ts';
import { ancestralDescent } from '../../../api/lineage/kernel/ancestral-descent.ts';
import { collectAncestry, type Ancestry } from '../../../api/lineage/kernel/ancestry.ts';
import { genePool, type GenePool } from '../../../api/lineage/kernel/gene-pool.ts';
import type { Pair } from '../../../api/lineage/kernel/genome-flow.ts';
import { computeInbreeding, inbreedingOf, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import { setDiversity } from '../../../api/lineage/kernel/set-diversity.ts';
import { founderShares } from '../../../api/lineage/kernel/shares.ts';
import { layOut, type LaidOut, type ReferenceCase } from './reference-cases.ts';

/** A case with everything the kernel says about it. */
export class AnsweredCase {
  readonly reference: ReferenceCase;
  readonly laidOut: LaidOut;
  readonly inbreeding: Inbreeding;

  constructor(reference: ReferenceCase, method: 'auto' | 'frontier' | 'trace' = 'auto') {
    this.reference = reference;
    this.laidOut = layOut(reference);
    this.inbreeding = computeInbreeding(this.laidOut.pedigree, { method });
  }

  inbreedingOf(id: string): number {
    return inbreedingOf(this.laidOut.pedigree, this.inbreeding, this.laidOut.indexOf(id)).expected;
  }

  /** Kinship matrix of some animals as rows. */
  kinships(ids: readonly string[]): Matrix {
    const members = Int32Array.from(ids, (id) => this.laidOut.indexOf(id));
    return Matrix.from1DArray(ids.length, ids.length, kinshipMatrix(this.laidOut.pedigree, this.inbreeding, members));
  }

  kinship(a: string, b: string): number {
    return this.kinships([a, b]).get(0, 1);
  }

  /** Expected founder shares by name; parents that nobody knows are summed under the members of their clutch. */
  sharesOf(id: string): Map<string, number> {
    const { pedigree, ids, indexOf } = this.laidOut;
    const found = founderShares(pedigree, this.inbreeding.order, indexOf(id)).map((share): [string, number] => {
      if (share.kind === 'source') throw new Error('no reference case asks for the shares of sources');
      if (share.kind === 'individual') return [ids[share.individual] ?? '', share.share];
      const member = ids[pedigree.clutchOf.indexOf(share.clutch)] ?? '';
      const written = this.reference.clutches?.find(({ members }) => members.includes(member));
      return [`unknown parent of ${written?.id ?? member}`, share.share];
    });
    return new Map(found);
  }

  living(): readonly string[] {
    return this.reference.living ?? [];
  }

  /** The living as a set, with its ancestry and gene pool. */
  set(): { members: Int32Array; ancestry: Ancestry; pool: GenePool } {
    const { pedigree, indexOf } = this.laidOut;
    const members = Int32Array.from(this.living(), indexOf);
    const ancestry = collectAncestry(pedigree, this.inbreeding.order, members);
    return { members, ancestry, pool: genePool(pedigree, ancestry, members) };
  }

  /** What the living retain of their founders' genes, every way of descent counted. */
  retention(): AlleleRetention & { members: Int32Array; ancestry: Ancestry } {
    const { members, ancestry, pool } = this.set();
    const retention = alleleRetention(this.laidOut.pedigree, ancestry, pool, members, { exactUpTo: 2 ** 20 });
    expect(retention.isExact).toBe(true);
    return { ...retention, members, ancestry };
  }
}

/** Fails unless two numbers differ by no more than 1e-12. */
export function close(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual - expected), `${what}: ${actual} instead of ${expected}`).toBeLessThanOrEqual(1e-12);
}

/** Diversity of the living as a set. */
export function diversity(answered: AnsweredCase) {
  const { ancestry, pool } = answered.set();
  const found = setDiversity(answered.laidOut.pedigree, answered.inbreeding, ancestry, pool);
  if (found === null) throw new Error(`${answered.reference.name} has nobody living`);
  return found;
}

/** The history of an animal's genes, every way of descent counted. */
export function descent(answered: AnsweredCase, id: string) {
  const { pedigree, indexOf } = answered.laidOut;
  const found = ancestralDescent(pedigree, answered.inbreeding.order, indexOf(id), { exactUpTo: 2 ** 20 });
  expect(found.isExact, `all ways of descent to ${id} are counted`).toBe(true);
  return found;
}

/** The candidate pairs of an animal. */
export function pairsOf({ laidOut: { pedigree, indexOf } }: AnsweredCase, id: string): Pair[] {
  const clutch = pedigree.clutchOf[indexOf(id)] ?? -1;
  const pairs: Pair[] = [];
  for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++)
    pairs.push({
      a: pedigree.pairSire[pair] ?? -1,
      b: pedigree.pairDam[pair] ?? -1,
      probability: pedigree.pairProbability[pair] ?? NaN,
    });
  return pairs;
}
