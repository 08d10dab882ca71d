import type { EntityManager } from 'typeorm';
import type {
  CitesAppendix,
  PhotographView,
  Sex,
  SexBasis,
  SourceKind,
  Status,
  Visibility,
} from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';

/** What is recorded of an animal, as far as a sheet tells it. */
export interface AnimalFacts {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly species: string;
  readonly commonName: string | null;
  readonly citesAppendix: CitesAppendix | null;
  readonly sex: Sex;
  readonly sexBasis: SexBasis | null;
  readonly status: Status;
  readonly hatched: string | null;
  readonly outOfWater: string | null;
  readonly line: string | null;
  readonly isWithdrawn: boolean;
  readonly mergedInto: string | null;
}

/** Animals that may be seen, withdrawn ones too (primary key). */
export function readAnimalFacts(manager: EntityManager, ids: readonly string[]): Promise<AnimalFacts[]> {
  return manager.query(
    `select i.id, i.number::text, i.code, s.scientific_name as species, s.common_name as "commonName", s.cites_appendix as "citesAppendix",
       i.sex, i.sex_basis as "sexBasis", i.status, i.hatched, i.out_of_water as "outOfWater", l.name as line,
       i.withdrawn_at is not null as "isWithdrawn",
       (select m.number::text from individual m where m.id = i.merged_into_id and ${seen('individual', 'm')}) as "mergedInto"
     from individual i join species s on s.id = i.species_id left join line l on l.id = i.line_id
     where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
    [ids],
  );
}

/** What is recorded of a source, as far as a sheet tells it. */
export interface SourceFacts {
  readonly id: string;
  readonly kind: SourceKind;
  readonly date: string | null;
  readonly countryOfExport: string | null;
  readonly labelAsReceived: string | null;
  readonly permitReferences: readonly string[];
  readonly baseKinship: number;
}

/** Sources that may be seen (primary key). References of permits are told of public ones alone: they lead to people. */
export function readSourceFacts(manager: EntityManager, ids: readonly string[]): Promise<SourceFacts[]> {
  return manager.query(
    `select o.id, o.kind, o.date, o.country_of_export as "countryOfExport", o.label_as_received as "labelAsReceived",
       case when o.visibility = 'public' then o.permit_references else '{}' end as "permitReferences", o.base_kinship as "baseKinship"
     from source o where o.id = any($1::uuid[]) and ${seen('source', 'o')}`,
    [ids],
  );
}

/** A photograph of an animal: the picture is known by its SHA-256. */
export interface PhotographFacts {
  readonly individualId: string;
  readonly hash: string;
  readonly view: PhotographView;
  readonly takenOn: string | null;
}

/** Photographs of animals that may be seen, those taken last first (photograph_individual_index). */
export function readPhotographFacts(manager: EntityManager, ids: readonly string[]): Promise<PhotographFacts[]> {
  return manager.query(
    `select p.individual_id as "individualId", p.file_hash as hash, p.view, p.taken_on as "takenOn"
     from photograph p join individual i on i.id = p.individual_id
     where p.individual_id = any($1::uuid[]) and p.withdrawn_at is null and ${seen('individual', 'i')}
     order by p.taken_on_latest desc nulls last, p.id desc`,
    [ids],
  );
}

/** What decides whether an animal may go onto a sheet. */
export interface Issuable {
  readonly id: string;
  readonly version: number;
  readonly number: string;
  readonly keeperId: string;
  readonly keeper: string;
  readonly visibility: Visibility;
  readonly isWithdrawn: boolean;
}

/** The same for some animals (primary key); held until the transaction ends where `isHeld`, so that they stay as they are. */
export function readIssuable(manager: EntityManager, ids: readonly string[], isHeld: boolean): Promise<Issuable[]> {
  return manager.query(
    `select i.id, i.version, i.number::text, i.keeper_id as "keeperId", k.name as keeper, i.visibility,
       i.withdrawn_at is not null as "isWithdrawn"
     from individual i join keeper k on k.id = i.keeper_id where i.id = any($1::uuid[]) order by i.id ${isHeld ? 'for share of i' : ''}`,
    [ids],
  );
}
