import type { EntityManager } from 'typeorm';
import { dateBounds, type DateBounds } from '../../shared/edtf.ts';
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
  spanBetween,
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
  const ids = animals.map((animal) => snapshot.idOf(animal));
  const rows = await readBreederRows(manager, ids);
  const ranges = await readRanges(manager, [...new Set(rows.map(({ speciesId }) => speciesId))]);
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const seen = animals.flatMap((animal, place) => {
    const row = rowOf.get(ids[place] ?? '');
    return row ? [{ animal, row }] : [];
  });
  const disputes = carriesDispute(
    snapshot,
    seen.map(({ animal }) => animal),
  );
  const today = dateBounds(new Date().toISOString().slice(0, 10));
  const breeders: Breeder[] = [];
  const excluded: ExcludedAnimal[] = [];
  seen.forEach(({ animal, row }, place) => {
    const isDisputed = disputes[place] === 1;
    const breeder = { animal, sex: sexOf(snapshot.graph, animal), age: spanBetween(row.hatched, today, 'months') };
    const reason =
      whyNot(snapshot, breeder, row, ranges.get(row.speciesId) ?? {}, today, leave) ??
      (isDisputed && leave.disputed !== true ? 'disputed-label' : null);
    if (reason !== null) excluded.push({ animal, speciesId: row.speciesId, reason });
    else breeders.push({ ...breeder, speciesId: row.speciesId, keeperId: row.keeperId, isDisputed });
  });
  return { breeders, excluded };
}

function whyNot(
  snapshot: LineageSnapshot,
  { animal, sex, age }: Pick<Breeder, 'animal' | 'sex' | 'age'>,
  row: BreederRow,
  { maturity, lifespan }: RangesFacts,
  today: DateBounds | null,
  leave: BreedingLeave,
): ExclusionReason | null {
  if (!isLiving(snapshot.graph, animal)) return 'not-living';
  if (row.keeperLeft) return 'keeper-left';
  if (sex === 'unsexed' && leave.unsexed !== true) return 'unsexed';
  if (maturity && isCertainlyShorter(age, leastKnown(maturity))) return 'too-young';
  if (lifespan && isCertainlyLonger(spanBetween(row.hatched, today, 'years'), mostKnown(lifespan)))
    return 'beyond-lifespan';
  return null;
}
