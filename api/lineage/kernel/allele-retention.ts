import type { Ancestry } from './ancestry.ts';
import { dropGenes, type GeneDropOptions } from './gene-drop.ts';
import type { GenePool } from './gene-pool.ts';
import type { Pedigree } from './pedigree.ts';

/** What of the founders' genes is still there in a set. Shares and probabilities, 0 to 1. */
export interface AlleleRetention {
  /** Founders of the ancestry: expected share of the founder's two genes that some member still carries. */
  readonly retained: Float64Array;
  /** Members: probability that a gene drawn from it has no copy in any other member (genome uniqueness). */
  readonly uniqueness: Float64Array;
  /** 1/Σ(p²/r), p a founder's part of the gene pool and r what is retained of it (Lacy 1989); null for an empty set. */
  readonly founderGenomeEquivalents: number | null;
  /** Standard errors of `retained` and `uniqueness`; 0 where they are exact. */
  readonly retainedErrors: Float64Array;
  readonly uniquenessErrors: Float64Array;
  /** Whether all ways of descent were counted, or so many sampled. */
  readonly isExact: boolean;
  readonly ways: number;
}

/**
 * Retention of founders' genes, genome uniqueness and the founder genome equivalents that follow from retention (MacCluer et al.
 * 1986; Lacy 1989; Ballou & Lacy 1995), by counting every way of descent where they are few, else by dropping genes. Every founder
 * counts as having two genes of its own, whatever its source says; a parent that nobody knows counts as a founder.
 *
 * @param members individuals, each once
 * @param ancestry that of the members
 * @param pool gene pool of the members
 */
export function alleleRetention(
  pedigree: Pedigree,
  ancestry: Ancestry,
  pool: GenePool,
  members: Int32Array,
  options?: GeneDropOptions,
): AlleleRetention {
  const locals = Int32Array.from(members, (member) => ancestry.find(member));
  const founders = ancestry.founders;
  // two genes a founder, then room for two genes of either parent of each clutch that nobody knows
  const unknown = 2 * ancestry.clutches.length;
  const quantities = founders + unknown + members.length;
  const carriers = new Int32Array(2 * ancestry.animals.length + 4 * ancestry.clutches.length);
  const dropped = dropGenes(
    pedigree,
    ancestry,
    'all different',
    quantities,
    ({ genes }, into) => {
      into.fill(0);
      countCarriers(genes, locals, carriers);
      for (let gene = 0; gene < carriers.length; gene++) {
        if (carriers[gene] === 0) continue;
        const isUnknown = gene >= genes.length;
        const owner = isUnknown ? founders + ((gene - genes.length) >> 1) : gene >> 1;
        into[owner] = (into[owner] as number) + 0.5;
      }
      locals.forEach((local, place) => {
        const isOnly = (gene: number): number => (carriers[gene] === 1 ? 0.5 : 0);
        const unique = isOnly(genes[2 * local] as number) + isOnly(genes[2 * local + 1] as number);
        into[founders + unknown + place] = unique;
      });
    },
    options,
  );
  const { means, standardErrors, isExact, ways } = dropped;
  return {
    retained: means.subarray(0, founders),
    retainedErrors: standardErrors.subarray(0, founders),
    uniqueness: means.subarray(founders + unknown),
    uniquenessErrors: standardErrors.subarray(founders + unknown),
    founderGenomeEquivalents: equivalents(pool, means, founders),
    isExact,
    ways,
  };
}

/** By gene: how many members carry it, each counted once. */
function countCarriers(genes: Int32Array, locals: Int32Array, carriers: Int32Array): void {
  carriers.fill(0);
  for (const local of locals) {
    const first = genes[2 * local] as number;
    const second = genes[2 * local + 1] as number;
    carriers[first] = (carriers[first] as number) + 1;
    if (second !== first) carriers[second] = (carriers[second] as number) + 1;
  }
}

function equivalents(pool: GenePool, retained: Float64Array, founders: number): number | null {
  let sum = 0;
  const add = (part: number, kept: number): void => {
    if (part > 0 && kept > 0) sum += (part * part) / kept; // a small part that no way of a sample kept says nothing
  };
  for (let founder = 0; founder < founders; founder++)
    add(pool.through[founder] as number, retained[founder] as number);
  for (let clutch = 0; clutch < pool.unknownFirst.length; clutch++) {
    add(pool.unknownFirst[clutch] as number, retained[founders + 2 * clutch] as number);
    add(pool.unknownSecond[clutch] as number, retained[founders + 2 * clutch + 1] as number);
  }
  return sum === 0 ? null : 1 / sum;
}
