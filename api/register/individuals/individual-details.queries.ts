import type { EntityManager } from 'typeorm';
import { groupNotation } from '../../../shared/group-notation.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex, Status } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { PrivateRecords, type ReferredAnimal } from '../private-records.ts';
import { seenClutch, seenPairing } from '../seen-records.ts';
import { clutchTitle } from '../titles.ts';
import type { RemarkView, StayView, YoungView } from './individual.view.ts';

interface StayRow extends Omit<StayView, 'notation'> {
  readonly now: Sex[];
  readonly ever: Sex[];
}

interface YoungRow {
  /** The animal whose clutch it is or may be. */
  readonly parent: string;
  readonly id: string;
  readonly code: string | null;
  readonly laid: string | null;
  readonly earliest: string | null;
  readonly latest: string | null;
  readonly eggs: number | null;
  readonly hatched: number | null;
  readonly outOfWater: number | null;
  readonly role: 'sire' | 'dam' | 'either';
  readonly probability: number;
  readonly mates: (ReferredAnimal & { sex: Sex; probability: number })[];
  readonly animals: (ReferredAnimal & { sex: Sex; status: Status; hasYoung: boolean })[];
}

/** Clutches that name an animal as a possible parent: clutch_candidate_individual_index, clutch_pair_a_index, clutch_pair_b_index. */
const ownClutchesOf = (animal: string): string => `
  select clutch_id, role, probability from clutch_candidate where individual_id = ${animal}
  union all select clutch_id, 'either', sum(probability) from (
    select clutch_id, probability from clutch_pair where a_id = ${animal}
    union all select clutch_id, probability from clutch_pair where b_id = ${animal}) p group by clutch_id`;

/** Pairings that an animal lives or lived in and that may be seen, newest first (pairing_member_individual_index, pairing_member_pairing_index). */
export async function readStays(manager: EntityManager, id: string): Promise<StayView[]> {
  const rows = await manager.query<StayRow[]>(
    `select p.id, p.name, m.joined, m."left",
       coalesce(array_agg(i.sex) filter (where o."left" is null and i.status not in ('died', 'gone')), '{}') as now, array_agg(i.sex) as ever
     from pairing_member m join pairing p on p.id = m.pairing_id
       join pairing_member o on o.pairing_id = p.id join individual i on i.id = o.individual_id and i.withdrawn_at is null and ${seen('individual', 'i')}
     where m.individual_id = $1 and p.withdrawn_at is null and ${seenPairing('p')}
     group by p.id, m.id order by m.joined_latest desc nulls last, m.id desc`,
    [id],
  );
  return rows.map(({ now, ever, ...stay }) => ({ ...stay, notation: groupNotation(now.length > 0 ? now : ever) }));
}

/** Clutches that are or may be an animal's own and that may be seen, newest first. */
export async function readYoung(manager: EntityManager, id: string, concealed: PrivateRecords): Promise<YoungView[]> {
  return (await readYoungRows(manager, [id])).map((row) => youngView(row, concealed));
}

/** A clutch of one of several animals, and the bounds of its laying as calendar days of the database. */
export interface YoungOfParent extends YoungView {
  readonly parent: string;
  readonly earliest: string | null;
  readonly latest: string | null;
}

/**
 * Clutches that are or may be an animal's own and that may be seen, of several animals by one statement: in the order of the animals,
 * newest first. Private animals are numbered for each parent anew, so that nothing is told of one by another.
 */
export async function readYoungOfParents(manager: EntityManager, ids: readonly string[]): Promise<YoungOfParent[]> {
  const concealed = new Map(ids.map((id) => [id, new PrivateRecords()]));
  return (await readYoungRows(manager, ids)).map((row) => ({
    ...youngView(row, concealed.get(row.parent) ?? new PrivateRecords()),
    parent: row.parent,
    earliest: row.earliest,
    latest: row.latest,
  }));
}

function readYoungRows(manager: EntityManager, ids: readonly string[]): Promise<YoungRow[]> {
  return manager.query(
    `select parent.id as parent, c.id, c.code, c.laid, c.laid_earliest::text as earliest, c.laid_latest::text as latest,
       c.eggs, c.hatched, c.out_of_water as "outOfWater", o.role, least(o.probability, 1) as probability,
       coalesce((select json_agg(json_build_object('id', i.id, 'number', i.number::text, 'code', i.code, 'sex', i.sex, 'probability', m.probability,
           'isSeen', ${seen('individual', 'i')}) order by m.probability desc, ${seen('individual', 'i')} desc, i.number)
         from (select individual_id, probability from clutch_candidate where clutch_id = c.id and role <> o.role
           union all select b_id, probability from clutch_pair where clutch_id = c.id and a_id = parent.id
           union all select a_id, probability from clutch_pair where clutch_id = c.id and b_id = parent.id) m
         join individual i on i.id = m.individual_id), '[]') as mates,
       coalesce((select json_agg(json_build_object('id', y.id, 'number', y.number::text, 'code', y.code, 'sex', y.sex, 'status', y.status,
         'hasYoung', exists (select from (${ownClutchesOf('y.id')}) own join clutch b on b.id = own.clutch_id where b.withdrawn_at is null and ${seenClutch('b')}),
         'isSeen', ${seen('individual', 'y')}) order by ${seen('individual', 'y')} desc, y.number)
         from individual y where y.clutch_id = c.id and y.withdrawn_at is null), '[]') as animals
     from unnest($1::uuid[]) with ordinality as parent (id, place) cross join lateral (${ownClutchesOf('parent.id')}) o
       join clutch c on c.id = o.clutch_id
     where c.withdrawn_at is null and ${seenClutch('c')} order by parent.place, c.laid_earliest desc nulls last, c.id desc`,
    [ids],
  );
}

function youngView(row: YoungRow, concealed: PrivateRecords): YoungView {
  return {
    clutch: {
      id: row.id,
      title: clutchTitle(row),
      laid: row.laid,
      eggs: row.eggs,
      hatched: row.hatched,
      outOfWater: row.outOfWater,
      role: row.role,
      probability: row.probability,
    },
    mates: row.mates.map((mate) => concealed.animal(withCheck(mate))),
    animals: row.animals
      .map((animal) => concealed.animal(withCheck(animal)))
      .map((animal) => ({ ...animal, hasYoung: animal.hasYoung && !animal.isPrivate })),
  };
}

const withCheck = <Animal extends ReferredAnimal>(animal: Animal): Animal => ({
  ...animal,
  number: formatRegistryNumber(animal.number ?? ''),
});

/**
 * Those of some animals that are proven: a clutch that is certainly their own has hatched, as far as may be seen. The clutch says so, or a
 * young of it stands.
 */
export async function readProven(manager: EntityManager, ids: readonly string[]): Promise<Set<string>> {
  const rows = await manager.query<{ id: string }[]>(
    `select animal.id from unnest($1::uuid[]) as animal (id)
     where exists (select from (${ownClutchesOf('animal.id')}) o join clutch c on c.id = o.clutch_id
       where o.probability > 1 - 1e-9 and c.withdrawn_at is null and ${seenClutch('c')}
         and (c.hatched > 0 or exists (select from individual y where y.clutch_id = c.id and y.withdrawn_at is null and ${seen('individual', 'y')})))`,
    [ids],
  );
  return new Set(rows.map(({ id }) => id));
}

/** The last 50 remarks on an animal that may be seen, newest first (observation_individual_index). */
export async function readRemarks(manager: EntityManager, id: string): Promise<RemarkView[]> {
  return manager.query<RemarkView[]>(
    `select id, kind, observed_on as "observedOn", text, svl_mm as "svlMm", mass_g as "massG" from observation o
     where individual_id = $1 and withdrawn_at is null and ${seen('observation', 'o')} order by observed_on_latest desc nulls last, id desc limit 50`,
    [id],
  );
}
