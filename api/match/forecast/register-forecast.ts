import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import type { FounderShare } from '../../lineage/kernel/shares.ts';
import { dams, type BreedingGroup } from './breeding-scheme.ts';
import { fixedAncestry, type FixedAncestry } from './fixed-ancestry.ts';
import { forecastCourses, type Forecast, type ForecastQuestion } from './forecast-courses.ts';

/** How much one forecast may take. */
export interface ForecastLimits {
  /** Clutches among the ancestors of the breeders. */
  readonly clutches: number;
  /** Nanoseconds, as counted beforehand. */
  readonly cost: number;
}

/** A forecast, or what stands against it: too many ancestors, or so many replicates where fewer could be done. */
export type ForecastOutcome =
  | { readonly kind: 'forecast'; readonly forecast: Forecast }
  | { readonly kind: 'too many ancestors' }
  | { readonly kind: 'too many replicates'; readonly most: number };

/**
 * The forecast for breeders of a register. The same question about the same records gives the same answer to the last digit, however the
 * register is numbered.
 *
 * @param serials n: registry number of each individual
 * @param question by numbers of the register
 * @throws RangeError where sources are kin to each other
 */
export function forecastInRegister(
  register: Pedigree,
  serials: Float64Array,
  question: ForecastQuestion,
  limits: ForecastLimits,
  tell?: (done: number, total: number) => void,
): ForecastOutcome {
  const breeders = breedersOf(question);
  const ancestry = fixedAncestry(register, serials, breeders, limits.clutches);
  if (ancestry === null) return { kind: 'too many ancestors' };
  const most = Math.floor(limits.cost / replicateCost(ancestry.animals.length, question));
  if (question.replicates > most) return { kind: 'too many replicates', most };
  const forecast = forecastCourses(ancestry.pedigree, renumbered(question, ancestry.find), tell);
  return {
    kind: 'forecast',
    forecast: { ...forecast, origins: forecast.origins.map((origin) => inRegister(origin, ancestry)) },
  };
}

/** What one replicate costs at most, in nanoseconds, measured. */
export function replicateCost(
  ancestors: number,
  { pairs, groups, courses, generations, youngKept, loci }: ForecastQuestion,
): number {
  const ofGroups = dams(groups);
  const clutches = courses.reduce((sum, course) => sum + (course === 'today' ? ofGroups : pairs.length), 0);
  const genes = 3.5 * loci * (2 * ancestors + 6 * clutches * youngKept * generations);
  return 100_000 + genes + (courses.includes('today') ? exchangeCost(groups, youngKept) * generations : 0);
}

/** One of so many dams meets her own group, and is held against all females that were kept, by every sire of a group. */
function exchangeCost(groups: readonly BreedingGroup[], youngKept: number): number {
  const clutches = dams(groups);
  const sires = groups.reduce((most, group) => Math.max(most, group.sires.length + (group.unsexed.length >> 1)), 1);
  return (20 * clutches * clutches * (youngKept / 2) * sires) / groups.length;
}

function breedersOf({ pairs, groups, courses }: ForecastQuestion): Set<number> {
  const paired = courses.some((course) => course !== 'today') ? pairs : [];
  const grouped = courses.includes('today') ? groups : [];
  return new Set([
    ...paired.flatMap(({ sire, dam }) => [sire, dam]),
    ...grouped.flatMap(({ sires, dams, unsexed }) => [...sires, ...dams, ...unsexed]),
  ]);
}

function renumbered(question: ForecastQuestion, find: (individual: number) => number): ForecastQuestion {
  return {
    ...question,
    pairs: question.pairs.map(({ sire, dam }) => ({ sire: find(sire), dam: find(dam) })),
    groups: question.groups.map(({ sires, dams, unsexed }) => ({
      sires: sires.map(find),
      dams: dams.map(find),
      unsexed: unsexed.map(find),
    })),
  };
}

function inRegister(origin: FounderShare, { animals, clutches }: FixedAncestry): FounderShare {
  switch (origin.kind) {
    case 'source':
      return origin;
    case 'individual':
      return { ...origin, individual: animals[origin.individual] ?? -1 };
    case 'unknown parent':
      return { ...origin, clutch: clutches[origin.clutch] ?? -1 };
  }
}
