import type { EntityManager } from 'typeorm';
import { daysBetween, type DateBounds } from '../../shared/edtf.ts';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { seen, seenAtHome } from '../people/visibility.ts';
import { Conditions } from '../register/keyset.ts';
import { seenClutch, seenPairing } from '../register/seen-records.ts';
import type { ClutchPairingView } from '../register/clutches/clutch.view.ts';
import type { Asked } from './asked.ts';
import { COUNTED_MOST, type SexingAnimalView, type SexingGroupView, type SexingView } from './today.view.ts';

const daysInMonth = 30.4375;

interface SexingRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly version: number;
  readonly keeperId: string;
  readonly species: string;
  readonly hatched: string;
  readonly hatchedLatest: string;
  readonly clutchId: string | null;
  readonly pairing: ClutchPairingView | null;
}

/**
 * Living animals without a sex that are certainly old enough to be told by looks, those who became so last first, by clutch
 * (individual_unsexed_index, a piece of it for each species whose profile says the age).
 */
export async function readSexing(manager: EntityManager, asked: Asked): Promise<SexingView> {
  const conditions = new Conditions();
  const old = oldEnough(conditions, asked);
  const rows = await manager.query<SexingRow[]>(
    `select i.id, i.number::text, i.code, i.version, i.keeper_id as "keeperId", s.scientific_name as species, i.hatched,
       i.hatched_latest::text as "hatchedLatest", c.id as "clutchId",
       (select json_build_object('id', p.id, 'name', p.name) from pairing_member m join pairing p on p.id = m.pairing_id
         where m.individual_id = i.id and m."left" is null and m.stands and ${seenPairing('p')} and ${seenAtHome('individual', 'i')} limit 1) as pairing
     from (select o.id, a.species_id from (${ages}) a cross join lateral (
         select i.id, i.hatched_latest from individual i where ${old} order by i.hatched_latest desc limit ${asked.limit}) o
       order by o.hatched_latest desc, o.id limit ${asked.limit}) found
     join individual i on i.id = found.id join species s on s.id = i.species_id
     left join clutch c on c.id = i.clutch_id and c.withdrawn_at is null and ${seenClutch('c')}
     order by i.hatched_latest desc, i.number`,
    conditions.parameters,
  );
  return {
    groups: inGroups(rows, asked.on),
    shown: rows.length,
    total: rows.length < asked.limit ? rows.length : await countOldEnough(manager, asked),
  };
}

/** Species whose profile tells from which age on looks tell, in days. */
const ages = `select s.id as species_id, ceil(coalesce(r.usual_least, r.extreme_least) * ${daysInMonth})::integer as days
  from species s join species_range r on r.species_id = s.id and r.trait = 'sexable-by-looks'
  where coalesce(r.usual_least, r.extreme_least) is not null`;

function oldEnough(conditions: Conditions, asked: Asked): string {
  const own = asked.keeperId === null ? 'true' : `i.keeper_id = ${conditions.bind(asked.keeperId)}`;
  return `i.species_id = a.species_id and i.sex = 'unsexed' and i.status = 'alive' and i.withdrawn_at is null
    and i.hatched_latest <= ${conditions.bind(asked.on)}::date - a.days and ${own} and ${seen('individual', 'i')}`;
}

async function countOldEnough(manager: EntityManager, asked: Asked): Promise<number> {
  const conditions = new Conditions();
  const old = oldEnough(conditions, asked);
  const [row] = await manager.query<{ total: number }[]>(
    `select count(*)::integer as total from (select 1 from (${ages}) a cross join lateral (
       select 1 from individual i where ${old} limit ${COUNTED_MOST + 1}) o limit ${COUNTED_MOST + 1}) counted`,
    conditions.parameters,
  );
  return row?.total ?? 0;
}

function inGroups(rows: readonly SexingRow[], on: string): SexingGroupView[] {
  const groups = new Map<string, SexingRow[]>();
  for (const row of rows) {
    const key = row.clutchId ?? row.id;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].flatMap((animals) => {
    const [first] = animals;
    if (!first) return [];
    const isTogether = animals.every(({ pairing }) => pairing?.id === first.pairing?.id);
    return [
      {
        clutchId: first.clutchId,
        species: first.species,
        hatched: first.hatched,
        months: monthsSince(first.hatchedLatest, on),
        pairing: isTogether ? first.pairing : null,
        animals: animals.map(toAnimal),
      },
    ];
  });
}

const day = (text: string): DateBounds => ({ earliest: text, latest: text });
const monthsSince = (from: string, on: string): number =>
  Math.floor((daysBetween(day(from), day(on)).least ?? 0) / daysInMonth);

const toAnimal = ({ id, number, code, version, keeperId }: SexingRow): SexingAnimalView => ({
  id,
  number: formatRegistryNumber(number),
  code,
  version,
  keeperId,
  sex: 'unsexed',
  status: 'alive',
  isPrivate: false,
});
