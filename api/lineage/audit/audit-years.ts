import type { Ancestry } from '../kernel/ancestry.ts';
import { effectiveFounders, founderContributions } from '../kernel/founders.ts';
import { genePool, type GenePool } from '../kernel/gene-pool.ts';
import { inbreedingOf } from '../kernel/inbreeding.ts';
import { setDiversity } from '../kernel/set-diversity.ts';
import type { FounderShare } from '../kernel/shares.ts';
import type { AuditInput } from './audit-input.ts';

/** Most years that are told, the latest. */
const YEARS_MOST = 80;

/** What is told of some animals of a line together. */
export interface AuditedGroup {
  readonly animals: number;
  /** Mean expected F; null where there are none. */
  readonly meanInbreeding: number | null;
  readonly geneDiversity: number | null;
  readonly founderGenomeEquivalents: number | null;
  readonly effectiveFounders: number | null;
  /** Parts of their gene pool from the origins that were asked about, in that order. */
  readonly shares: readonly number[];
}

export interface AuditedYear {
  readonly year: number;
  readonly young: AuditedGroup;
  /** The animals that lived at the end of the year, as far as dates tell. */
  readonly standing: AuditedGroup;
}

/** The years of a line in their order, from its first dated young on. */
export interface AuditedYears {
  readonly years: readonly AuditedYear[];
  /** How many members are dated to a year of hatching. */
  readonly dated: number;
  /** How many members cannot be told to have lived at the end of a year, or not. */
  readonly untold: number;
}

/**
 * Diversity, inbreeding and origins of the young of each year and of the animals that lived at its end. A year is told where a member
 * hatched or died in it.
 *
 * @param named the origins whose parts are told
 */
export function auditYears(input: AuditInput, ancestry: Ancestry, named: readonly FounderShare[]): AuditedYears {
  const { members, hatched, begun, ended } = input;
  const measure = (chosen: (place: number) => boolean): AuditedGroup =>
    measureGroup(
      input,
      ancestry,
      members.filter((_, place) => chosen(place)),
      named,
    );
  const told = Uint8Array.from(members, (_, place) => ((begun[place] ?? 0) > 0 && (ended[place] ?? 0) > 0 ? 1 : 0));
  const changes = new Set<number>();
  for (const list of [hatched, ended]) for (const year of list) if (year > 0 && year < 9999) changes.add(year);
  const years = [...changes].sort((one, other) => one - other).slice(-YEARS_MOST);
  return {
    years: years.map((year) => ({
      year,
      young: measure((place) => hatched[place] === year),
      standing: measure((place) => told[place] === 1 && (begun[place] ?? 0) <= year && (ended[place] ?? 0) > year),
    })),
    dated: hatched.reduce((sum, year) => sum + (year > 0 ? 1 : 0), 0),
    untold: told.reduce((sum, one) => sum + 1 - one, 0),
  };
}

/** Measures some members of a line as a set of their own; linear in the ancestry. */
export function measureGroup(
  input: AuditInput,
  ancestry: Ancestry,
  animals: Int32Array,
  named: readonly FounderShare[],
): AuditedGroup {
  if (animals.length === 0)
    return {
      animals: 0,
      meanInbreeding: null,
      geneDiversity: null,
      founderGenomeEquivalents: null,
      effectiveFounders: null,
      shares: [],
    };
  const { pedigree, inbreeding } = input;
  const pool = genePool(pedigree, ancestry, animals);
  const diversity = setDiversity(pedigree, inbreeding, ancestry, pool);
  let sum = 0;
  for (const animal of animals) sum += inbreedingOf(pedigree, inbreeding, animal).expected;
  return {
    animals: animals.length,
    meanInbreeding: sum / animals.length,
    geneDiversity: diversity?.geneDiversity ?? null,
    founderGenomeEquivalents: diversity?.founderGenomeEquivalents ?? null,
    effectiveFounders: effectiveFounders(ancestry, pool),
    shares: sharesOf(input, ancestry, pool, named),
  };
}

function sharesOf(
  { pedigree }: AuditInput,
  ancestry: Ancestry,
  pool: GenePool,
  named: readonly FounderShare[],
): number[] {
  if (named.length === 0) return [];
  const shares = new Map(founderContributions(pedigree, ancestry, pool).map((origin) => [keyOf(origin), origin.share]));
  return named.map((origin) => shares.get(keyOf(origin)) ?? 0);
}

function keyOf(origin: FounderShare): string {
  if (origin.kind === 'source') return `s${origin.source}`;
  return origin.kind === 'individual' ? `i${origin.individual}` : `c${origin.clutch}`;
}
