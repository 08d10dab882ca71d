import { collectAncestry } from './ancestry.ts';
import { effectiveAncestors, type EffectiveAncestors } from './effective-ancestors.ts';
import { realisedEffectiveSize, type EffectiveSize } from './effective-size.ts';
import { effectiveFounders, founderContributions, founderParts } from './founders.ts';
import { genePool } from './gene-pool.ts';
import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import type { Pedigree } from './pedigree.ts';
import { setDiversity, type SetDiversity } from './set-diversity.ts';
import type { FounderShare } from './shares.ts';

/** A set of animals with what is told of each of them. All arrays have an entry a member, in the same order. */
export interface MeasuredSet {
  /** Individuals, each once. */
  readonly members: Int32Array;
  /** Year of hatching; 0 where it is not known to the year. */
  readonly years: Int16Array;
  /** Complete generation equivalents. */
  readonly generationEquivalents: Float64Array;
  /** Founders of which it is told one by one how much comes from them; left out: none. */
  readonly apart?: ReadonlySet<number>;
}

/** Inbreeding of some animals, those left out of which nothing is known. */
export interface InbreedingSummary {
  /** How many animals it rests on: a source or a parent of them is recorded. */
  readonly animals: number;
  /** Mean inbreeding coefficient; null without such animals, as are the next two. */
  readonly mean: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
}

/** The young of one year. */
export interface HatchYear {
  readonly year: number;
  /** How many of the set hatched in it. */
  readonly animals: number;
  readonly inbreeding: InbreedingSummary;
  /** Gene diversity of the young of the year as a set. */
  readonly diversity: SetDiversity;
  /** Expected parts of their gene pool from the first origins that the set itself has, in that order. */
  readonly shares: readonly number[];
}

/** Everything that is measured of a set. */
export interface SetMeasures {
  readonly animals: number;
  readonly inbreeding: InbreedingSummary;
  readonly diversity: SetDiversity | null;
  /** Origins of the gene pool, the largest part first; they sum to 1. */
  readonly contributions: readonly FounderShare[];
  /** Parts that come from the founders that the set asks about one by one. */
  readonly apart: ReadonlyMap<number, number>;
  readonly effectiveFounders: number | null;
  readonly ancestors: EffectiveAncestors;
  readonly effectiveSize: EffectiveSize;
  /** In the order of years; animals without a year are in none. */
  readonly years: readonly HatchYear[];
}

/**
 * Measures a set of animals: some linear passes over its ancestry, one more for each year of hatching.
 *
 * @param shareYears for how many of the largest origins each year tells its part
 * @param tell hears how many of how many steps are done
 */
export function measureSet(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  set: MeasuredSet,
  shareYears: number,
  tell: (done: number, total: number) => void = () => undefined,
): SetMeasures {
  const { members, years, generationEquivalents } = set;
  const byYear = placesByYear(years);
  const steps = byYear.length + 3;
  const ancestry = collectAncestry(pedigree, inbreeding.order, members);
  const pool = genePool(pedigree, ancestry, members);
  const coefficients = Float64Array.from(members, (member) => inbreedingOf(pedigree, inbreeding, member).expected);
  const isKnown = Uint8Array.from(members, (member) => (isSomethingKnown(pedigree, member) ? 1 : 0));
  tell(1, steps);
  const contributions = founderContributions(pedigree, ancestry, pool).sort((one, other) => other.share - one.share);
  const diversity = setDiversity(pedigree, inbreeding, ancestry, pool);
  tell(2, steps);
  const ancestors = effectiveAncestors(pedigree, ancestry, members);
  tell(3, steps);
  const everybody = Int32Array.from(members.keys());
  const known = everybody.filter((place) => isKnown[place] === 1);
  const ofKnown = (values: Float64Array): Float64Array => Float64Array.from(known, (place) => values[place] as number);
  return {
    animals: members.length,
    inbreeding: summaryOf(coefficients, isKnown, everybody),
    diversity,
    contributions,
    apart: founderParts(ancestry, pool, set.apart ?? new Set()),
    effectiveFounders: effectiveFounders(ancestry, pool),
    ancestors,
    effectiveSize: realisedEffectiveSize(ofKnown(coefficients), ofKnown(generationEquivalents)),
    years: byYear.map(([year, places], place) => {
      const young = places.map((at) => members[at] as number);
      const ofYear = genePool(pedigree, ancestry, young);
      const origins = founderContributions(pedigree, ancestry, ofYear);
      const shares = new Map(origins.map((origin) => [nameOf(origin), origin.share]));
      tell(4 + place, steps);
      return {
        year,
        animals: young.length,
        inbreeding: summaryOf(coefficients, isKnown, places),
        diversity: setDiversity(pedigree, inbreeding, ancestry, ofYear) as SetDiversity, // a year has young
        shares: contributions.slice(0, shareYears).map((origin) => shares.get(nameOf(origin)) ?? 0),
      };
    }),
  };
}

/** The years of hatching in order, each with the places of its animals. */
function placesByYear(years: Int16Array): [number, Int32Array][] {
  const byYear = new Map<number, number[]>();
  years.forEach((year, place) => {
    if (year === 0) return;
    const places = byYear.get(year);
    if (places) places.push(place);
    else byYear.set(year, [place]);
  });
  return [...byYear]
    .sort(([one], [other]) => one - other)
    .map(([year, places]) => [year, Int32Array.from(places)] as [number, Int32Array]);
}

function summaryOf(coefficients: Float64Array, isKnown: Uint8Array, places: Int32Array): InbreedingSummary {
  let animals = 0;
  let sum = 0;
  let least = Infinity;
  let greatest = -Infinity;
  for (const place of places) {
    if (isKnown[place] === 0) continue;
    const value = coefficients[place] as number;
    animals++;
    sum += value;
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  if (animals === 0) return { animals, mean: null, least: null, greatest: null };
  // rounding of the sum must not take the mean out of the range
  return { animals, mean: Math.min(greatest, Math.max(least, sum / animals)), least, greatest };
}

/** Whether a source or any parent is recorded: else a coefficient of 0 says nothing. */
function isSomethingKnown(pedigree: Pedigree, individual: number): boolean {
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam } = pedigree;
  if ((sourceOf[individual] as number) >= 0) return true;
  const clutch = clutchOf[individual] as number;
  if (clutch < 0) return false;
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++)
    if ((pairSire[pair] as number) >= 0 || (pairDam[pair] as number) >= 0) return true;
  return false;
}

function nameOf(origin: FounderShare): string {
  if (origin.kind === 'source') return `s${origin.source}`;
  return origin.kind === 'individual' ? `i${origin.individual}` : `c${origin.clutch}`;
}
