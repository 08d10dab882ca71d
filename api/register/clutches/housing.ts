import { dateBounds } from '../../../shared/edtf.ts';
import type { Status } from '../../../shared/vocabulary.ts';
import { storedDate } from '../../platform/dates.ts';
import type { RangesFacts } from '../warnings/facts.ts';
import { isCertainlyShorter, leastKnown, spanBetween } from '../warnings/spans.ts';
import { unknownParents, type Candidate, type CandidatePair, type ParentAnimal, type Parents } from './parents.ts';

interface HousedAnimal extends ParentAnimal {
  readonly code: string | null;
  readonly status: Status;
}

/** One stay of one animal. Days as the database gives them, 'infinity' where a date is open; null where none is recorded. */
export interface Stay {
  readonly animal: HousedAnimal;
  readonly hatched: string | null;
  readonly speciesId: string;
  readonly joinedEarliest: string | null;
  readonly left: string | null;
  /** The last day it may have lived there: it left, or died. */
  readonly goneLatest: string | null;
}

/** Who lived in a pairing when, and what the profiles of their species say. */
export interface Housing {
  readonly stays: readonly Stay[];
  readonly ranges: ReadonlyMap<string, RangesFacts>;
}

/** The animals that lived, or may have lived, in a pairing on a day (now, where the day is not known), each once. */
export function housedAt({ stays }: Housing, laid: string | null): Stay[] {
  const day = storedDate(laid);
  const housed = stays.filter(({ animal, joinedEarliest, left, goneLatest }) =>
    day.earliest === null || day.latest === null
      ? left === null && animal.status !== 'died' && animal.status !== 'gone'
      : (joinedEarliest ?? '-infinity') <= day.latest && (goneLatest ?? 'infinity') >= day.earliest,
  );
  return [...new Map(housed.map((stay) => [stay.animal.id, stay])).values()];
}

/**
 * Who may be the parents of a clutch laid in a pairing: males as sires and females as dams at equal odds; once an unsexed animal
 * old enough is among them, all couples that their sexes allow are candidate pairs at equal odds. Left out are unsexed animals
 * that were certainly too young, and whoever hatched only after the laying.
 */
export function parentsHousedAt(housing: Housing, laid: string | null): Parents {
  const animals = housedAt(housing, laid)
    .filter((stay) => isGrownAt(stay, housing, laid))
    .map((stay) => stay.animal);
  if (animals.some((animal) => animal.sex === 'unsexed')) {
    const pairs = couplesOf(animals);
    return pairs.length === 0 ? unknownParents : { mode: 'pairs', pairs };
  }
  const side = (sex: 'male' | 'female'): Candidate[] =>
    animals.filter((animal) => animal.sex === sex).map((animal) => ({ animal, weight: 1, reason: null }));
  return { mode: 'lists', sires: side('male'), dams: side('female') };
}

function isGrownAt({ animal, hatched, speciesId }: Stay, { ranges }: Housing, laid: string | null): boolean {
  if (laid === null || hatched === null) return true;
  const maturity = ranges.get(speciesId)?.maturity;
  const needed = animal.sex === 'unsexed' && maturity ? (leastKnown(maturity) ?? 0) : 0;
  return !isCertainlyShorter(spanBetween(dateBounds(hatched), dateBounds(laid), 'months'), needed);
}

function couplesOf(animals: readonly ParentAnimal[]): CandidatePair[] {
  return animals.flatMap((a, index) =>
    animals
      .slice(index + 1)
      .flatMap((b) => (a.sex === b.sex && a.sex !== 'unsexed' ? [] : [{ a, b, weight: 1, reason: null }])),
  );
}
