import type { EntityManager } from 'typeorm';
import { raiseTiers } from '../tiers.ts';
import { tiersOf } from '../tier.queries.ts';
import type { ParentRow } from './merged-parents.ts';
import type { StayRow } from './merged-stays.ts';

/** The possible parents of clutches, by the clutch. */
export type ParentsOfClutches = ReadonlyMap<string, readonly ParentRow[]>;

/** Clutches that name an animal, withdrawn ones too (clutch_candidate_individual_index, clutch_pair_a_index, clutch_pair_b_index). */
export async function clutchesNaming(manager: EntityManager, individualId: string): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(
    `select clutch_id as id from clutch_candidate where individual_id = $1
     union select clutch_id from clutch_pair where a_id = $1 union select clutch_id from clutch_pair where b_id = $1 order by 1`,
    [individualId],
  );
  return rows.map(({ id }) => id);
}

/** The possible parents of these clutches as they are kept (clutch_candidate_once, clutch_pair_once). */
export async function readParentRows(manager: EntityManager, clutchIds: readonly string[]): Promise<ParentsOfClutches> {
  const rows = await manager.query<(ParentRow & { clutchId: string })[]>(
    `select clutch_id as "clutchId", id, role, individual_id as a, null::uuid as b, probability, reason
     from clutch_candidate where clutch_id = any($1::uuid[])
     union all select clutch_id, id, null, a_id, b_id, probability, reason from clutch_pair where clutch_id = any($1::uuid[])
     order by 1, 2`,
    [clutchIds],
  );
  const parents = new Map<string, ParentRow[]>(clutchIds.map((id) => [id, []]));
  for (const { clutchId, ...row } of rows) parents.get(clutchId)?.push(row);
  return parents;
}

/** Takes all possible parents from clutches, so that others can be written. */
export async function clearParentRows(manager: EntityManager, clutchIds: readonly string[]): Promise<void> {
  if (clutchIds.length === 0) return;
  await manager.query('delete from clutch_candidate where clutch_id = any($1::uuid[])', [clutchIds]);
  await manager.query('delete from clutch_pair where clutch_id = any($1::uuid[])', [clutchIds]);
}

/**
 * Writes the possible parents of clutches that have none, each clutch raised above them. 409 with the members of the loop where one of them descends from the clutch. Callers hold the lock of the lineage.
 */
export async function writeParentRows(manager: EntityManager, parents: ParentsOfClutches): Promise<void> {
  const clutchIds = [...parents.keys()];
  if (clutchIds.length === 0) return;
  await raiseAbove(manager, parents);
  const rows = JSON.stringify([...parents].flatMap(([clutchId, list]) => list.map((row) => ({ clutchId, ...row }))));
  const read = `jsonb_to_recordset($1::jsonb) as r ("clutchId" uuid, id uuid, role text, a uuid, b uuid, probability float8, reason text)
     join clutch c on c.id = r."clutchId"`;
  await manager.query(
    `insert into clutch_candidate (id, clutch_id, clutch_tier, role, individual_id, individual_tier, probability, reason)
     select r.id, c.id, c.tier, r.role, r.a, i.tier, r.probability, r.reason
     from ${read} left join individual i on i.id = r.a where r.role is not null`,
    [rows],
  );
  await manager.query(
    `insert into clutch_pair (id, clutch_id, clutch_tier, a_id, a_tier, b_id, b_tier, probability, reason)
     select r.id, c.id, c.tier, a.id, a.tier, b.id, b.tier, r.probability, r.reason
     from ${read} join individual a on a.id = r.a join individual b on b.id = r.b where r.role is null`,
    [rows],
  );
  await manager.query('update clutch set version = version + 1, updated_at = now() where id = any($1::uuid[])', [
    clutchIds,
  ]);
}

/**
 * Raises clutches above the animals that they are about to name. While a clutch names nobody, what rises above it does not take it
 * along; so raising goes on until every clutch fits, at most once more than there are clutches, since no loop is among them.
 */
async function raiseAbove(manager: EntityManager, parents: ParentsOfClutches): Promise<void> {
  const namedBy = new Map(
    [...parents].map(([id, rows]) => [id, rows.flatMap(({ a, b }) => [a, b]).filter((one) => one !== null)]),
  );
  for (let round = 0; round <= parents.size; round++) {
    const tiers = new Map(
      (await tiersOf(manager, 'individual', [...new Set([...namedBy.values()].flat())])).map(({ id, tier }) => [
        id,
        tier,
      ]),
    );
    let isFitting = true;
    for (const { id, tier } of await tiersOf(manager, 'clutch', [...parents.keys()])) {
      const named = namedBy.get(id) ?? [];
      const highest = Math.max(-1, ...named.map((parent) => tiers.get(parent) ?? -1));
      if (tier > highest) continue;
      isFitting = false;
      const above = named.map((parent) => ({ kind: 'individual', id: parent }) as const);
      await raiseTiers(manager, { kind: 'clutch', id }, highest + 1, above);
    }
    if (isFitting) return;
  }
}

/** A stay, the pairing it is in, and whether that stands. */
export type HousedStay = StayRow & { readonly pairingId: string; readonly pairing: string; readonly stands: boolean };

/** The stays of animals, withdrawn pairings included (pairing_member_individual_index). */
export async function readStayRows(manager: EntityManager, individualIds: readonly string[]): Promise<HousedStay[]> {
  return manager.query<HousedStay[]>(
    `select m.id, m.pairing_id as "pairingId", p.name as pairing, m.stands, m.individual_id as "individualId", m.joined,
       m.joined_earliest::text as "joinedEarliest", m.joined_latest::text as "joinedLatest", m."left",
       m.left_earliest::text as "leftEarliest", m.left_latest::text as "leftLatest"
     from pairing_member m join pairing p on p.id = m.pairing_id where m.individual_id = any($1::uuid[]) order by m.id`,
    [individualIds],
  );
}

/** Gives stays to another animal (primary key). */
export async function moveStays(manager: EntityManager, ids: readonly string[], individualId: string): Promise<void> {
  await manager.query('update pairing_member set individual_id = $2 where id = any($1::uuid[])', [ids, individualId]);
}

/** Replaces stays in a standing pairing by others. */
export async function replaceStays(
  manager: EntityManager,
  pairingId: string,
  gone: readonly StayRow[],
  come: readonly StayRow[],
): Promise<void> {
  await manager.query('delete from pairing_member where id = any($1::uuid[])', [gone.map(({ id }) => id)]);
  await manager.query(
    `insert into pairing_member (id, pairing_id, individual_id, joined, joined_earliest, joined_latest, "left", left_earliest, left_latest, stands)
     select r.id, p.id, r."individualId", r.joined, r."joinedEarliest", r."joinedLatest", r."left", r."leftEarliest", r."leftLatest",
       p.withdrawn_at is null
     from jsonb_to_recordset($2::jsonb) as r (id uuid, "individualId" uuid, joined text, "joinedEarliest" date, "joinedLatest" date,
       "left" text, "leftEarliest" date, "leftLatest" date) join pairing p on p.id = $1`,
    [pairingId, JSON.stringify(come)],
  );
}

/** Counts a change of these pairings. */
export async function touchPairings(manager: EntityManager, ids: readonly string[]): Promise<void> {
  await manager.query('update pairing set version = version + 1, updated_at = now() where id = any($1::uuid[])', [ids]);
}

/** Records of their own about an animal. */
export type RecordAbout = 'observation' | 'claim' | 'photograph' | 'flag_acknowledgement';

/**
 * Gives records about one animal to another, withdrawn ones too, and names them (observation_individual_index, claim_individual_index,
 * photograph_individual_index; of acknowledged flags, which are few, all are read).
 *
 * @param which a condition in SQL, where not all of them move
 */
export async function moveAbout(
  manager: EntityManager,
  table: RecordAbout,
  from: string,
  to: string,
  which = 'true',
): Promise<string[]> {
  return idsOf(
    manager,
    `update ${table} r set individual_id = $2, version = version + 1, updated_at = now() where individual_id = $1 and ${which} returning id`,
    [from, to],
  );
}

/** Gives these records to another animal (primary key). */
export async function moveThese(
  manager: EntityManager,
  table: RecordAbout,
  ids: readonly string[],
  to: string,
): Promise<void> {
  await manager.query(
    `update ${table} set individual_id = $2, version = version + 1, updated_at = now() where id = any($1::uuid[])`,
    [ids, to],
  );
}

/** Gives confirmed warnings of one animal to another that has none of the same code, and names them (confirmed_warning_once). */
export async function moveConfirmations(manager: EntityManager, from: string, to: string): Promise<string[]> {
  return idsOf(
    manager,
    `update confirmed_warning set individual_id = $2 where individual_id = $1
       and code not in (select code from confirmed_warning where individual_id = $2) returning id`,
    [from, to],
  );
}

/** Gives these confirmed warnings to another animal, those that are still there (primary key). */
export async function moveTheseConfirmations(
  manager: EntityManager,
  ids: readonly string[],
  to: string,
): Promise<void> {
  await manager.query('update confirmed_warning set individual_id = $2 where id = any($1::uuid[])', [ids, to]);
}

/** Lets records that were merged into one animal name another, and names them (individual_merged_into_index). */
export async function moveFollowers(manager: EntityManager, from: string, to: string): Promise<string[]> {
  return idsOf(
    manager,
    `update individual set merged_into_id = $2, version = version + 1, updated_at = now() where merged_into_id = $1 returning id`,
    [from, to],
  );
}

/** Lets these merged records name another animal (primary key). */
export async function moveTheseFollowers(manager: EntityManager, ids: readonly string[], to: string): Promise<void> {
  await manager.query(
    'update individual set merged_into_id = $2, version = version + 1, updated_at = now() where id = any($1::uuid[])',
    [ids, to],
  );
}

/** Names the rows that a statement changed. */
export async function idsOf(manager: EntityManager, statement: string, parameters: unknown[]): Promise<string[]> {
  const [rows] = await manager.query<[{ id: string }[], number]>(statement, parameters);
  return rows.map(({ id }) => id).sort();
}

/** Locks the pairings that animals live or lived in, so that no stay is changed meanwhile (pairing_member_individual_index). */
export async function lockPairingsOf(manager: EntityManager, individualIds: readonly string[]): Promise<void> {
  await manager.query(
    `select 1 from pairing where id in (select pairing_id from pairing_member where individual_id = any($1::uuid[])) order by id for update`,
    [individualIds],
  );
}
