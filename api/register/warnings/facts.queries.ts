import type { EntityManager } from 'typeorm';
import { dateBounds, type DateBounds } from '../../../shared/edtf.ts';
import { hidden, seen } from '../../people/visibility.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex, SexBasis, Status } from '../../../shared/vocabulary.ts';
import { privateAnimal } from '../private-records.ts';
import { seenClutch } from '../seen-records.ts';
import { clutchTitle } from '../titles.ts';
import type {
  ClutchFacts,
  IndividualFacts,
  MeasurementFacts,
  PairOfOneSex,
  ParentFacts,
  RangesFacts,
} from './facts.ts';

interface ParentRow {
  readonly number: string;
  readonly role: ParentFacts['role'];
  readonly speciesId: string;
  readonly lineId: string | null;
  readonly line: string | null;
  readonly hatched: string | null;
  readonly died: string | null;
  readonly ranges: RangesFacts;
  readonly isSeen: boolean;
}

interface ClutchRow {
  readonly id: string;
  readonly laid: string | null;
  readonly eggs: number | null;
  readonly hatched: number | null;
  readonly lost: number;
  readonly young: number;
  readonly privateYoung: number;
  readonly earlyYoung: string | null;
  readonly parents: ParentRow[];
  readonly nearby: { code: string | null; laid: string }[];
}

/** Clutches of one dam further apart than this never make a warning worth giving. */
const nearbyDays = 60;

/** What a clutch as it stands in the register is checked by. */
export interface KnownClutchFacts extends ClutchFacts {
  /** Standing young that may not be seen. */
  readonly privateYoung: number;
  /** Registry number of a young that hatched before the clutch was laid, also of a withdrawn one; null where none did. */
  readonly earlyYoung: string | null;
}

/** What the warnings of one clutch are computed from, as far as it may be seen, or null where there is no such clutch. */
export async function readClutchFacts(manager: EntityManager, id: string): Promise<KnownClutchFacts | null> {
  return (await readFactsOfClutches(manager, [id])).get(id) ?? null;
}

/**
 * What the warnings of clutches are computed from, by their ids; those that may not be seen are missing (primary key,
 * clutch_candidate_once, clutch_pair_once, individual_clutch_index; nearby clutches by clutch_candidate_individual_index).
 */
export async function readFactsOfClutches(
  manager: EntityManager,
  ids: readonly string[],
): Promise<Map<string, KnownClutchFacts>> {
  const rows = await manager.query<ClutchRow[]>(
    `select c.id, c.laid, c.eggs, c.hatched, young.*,
       (select coalesce(sum(l.count), 0)::integer from clutch_loss l where l.clutch_id = c.id) as lost,
       ${parentsOf('c.id')} as parents, ${nearbyOf('c')} as nearby
     from clutch c cross join lateral (
       select count(*) filter (where y.withdrawn_at is null and ${seen('individual', 'y')})::integer as young,
         count(*) filter (where y.withdrawn_at is null and ${hidden('individual', 'y')})::integer as "privateYoung",
         min(y.number) filter (where y.hatched_latest < c.laid_earliest and ${seen('individual', 'y')})::text as "earlyYoung"
       from individual y where y.clutch_id = c.id) young
     where c.id = any($1) and ${seenClutch('c')}`,
    [ids],
  );
  const inGroups = rows.filter(({ parents }) => parents.some(({ role }) => role === 'either')).map(({ id }) => id);
  const ofOneSex = await readPairsOfOneSex(manager, inGroups);
  return new Map(rows.map((row) => [row.id, toClutchFacts(row, ofOneSex.get(row.id) ?? [])]));
}

function toClutchFacts(clutch: ClutchRow, pairsOfOneSex: PairOfOneSex[]): KnownClutchFacts {
  return {
    ...clutch,
    earlyYoung: clutch.earlyYoung === null ? null : formatRegistryNumber(clutch.earlyYoung),
    laid: bounds(clutch.laid),
    parents: clutch.parents.map(knownParent),
    nearbyOfDam: clutch.nearby.flatMap(({ code, laid }) => {
      const days = dateBounds(laid);
      return days ? [{ title: clutchTitle({ code, laid }), laid: days }] : [];
    }),
    pairsOfOneSex,
  };
}

/** What the warnings of one animal are computed from, as far as it may be seen, or null where there is no such animal. */
export async function readIndividualFacts(manager: EntityManager, id: string): Promise<IndividualFacts | null> {
  return (await readFactsOfIndividuals(manager, [id])).get(id) ?? null;
}

/**
 * What the warnings of animals are computed from, by their ids; those that may not be seen are missing (primary key; their parents
 * by clutch_candidate_once and clutch_pair_once).
 */
export async function readFactsOfIndividuals(
  manager: EntityManager,
  ids: readonly string[],
): Promise<Map<string, IndividualFacts>> {
  const rows = await manager.query<IndividualRow[]>(
    `select i.id, i.sex, i.sex_basis as "sexBasis", i.sexed_on as "sexedOn", i.status, i.hatched, i.out_of_water as "outOfWater", i.died,
       i.species_id as "speciesId", i.line_id as "lineId", l.name as line, c.laid, current_date::text as today,
       ${rangesOf('i')} as ranges, ${parentsOf('i.clutch_id')} as parents
     from individual i left join line l on l.id = i.line_id left join clutch c on c.id = i.clutch_id and ${seenClutch('c')}
     where i.id = any($1) and ${seen('individual', 'i')}`,
    [ids],
  );
  const measured = await readMeasurements(manager, ids);
  return new Map(rows.map((row) => [row.id, toIndividualFacts(row, measured.get(row.id) ?? [])]));
}

function toIndividualFacts(row: IndividualRow, measurements: MeasurementFacts[]): IndividualFacts {
  return {
    ...row,
    sexedOn: bounds(row.sexedOn),
    hatched: bounds(row.hatched),
    hatchedText: row.hatched,
    outOfWater: bounds(row.outOfWater),
    died: bounds(row.died),
    laid: bounds(row.laid),
    parents: row.parents.map(knownParent),
    measurements,
  };
}

interface IndividualRow {
  readonly id: string;
  readonly sex: Sex;
  readonly sexBasis: SexBasis | null;
  readonly sexedOn: string | null;
  readonly status: Status;
  readonly hatched: string | null;
  readonly outOfWater: string | null;
  readonly died: string | null;
  readonly speciesId: string;
  readonly lineId: string | null;
  readonly line: string | null;
  readonly laid: string | null;
  readonly today: string;
  readonly ranges: RangesFacts;
  readonly parents: ParentRow[];
}

const rangesByTrait = `json_object_agg(r.trait, json_build_object('usualLeast', r.usual_least, 'usualMost', r.usual_most,
  'extremeLeast', r.extreme_least, 'extremeMost', r.extreme_most))`;

/** SQL for the life-history ranges of an animal's species (primary key of species_range). */
const rangesOf = (animal: string): string =>
  `(select coalesce(${rangesByTrait}, '{}') from species_range r where r.species_id = ${animal}.species_id)`;

/** SQL for the possible parents of a clutch by number, also for those that may not be seen. */
const parentsOf = (clutchId: string): string => `coalesce((
  select json_agg(json_build_object('number', p.number::text, 'role', possible.role, 'speciesId', p.species_id, 'lineId', p.line_id,
      'line', l.name, 'hatched', p.hatched, 'died', p.died, 'ranges', ${rangesOf('p')}, 'isSeen', ${seen('individual', 'p')})
    order by possible.role, p.number)
  from (select individual_id as id, role from clutch_candidate where clutch_id = ${clutchId} and individual_id is not null
    union select a_id, 'either' from clutch_pair where clutch_id = ${clutchId}
    union select b_id, 'either' from clutch_pair where clutch_id = ${clutchId}) possible
  join individual p on p.id = possible.id left join line l on l.id = p.line_id), '[]')`;

/** SQL for the clutches of the same certain dam that were laid near this one. */
const nearbyOf = (clutch: string): string => `coalesce((
  select json_agg(json_build_object('code', near.code, 'laid', near.laid) order by near.laid_earliest, near.id) from (
    select o.id, o.code, o.laid, o.laid_earliest
    from clutch_candidate own join clutch_candidate other on other.individual_id = own.individual_id and ${isCertainDam('other')}
      join clutch o on o.id = other.clutch_id
    where own.clutch_id = ${clutch}.id and ${isCertainDam('own')} and o.id <> ${clutch}.id and o.withdrawn_at is null and ${seenClutch('o')}
      and o.laid_earliest <= ${clutch}.laid_latest + ${nearbyDays} and o.laid_latest >= ${clutch}.laid_earliest - ${nearbyDays}
    order by o.laid_earliest, o.id limit 20) near), '[]')`;

const isCertainDam = (candidate: string): string => `${candidate}.role = 'dam' and ${candidate}.probability > 1 - 1e-9`;

/** A parent that may not be seen, of whom no warning can speak. */
const nothingKnown = {
  name: privateAnimal,
  speciesId: null,
  lineId: null,
  line: null,
  hatched: null,
  died: null,
  ranges: {},
};

function knownParent(parent: ParentRow): ParentFacts {
  if (!parent.isSeen) return { ...nothingKnown, role: parent.role };
  return {
    name: formatRegistryNumber(parent.number),
    role: parent.role,
    speciesId: parent.speciesId,
    lineId: parent.lineId,
    line: parent.line,
    hatched: bounds(parent.hatched),
    died: bounds(parent.died),
    ranges: parent.ranges,
  };
}

/** Life-history ranges by species (primary key of species_range), fit for `warningsForClutch` and `warningsForIndividual`. */
export async function readRanges(
  manager: EntityManager,
  speciesIds: readonly string[],
): Promise<Map<string, RangesFacts>> {
  if (speciesIds.length === 0) return new Map();
  const rows = await manager.query<{ id: string; ranges: RangesFacts }[]>(
    `select r.species_id as id, ${rangesByTrait} as ranges from species_range r where r.species_id = any($1) group by r.species_id`,
    [speciesIds],
  );
  return new Map(rows.map((row) => [row.id, row.ranges]));
}

/** Candidate pairs of two animals that were sexed alike since, by clutch (clutch_pair_once). */
async function readPairsOfOneSex(
  manager: EntityManager,
  clutchIds: readonly string[],
): Promise<Map<string, PairOfOneSex[]>> {
  if (clutchIds.length === 0) return new Map();
  const rows = await manager.query<{ of: string; a: string; b: string; sex: Sex }[]>(
    `select p.clutch_id as of, a.number::text as a, b.number::text as b, a.sex from clutch_pair p
       join individual a on a.id = p.a_id join individual b on b.id = p.b_id and b.sex = a.sex and ${seen('individual', 'b')}
     where ${seen('individual', 'a')} and p.clutch_id = any($1) and a.sex <> 'unsexed' order by a.number, b.number`,
    [clutchIds],
  );
  return gathered(rows, (row) => ({ a: formatRegistryNumber(row.a), b: formatRegistryNumber(row.b), sex: row.sex }));
}

/** Measured lengths of animals, oldest first (observation_individual_index). */
async function readMeasurements(
  manager: EntityManager,
  ids: readonly string[],
): Promise<Map<string, MeasurementFacts[]>> {
  const rows = await manager.query<{ of: string; svlMm: number; observedOn: string | null }[]>(
    `select individual_id as of, svl_mm as "svlMm", observed_on as "observedOn" from observation o
     where ${seen('observation', 'o')} and individual_id = any($1) and svl_mm is not null and withdrawn_at is null
     order by observed_on_latest, id`,
    [ids],
  );
  return gathered(rows, (row) => ({ svlMm: row.svlMm, observedOn: bounds(row.observedOn) }));
}

/** Rows by the record that they are of, in their order. */
function gathered<Row extends { readonly of: string }, Fact>(
  rows: readonly Row[],
  toFact: (row: Row) => Fact,
): Map<string, Fact[]> {
  const found = new Map<string, Fact[]>();
  for (const row of rows) found.set(row.of, [...(found.get(row.of) ?? []), toFact(row)]);
  return found;
}

const bounds = (text: string | null): DateBounds | null => (text === null ? null : dateBounds(text));
