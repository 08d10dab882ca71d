import type { EntityManager } from 'typeorm';
import type { Sex, SourceKind, Status } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';

/** An animal as a sheet tells it. */
export interface SheetAnimal {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly species: string;
  readonly line: string | null;
  readonly sex: Sex;
  readonly status: Status;
  readonly hatched: string | null;
  readonly outOfWater: string | null;
  readonly died: string | null;
  readonly notes: string | null;
  readonly clutchId: string | null;
  readonly sourceId: string | null;
}

/** A candidate parent; `parentId` is null for an unknown one and for one that may not be seen. */
export interface SheetCandidate {
  readonly clutchId: string;
  readonly role: 'sire' | 'dam';
  readonly parentId: string | null;
  readonly number: string | null;
  readonly probability: number;
}

/** A candidate pair of a group that cannot be sexed; an animal is null where it may not be seen. */
export interface SheetPair {
  readonly clutchId: string;
  readonly aId: string | null;
  readonly aNumber: string | null;
  readonly bId: string | null;
  readonly bNumber: string | null;
  readonly probability: number;
}

export interface SheetClutch {
  readonly id: string;
  readonly code: string | null;
  readonly laid: string | null;
}

export interface SheetSource {
  readonly id: string;
  readonly code: string | null;
  readonly kind: SourceKind;
  readonly date: string | null;
  readonly baseKinship: number;
  readonly countryOfExport: string | null;
  readonly label: string | null;
  readonly labelNote: string | null;
}

/**
 * Ids of animals and of all their ancestors that whoever asks may see; nothing is followed through one that may not be seen (primary keys,
 * clutch_candidate_once, clutch_pair_once). More than `most` are cut off, so that whoever calls can tell.
 */
export async function withAncestors(manager: EntityManager, ids: readonly string[], most: number): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(
    `with recursive up (id) as (
       select unnest($1::uuid[])
       union
       select p.id from up join individual c on c.id = up.id
         cross join lateral (
           select individual_id as id from clutch_candidate where clutch_id = c.clutch_id and individual_id is not null
           union all select a_id from clutch_pair where clutch_id = c.clutch_id
           union all select b_id from clutch_pair where clutch_id = c.clutch_id
         ) parent
         join individual p on p.id = parent.id and p.withdrawn_at is null and ${seen('individual', 'p')}
     )
     select id from up limit $2`,
    [ids, most + 1],
  );
  return rows.map(({ id }) => id);
}

/** Animals by their ids (primary key), in the order of their numbers. */
export function readSheetAnimals(manager: EntityManager, ids: readonly string[]): Promise<SheetAnimal[]> {
  return manager.query<SheetAnimal[]>(
    `select i.id, i.number::text, i.code, s.scientific_name as species, l.name as line, i.sex, i.status, i.hatched,
       i.out_of_water as "outOfWater", i.died, i.notes, i.clutch_id as "clutchId", i.source_id as "sourceId"
     from individual i join species s on s.id = i.species_id left join line l on l.id = i.line_id
     where i.id = any($1::uuid[]) order by i.number`,
    [ids],
  );
}

/** Clutches by their ids (primary key). */
export function readSheetClutches(manager: EntityManager, ids: readonly string[]): Promise<SheetClutch[]> {
  return manager.query<SheetClutch[]>(`select id, code, laid from clutch where id = any($1::uuid[]) order by id`, [
    ids,
  ]);
}

/** Candidates of clutches (clutch_candidate_once). */
export function readSheetCandidates(manager: EntityManager, ids: readonly string[]): Promise<SheetCandidate[]> {
  return manager.query<SheetCandidate[]>(
    `select c.clutch_id as "clutchId", c.role, p.id as "parentId", p.number::text as number, c.probability
     from clutch_candidate c left join individual p on p.id = c.individual_id and ${seen('individual', 'p')}
     where c.clutch_id = any($1::uuid[]) order by c.clutch_id, c.role, c.probability desc, p.number`,
    [ids],
  );
}

/** Candidate pairs of clutches (clutch_pair_once). */
export function readSheetPairs(manager: EntityManager, ids: readonly string[]): Promise<SheetPair[]> {
  return manager.query<SheetPair[]>(
    `select c.clutch_id as "clutchId", a.id as "aId", a.number::text as "aNumber", b.id as "bId", b.number::text as "bNumber", c.probability
     from clutch_pair c
       left join individual a on a.id = c.a_id and ${seen('individual', 'a')}
       left join individual b on b.id = c.b_id and ${seen('individual', 'b')}
     where c.clutch_id = any($1::uuid[]) order by c.clutch_id, a.number, b.number`,
    [ids],
  );
}

/** Sources by their ids (primary key), as far as whoever asks may see them. */
export function readSheetSources(manager: EntityManager, ids: readonly string[]): Promise<SheetSource[]> {
  return manager.query<SheetSource[]>(
    `select o.id, o.code, o.kind, o.date, o.base_kinship as "baseKinship", o.country_of_export as "countryOfExport",
       o.label_as_received as label, o.label_note as "labelNote"
     from source o where o.id = any($1::uuid[]) and ${seen('source', 'o')} order by o.date_earliest, o.id`,
    [ids],
  );
}
