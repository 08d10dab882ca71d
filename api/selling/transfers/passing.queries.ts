import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { StoredDate } from '../../platform/dates.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { touchPairings } from '../../register/merges/merged-rows.queries.ts';
import type { EndedStay } from './transfer.entity.ts';
import { say } from '../../platform/say.ts';

interface OpenStay {
  readonly id: string;
  readonly pairingId: string;
  readonly pairing: string;
  readonly individualId: string;
  readonly number: string;
  readonly joined: string | null;
  readonly isLater: boolean;
}

/**
 * Ends, on a date, the stays that animals have in pairings now; those in pairings of `toId`, where they are already, go on. 422 where one
 * joined later than that (pairing_member_individual_index). Callers hold the animals.
 */
export async function endStays(
  manager: EntityManager,
  ids: readonly string[],
  toId: string | null,
  date: StoredDate,
): Promise<EndedStay[]> {
  const stays = await manager.query<OpenStay[]>(
    `select m.id, m.pairing_id as "pairingId", p.name as pairing, i.id as "individualId", i.number::text, m.joined,
       coalesce(m.joined_earliest > $3::date, false) as "isLater"
     from pairing_member m join pairing p on p.id = m.pairing_id join individual i on i.id = m.individual_id
     where i.id = any($1::uuid[]) and m."left" is null and m.stands and p.keeper_id is distinct from $2::uuid order by m.id`,
    [ids, toId, date.latest],
  );
  const [later] = stays.filter(({ isLater }) => isLater);
  if (later) {
    const detail = say`${formatRegistryNumber(later.number)} joined ${later.pairing} on ${later.joined ?? say`a later day`}, after this date. Give a later date, or correct that stay first.`;
    throw new InvalidProblem(detail, [{ pointer: '/date', detail }]);
  }
  await manager.query(
    `update pairing_member set "left" = $2, left_earliest = $3, left_latest = $4 where id = any($1::uuid[])`,
    [stays.map(({ id }) => id), date.text, date.earliest, date.latest],
  );
  await touchPairings(manager, [...new Set(stays.map(({ pairingId }) => pairingId))]);
  return stays.map(({ id, pairingId, individualId }) => ({ id, pairingId, individualId, left: date.text ?? '' }));
}

/** Lets stays go on that a transfer ended. 409 where an animal lives elsewhere meanwhile. */
export async function reopenStays(manager: EntityManager, stays: readonly EndedStay[]): Promise<void> {
  await manager.query(
    `update pairing_member set "left" = null, left_earliest = null, left_latest = null where id = any($1::uuid[])`,
    [stays.map(({ id }) => id)],
  );
  await touchPairings(manager, [...new Set(stays.map(({ pairingId }) => pairingId))]);
}

/** Those of the stays that are no longer as a transfer left them, with the names of their pairings (primary key). */
export async function staysChangedSince(
  manager: EntityManager,
  stays: readonly EndedStay[],
): Promise<{ individualId: string; number: string; pairing: string }[]> {
  const rows = await manager.query<{ individualId: string; number: string; pairing: string }[]>(
    `select s."individualId", i.number::text, p.name as pairing
     from jsonb_to_recordset($1::jsonb) as s (id uuid, "pairingId" uuid, "individualId" uuid, "left" text)
       join individual i on i.id = s."individualId" join pairing p on p.id = s."pairingId"
       left join pairing_member m on m.id = s.id and m.individual_id = s."individualId" and m."left" = s."left"
     where m.id is null`,
    [JSON.stringify(stays)],
  );
  return rows.map((row) => ({ ...row, number: formatRegistryNumber(row.number) }));
}

/** Gives animals to a keeper, each under its code there. Callers hold the animals. */
export async function giveTo(
  manager: EntityManager,
  keeperId: string,
  codes: ReadonlyMap<string, string | null>,
): Promise<void> {
  await manager.query(
    `update individual i set keeper_id = $1, code = c.code, version = i.version + 1, updated_at = now()
     from jsonb_to_recordset($2::jsonb) as c (id uuid, code text) where i.id = c.id`,
    [keeperId, JSON.stringify([...codes].map(([id, code]) => ({ id, code })))],
  );
}

/** Sets whether animals live with their keeper or are gone. Callers hold the animals and the lock of the lineage. */
export async function setStatus(
  manager: EntityManager,
  ids: readonly string[],
  status: 'alive' | 'gone',
): Promise<void> {
  await manager.query(
    'update individual set status = $2, version = version + 1, updated_at = now() where id = any($1::uuid[])',
    [ids, status],
  );
}

/** Codes of these that a keeper has given to other standing animals already, in lower case (individual_code_unique). */
export async function takenCodes(
  manager: EntityManager,
  keeperId: string,
  codes: ReadonlyMap<string, string | null>,
): Promise<ReadonlySet<string>> {
  const rows = await manager.query<{ code: string }[]>(
    `select lower(code) as code from individual
     where keeper_id = $1 and withdrawn_at is null and id <> all($2::uuid[]) and lower(code) = any(
       select lower(c) from unnest($3::text[]) as given (c))`,
    [keeperId, [...codes.keys()], [...codes.values()].filter((code) => code !== null)],
  );
  return new Set(rows.map(({ code }) => code));
}

/** Those of some animals that are on offer, by their ids (transfer_animal_offered_unique). */
export async function onOffer(manager: EntityManager, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await manager.query<{ id: string }[]>(
    `select individual_id as id from transfer_animal where individual_id = any($1::uuid[]) and state = 'offered'`,
    [ids],
  );
  return new Set(rows.map(({ id }) => id));
}
