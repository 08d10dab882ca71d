import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../shared/vocabulary.ts';
import { isMatch, type VersionMatch } from '../platform/etag.ts';
import { isId } from '../platform/ids.ts';
import { writeEntry, type KeptForm } from '../platform/journal-entry.ts';
import { ConflictProblem, NotFoundProblem, StaleProblem } from '../platform/problem.ts';
import { Keeper } from './keeper.entity.ts';
import { findMember } from './people.queries.ts';
import type { MemberView } from './people.view.ts';
import { endSessionsOf } from './sessions.ts';
import { say } from '../platform/say.ts';

/** What of a keeper is a matter of the club. */
export type Membership = Pick<Keeper, 'name' | 'region' | 'roles' | 'leftAt'>;

/** What the journal is told besides. */
interface Saying {
  readonly action: JournalAction;
  readonly reversesId?: string;
}

const runs = (keeper: Membership): boolean => keeper.leftAt === null && keeper.roles.includes('administrator');

/**
 * Locks a keeper for a change, and the administrators with them, so that two who give the office up at once cannot both count on each
 * other. Errors: 404, 412 with the keeper as they are now.
 */
export async function lockKeeper(manager: EntityManager, id: string, match: VersionMatch): Promise<Keeper> {
  if (isId(id))
    // not so strong a lock that whoever writes a record in the keeper's name would wait
    await manager.query(
      `select from keeper where id = $1 or left_at is null and 'administrator' = any(roles) order by id for no key update`,
      [id],
    );
  const keeper = isId(id) ? await manager.findOneBy(Keeper, { id }) : null;
  if (!keeper) throw new NotFoundProblem(say`keeper`, id);
  if (!isMatch(match, keeper.version)) throw new StaleProblem(await findMember(manager, id));
  return keeper;
}

/**
 * Writes a change of a keeper who was locked before, tells the journal, and ends what no longer goes: leaving ends sessions, tokens and
 * links, losing the office of administrator ends the links made in it. 409 where the club would be left without an administrator.
 */
export async function changeKeeper(
  manager: EntityManager,
  keeper: Keeper,
  patch: Partial<Membership>,
  saying: Saying,
): Promise<MemberView> {
  const next = { ...formOf(keeper), ...patch };
  if (runs(keeper) && !runs(next)) {
    await requireAnotherAdministrator(manager, keeper);
    await revokeLinks(manager, 'made_by = $1', keeper.id);
  }
  if (keeper.leftAt === null && next.leftAt !== null) await endAccess(manager, keeper.id);
  await manager.update(Keeper, { id: keeper.id, version: keeper.version }, { ...patch, updatedAt: new Date() });
  const view = await findMember(manager, keeper.id);
  if (!view) throw new Error('a keeper is never destroyed');
  await writeEntry(manager, {
    ...saying,
    kind: 'keeper',
    recordId: keeper.id,
    recordVersion: view.version,
    ownerId: keeper.id,
    before: keptForm(keeper),
    after: keptForm(next),
  });
  return view;
}

/** Revokes the links that were not used yet and fulfil a condition on the keeper `$1`. */
export async function revokeLinks(manager: EntityManager, whose: string, keeperId: string): Promise<void> {
  await manager.query(
    `update sign_in_link set revoked_at = now() where ${whose} and used_at is null and revoked_at is null`,
    [keeperId],
  );
}

async function endAccess(manager: EntityManager, id: string): Promise<void> {
  await endSessionsOf(manager, id);
  await manager.query('update access_token set revoked_at = now() where keeper_id = $1 and revoked_at is null', [id]);
  await revokeLinks(manager, '(keeper_id = $1 or made_by = $1)', id);
}

/** One who can sign in as well, if the keeper can: else the register would wait to be set up again. */
async function requireAnotherAdministrator(manager: EntityManager, keeper: Keeper): Promise<void> {
  const others = await manager.query<unknown[]>(
    `select from keeper where id <> $1 and left_at is null and 'administrator' = any(roles)
       and (password_hash is not null or not $2) limit 1`,
    [keeper.id, keeper.passwordHash !== null],
  );
  if (others.length === 0)
    throw new ConflictProblem(
      say`The club would be left without an administrator who can sign in. Make somebody else one first.`,
    );
}

const formOf = ({ name, region, roles, leftAt }: Membership): Membership => ({ name, region, roles, leftAt });

/** A keeper as the journal keeps them. */
export const keptForm = ({ name, region, roles, leftAt }: Membership): KeptForm => ({
  name,
  region,
  roles: [...roles].sort(),
  leftAt: leftAt?.toISOString() ?? null,
});
