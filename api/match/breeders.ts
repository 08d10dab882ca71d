import type { EntityManager } from 'typeorm';
import type { Sex } from '../../shared/vocabulary.ts';
import type { LineageSnapshot } from '../lineage/lineage-snapshot.ts';
import { isLiving, sexOf } from '../lineage/register-graph.ts';
import { readRanges } from '../register/warnings/facts.queries.ts';
import type { RangesFacts } from '../register/warnings/facts.ts';
import {
  isCertainlyLonger,
  isCertainlyShorter,
  leastKnown,
  mostKnown,
  spanIn,
  type Span,
} from '../register/warnings/spans.ts';
import { readBreederRows, type BreederRow } from './breeders.queries.ts';
import { carriesDispute } from './disputed-labels.ts';

/** Why an animal may not be bred from, the plainest reason first; each animal is told its first one. */
export const exclusionReasons = [
  'not-living',
  'keeper-left',
  'unsexed',
  'too-young',
  'beyond-lifespan',
  'disputed-label',
] as const;
export type ExclusionReason = (typeof exclusionReasons)[number];

/** An animal that may breed. */
export interface Breeder {
  /** Its dense number. */
  readonly animal: number;
  readonly sex: Sex;
  readonly speciesId: string;
  readonly keeperId: string;
  /** Age in months; null where no hatching date is recorded. */
  readonly age: Span | null;
  /** Whether a claim of one of its founders, or its own, is disputed: taken only where that was asked for. */
  readonly isDisputed: boolean;
}

/** An animal that may not. */
export interface ExcludedAnimal {
  readonly animal: number;
  readonly speciesId: string;
  readonly reason: ExclusionReason;
}

/** What whoever asks lets pass. */
export interface BreedingLeave {
  /** Animals that were not sexed yet. */
  readonly unsexed?: boolean;
  /** Animals whose label is disputed. */
  readonly disputed?: boolean;
}

/**
 * Which of some animals may breed, and why the others may not: they live, their keeper is in the club, their sex is known, they are not
 * certainly younger than the least age at which their species matures nor certainly older than it is known to live, and no claim on
 * their founders is disputed. An age that nobody knows excludes nobody. Animals that whoever asks may not see are in neither list.
 */
export async function findBreeders(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  animals: readonly number[],
  leave: BreedingLeave = {},
): Promise<{ breeders: Breeder[]; excluded: ExcludedAnimal[] }> {
  const today = new Date().toISOString().slice(0, 10);
  const serials = animals.map((animal) => snapshot.graph.serials[animal] ?? 0);
  const rows = await readBreederRows(manager, serials, today);
  const ranges = await readRanges(manager, [...new Set(rows.flatMap((row) => row?.speciesId ?? []))]);
  const disputes = carriesDispute(snapshot, animals);
  const breeders: Breeder[] = [];
  const excluded: ExcludedAnimal[] = [];
  rows.forEach((row, place) => {
    const animal = animals[place];
    if (row === null || animal === undefined) return;
    const { speciesId, keeperId } = row;
    const age = spanIn('months', row.ageInDays);
    const isDisputed = disputes[place] === 1;
    const breeder = { animal, sex: sexOf(snapshot.graph, animal), speciesId, keeperId, age, isDisputed };
    const reason = whyNot(snapshot, breeder, row, ranges.get(speciesId) ?? {}, leave);
    if (reason === null) breeders.push(breeder);
    else excluded.push({ animal, speciesId, reason });
  });
  return { breeders, excluded };
}

function whyNot(
  snapshot: LineageSnapshot,
  { animal, sex, age, isDisputed }: Breeder,
  row: BreederRow,
  { maturity, lifespan }: RangesFacts,
  leave: BreedingLeave,
): ExclusionReason | null {
  if (!isLiving(snapshot.graph, animal)) return 'not-living';
  if (row.keeperLeft) return 'keeper-left';
  if (sex === 'unsexed' && leave.unsexed !== true) return 'unsexed';
  if (maturity && isCertainlyShorter(age, leastKnown(maturity))) return 'too-young';
  if (lifespan && isCertainlyLonger(spanIn('years', row.ageInDays), mostKnown(lifespan))) return 'beyond-lifespan';
  if (isDisputed && leave.disputed !== true) return 'disputed-label';
  return null;
}
