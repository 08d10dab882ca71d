import type { EntityManager } from 'typeorm';
import { seen } from '../../people/visibility.ts';
import { seenPairing } from '../seen-records.ts';

/** An animal as a change of several looks at it. */
export interface AnimalRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly version: number;
  readonly keeperId: string;
  readonly keeper: string;
  readonly withdrawn: boolean;
  readonly merged: boolean;
  readonly visibility: string;
  readonly sex: string;
  readonly sexBasis: string | null;
  readonly sexedOn: string | null;
  readonly status: string;
  readonly died: string | null;
  readonly outOfWater: string | null;
  readonly lineId: string | null;
  readonly line: string | null;
}

/** Locks animals in the order of their ids, so that two such changes never wait for each other; those that may not be seen are left out (primary key). */
export async function lockAnimals(manager: EntityManager, ids: readonly string[]): Promise<Map<string, AnimalRow>> {
  const rows = await manager.query<AnimalRow[]>(
    `select i.id, i.number::text, i.code, i.version, i.keeper_id as "keeperId", k.name as keeper, i.withdrawn_at is not null as withdrawn,
       i.merged_into_id is not null as merged, i.visibility, i.sex, i.sex_basis as "sexBasis", i.sexed_on as "sexedOn", i.status, i.died,
       i.out_of_water as "outOfWater", i.line_id as "lineId", l.name as line
     from individual i join keeper k on k.id = i.keeper_id left join line l on l.id = i.line_id
     where i.id = any($1::uuid[]) and ${seen('individual', 'i')} order by i.id for update of i`,
    [ids],
  );
  return new Map(rows.map((row) => [row.id, row]));
}

/** A stay that an animal has not left. */
export interface OpenStay {
  readonly id: string;
  readonly individualId: string;
  readonly pairingId: string;
  readonly pairing: string;
  readonly keeperId: string | null;
  readonly isSeen: boolean;
}

/** The stays that animals have not left (pairing_member_individual_index). */
export async function readOpenStays(manager: EntityManager, ids: readonly string[]): Promise<OpenStay[]> {
  return manager.query<OpenStay[]>(
    `select m.id, m.individual_id as "individualId", p.id as "pairingId", p.name as pairing, p.keeper_id as "keeperId",
       ${seenPairing('p')} as "isSeen"
     from pairing_member m join pairing p on p.id = m.pairing_id
     where m.individual_id = any($1::uuid[]) and m."left" is null and m.stands order by p.id, m.id`,
    [ids],
  );
}

/** The versions of animals as they stand (primary key). */
export async function readVersions(manager: EntityManager, ids: readonly string[]): Promise<Map<string, number>> {
  const rows = await manager.query<{ id: string; version: number }[]>(
    'select id, version from individual where id = any($1::uuid[])',
    [ids],
  );
  return new Map(rows.map(({ id, version }) => [id, version]));
}
