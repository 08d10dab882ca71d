import type { EntityManager } from 'typeorm';
import { dateBounds } from '../../../shared/edtf.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { storedDate } from '../../platform/dates.ts';
import { spanBetween, isCertainlyShorter, leastKnown } from '../warnings/spans.ts';
import { readRanges } from '../warnings/facts.queries.ts';
import { unknownParents, type Candidate, type CandidatePair, type ParentAnimal, type Parents } from './parents.ts';

interface HousedAnimal extends ParentAnimal {
  readonly hatched: string | null;
  readonly speciesId: string;
}

/**
 * Who may be the parents of a clutch laid in a pairing: the animals that were, or may have been, housed there that day (now,
 * where the day is not known). Males are sires and females dams at equal odds; once an unsexed animal old enough is among them,
 * all couples that their sexes allow are candidate pairs at equal odds (pairing_member_pairing_index).
 */
export async function housedParents(manager: EntityManager, pairingId: string, laid: string | null): Promise<Parents> {
  const animals = await grownAt(manager, laid, await readHoused(manager, pairingId, laid));
  if (animals.some((animal) => animal.sex === 'unsexed')) {
    const pairs = couplesOf(animals);
    return pairs.length === 0 ? unknownParents : { mode: 'pairs', pairs };
  }
  const side = (sex: 'male' | 'female'): Candidate[] =>
    animals.filter((animal) => animal.sex === sex).map((animal) => ({ animal, weight: 1, reason: null }));
  return { mode: 'lists', sires: side('male'), dams: side('female') };
}

async function readHoused(manager: EntityManager, pairingId: string, laid: string | null): Promise<HousedAnimal[]> {
  const day = storedDate(laid);
  const rows = await manager.query<HousedAnimal[]>(
    `select distinct i.id, i.number::text, i.sex, i.tier, i.hatched, i.species_id as "speciesId"
     from pairing_member m join individual i on i.id = m.individual_id
     where m.pairing_id = $1 and i.withdrawn_at is null
       and case when $2::date is null then m."left" is null and i.status not in ('died', 'gone')
         else coalesce(m.joined_earliest, '-infinity') <= $3::date and coalesce(m.left_latest, 'infinity') >= $2::date end
     order by i.id`,
    [pairingId, day.earliest, day.latest],
  );
  return rows.map((row) => ({ ...row, number: formatRegistryNumber(row.number) }));
}

/** Leaves out unsexed animals that were certainly too young, and whoever hatched only after the laying. */
async function grownAt(
  manager: EntityManager,
  laid: string | null,
  animals: readonly HousedAnimal[],
): Promise<HousedAnimal[]> {
  if (laid === null) return [...animals];
  const ranges = await readRanges(manager, [...new Set(animals.map((animal) => animal.speciesId))]);
  const day = dateBounds(laid);
  return animals.filter((animal) => {
    const maturity = ranges.get(animal.speciesId)?.maturity;
    const age = spanBetween(animal.hatched === null ? null : dateBounds(animal.hatched), day, 'months');
    const needed = animal.sex === 'unsexed' && maturity ? (leastKnown(maturity) ?? 0) : 0;
    return !isCertainlyShorter(age, needed);
  });
}

function couplesOf(animals: readonly ParentAnimal[]): CandidatePair[] {
  return animals.flatMap((a, index) =>
    animals
      .slice(index + 1)
      .flatMap((b) => (a.sex === b.sex && a.sex !== 'unsexed' ? [] : [{ a, b, weight: 1, reason: null }])),
  );
}
