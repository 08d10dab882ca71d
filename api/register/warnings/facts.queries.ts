import type { EntityManager } from 'typeorm';
import { dateBounds, type DateBounds } from '../../../shared/edtf.ts';
import { seen } from '../../people/visibility.ts';
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
  SiblingClutchFacts,
} from './facts.ts';

interface ParentRow {
  readonly id: string;
  readonly number: string;
  readonly role: ParentFacts['role'];
  readonly probability: number;
  readonly speciesId: string;
  readonly lineId: string | null;
  readonly line: string | null;
  readonly hatched: string | null;
  readonly died: string | null;
  readonly isSeen: boolean;
}

/** Clutches of one dam further apart than this never make a warning worth giving. */
const nearbyDays = 60;

/** What the warnings of one clutch are computed from, as far as it may be seen, or null where there is no such clutch (primary key). */
export async function readClutchFacts(manager: EntityManager, id: string): Promise<ClutchFacts | null> {
  const [clutch] = await manager.query<
    { laid: string | null; eggs: number | null; hatched: number | null; lost: number; young: number }[]
  >(
    `select laid, eggs, hatched,
       (select coalesce(sum(l.count), 0)::integer from clutch_loss l where l.clutch_id = c.id) as lost,
       (select count(*)::integer from individual y where y.clutch_id = c.id and y.withdrawn_at is null and ${seen('individual', 'y')}) as young
     from clutch c where id = $1 and ${seenClutch('c')}`,
    [id],
  );
  if (!clutch) return null;
  const parents = await readParents(manager, id);
  const laid = bounds(clutch.laid);
  const certainDam = parents.find((parent) => parent.role === 'dam' && parent.probability > 1 - 1e-9);
  return {
    laid,
    eggs: clutch.eggs,
    hatched: clutch.hatched,
    lost: clutch.lost,
    young: clutch.young,
    parents: await withRanges(manager, parents),
    nearbyOfDam: laid && certainDam ? await readNearby(manager, id, certainDam.id) : [],
    pairsOfOneSex: await readPairsOfOneSex(manager, id),
  };
}

/** What the warnings of one animal are computed from, as far as it may be seen, or null where there is no such animal (primary key). */
export async function readIndividualFacts(manager: EntityManager, id: string): Promise<IndividualFacts | null> {
  const [row] = await manager.query<IndividualRow[]>(
    `select i.sex, i.sex_basis as "sexBasis", i.sexed_on as "sexedOn", i.status, i.hatched, i.out_of_water as "outOfWater", i.died,
       i.species_id as "speciesId", i.line_id as "lineId", l.name as line, i.clutch_id as "clutchId", c.laid, current_date::text as today
     from individual i left join line l on l.id = i.line_id left join clutch c on c.id = i.clutch_id and ${seenClutch('c')}
     where i.id = $1 and ${seen('individual', 'i')}`,
    [id],
  );
  if (!row) return null;
  const parents = row.clutchId === null ? [] : await readParents(manager, row.clutchId);
  const ranges = await readRanges(manager, [row.speciesId]);
  return {
    ...row,
    sexedOn: bounds(row.sexedOn),
    hatched: bounds(row.hatched),
    hatchedText: row.hatched,
    outOfWater: bounds(row.outOfWater),
    died: bounds(row.died),
    laid: bounds(row.laid),
    ranges: ranges.get(row.speciesId) ?? {},
    parents: await withRanges(manager, parents),
    measurements: await readMeasurements(manager, id),
  };
}

interface IndividualRow {
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
  readonly clutchId: string | null;
  readonly laid: string | null;
  readonly today: string;
}

/** Possible parents of a clutch by number (clutch_candidate_once, clutch_pair_once). */
async function readParents(manager: EntityManager, clutchId: string): Promise<ParentRow[]> {
  return manager.query<ParentRow[]>(
    `select i.id, i.number::text, p.role, p.probability, i.species_id as "speciesId", i.line_id as "lineId", l.name as line, i.hatched, i.died,
       ${seen('individual', 'i')} as "isSeen"
     from (select individual_id, role, probability from clutch_candidate where clutch_id = $1 and individual_id is not null
       union select a_id, 'either', 0 from clutch_pair where clutch_id = $1
       union select b_id, 'either', 0 from clutch_pair where clutch_id = $1) p
     join individual i on i.id = p.individual_id left join line l on l.id = i.line_id order by p.role, i.number`,
    [clutchId],
  );
}

async function withRanges(manager: EntityManager, parents: readonly ParentRow[]): Promise<ParentFacts[]> {
  const ranges = await readRanges(manager, [...new Set(parents.map((parent) => parent.speciesId))]);
  return parents.map((parent) =>
    parent.isSeen ? knownParent(parent, ranges) : { ...nothingKnown, role: parent.role },
  );
}

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

function knownParent(parent: ParentRow, ranges: ReadonlyMap<string, RangesFacts>): ParentFacts {
  return {
    name: formatRegistryNumber(parent.number),
    role: parent.role,
    speciesId: parent.speciesId,
    lineId: parent.lineId,
    line: parent.line,
    hatched: bounds(parent.hatched),
    died: bounds(parent.died),
    ranges: ranges.get(parent.speciesId) ?? {},
  };
}

/** Life-history ranges by species (primary key of species_range), fit for `warningsForClutch` and `warningsForIndividual`. */
export async function readRanges(
  manager: EntityManager,
  speciesIds: readonly string[],
): Promise<Map<string, RangesFacts>> {
  if (speciesIds.length === 0) return new Map();
  const rows = await manager.query<{ id: string; ranges: RangesFacts }[]>(
    `select species_id as id, json_object_agg(trait, json_build_object('usualLeast', usual_least, 'usualMost', usual_most,
       'extremeLeast', extreme_least, 'extremeMost', extreme_most)) as ranges
     from species_range where species_id = any($1) group by species_id`,
    [speciesIds],
  );
  return new Map(rows.map((row) => [row.id, row.ranges]));
}

/** Clutches of the same certain dam laid near this one (clutch_candidate_individual_index). */
async function readNearby(manager: EntityManager, clutchId: string, damId: string): Promise<SiblingClutchFacts[]> {
  const rows = await manager.query<{ code: string | null; laid: string }[]>(
    `select c.code, c.laid from clutch this join clutch_candidate d on d.individual_id = $2 and d.role = 'dam' and d.probability > 1 - 1e-9
       join clutch c on c.id = d.clutch_id
     where this.id = $1 and c.id <> this.id and c.withdrawn_at is null and ${seenClutch('c')}
       and c.laid_earliest <= this.laid_latest + ${nearbyDays} and c.laid_latest >= this.laid_earliest - ${nearbyDays}
     order by c.laid_earliest, c.id limit 20`,
    [clutchId, damId],
  );
  return rows.flatMap((row) => {
    const laid = bounds(row.laid);
    return laid ? [{ title: clutchTitle(row), laid }] : [];
  });
}

/** Candidate pairs of two animals that were sexed alike since (clutch_pair_once). */
async function readPairsOfOneSex(manager: EntityManager, clutchId: string): Promise<PairOfOneSex[]> {
  const rows = await manager.query<{ a: string; b: string; sex: Sex }[]>(
    `select a.number::text as a, b.number::text as b, a.sex from clutch_pair p
       join individual a on a.id = p.a_id join individual b on b.id = p.b_id and b.sex = a.sex and ${seen('individual', 'b')}
     where ${seen('individual', 'a')} and p.clutch_id = $1 and a.sex <> 'unsexed' order by a.number, b.number`,
    [clutchId],
  );
  return rows.map((row) => ({ a: formatRegistryNumber(row.a), b: formatRegistryNumber(row.b), sex: row.sex }));
}

/** Measured lengths of an animal, oldest first (observation_individual_index). */
async function readMeasurements(manager: EntityManager, id: string): Promise<MeasurementFacts[]> {
  const rows = await manager.query<{ svlMm: number; observedOn: string | null }[]>(
    `select svl_mm as "svlMm", observed_on as "observedOn" from observation o
     where ${seen('observation', 'o')} and individual_id = $1 and svl_mm is not null and withdrawn_at is null order by observed_on_latest, id`,
    [id],
  );
  return rows.map((row) => ({ svlMm: row.svlMm, observedOn: bounds(row.observedOn) }));
}

const bounds = (text: string | null): DateBounds | null => (text === null ? null : dateBounds(text));
