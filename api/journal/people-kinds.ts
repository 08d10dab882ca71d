import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../shared/vocabulary.ts';
import { acting } from '../platform/acting.ts';
import { ConflictProblem } from '../platform/problem.ts';
import { changeKeeper, lockKeeper, type Membership } from '../people/change-keeper.ts';
import { changeClub } from '../people/club.service.ts';
import { requireOffice, requireOwnOrOffice } from '../people/keepers.service.ts';
import { readClub } from '../people/people.queries.ts';
import { ChangedSince, type JournalKind, type Undo } from './journal-kinds.ts';
import { say } from '../platform/say.ts';

/** What concerns a person is read by that person and by administrators. */
const concerns = (id: string): string => {
  const who = acting();
  if (!who.roles.includes('administrator')) return `(${id} = '${who.id}')`;
  return `exists (select from keeper k where k.id = ${id})`;
};

/** Names of keepers are known to every member (primary key). */
async function keeperNames(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  return named(manager, 'select id, name from keeper where id = any($1)', ids);
}

async function named(
  manager: EntityManager,
  statement: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; name: string }[]>(statement, [ids]);
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** What links are for (primary key): what was noted, else whose passphrase they set. */
async function linkTitles(manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await manager.query<{ id: string; note: string | null; keeper: string | null }[]>(
    `select l.id, l.note, k.name as keeper from sign_in_link l left join keeper k on k.id = l.keeper_id
     where l.id = any($1)`,
    [ids],
  );
  return new Map(
    rows.map(({ id, note, keeper }) => [
      id,
      note ?? (keeper === null ? say`invitation` : say`new passphrase of ${keeper}`),
    ]),
  );
}

/** What tells that a keeper is as before again. */
const opposites: Partial<Record<JournalAction, JournalAction>> = { left: 'returned', returned: 'left' };

/** Makes name, region, roles and membership what they were. Sessions, tokens and links that ended stay ended. */
const undoKeeper: Undo = async (manager, { id, action, recordId, recordVersion, before, after }) => {
  if (action === 'changed') requireOwnOrOffice(recordId);
  else requireOffice();
  const keeper = await lockKeeper(manager, recordId, 'any');
  if (keeper.version !== recordVersion) throw new ChangedSince(recordId, recordVersion);
  const [was, is] = [before as Kept | null, after as Kept | null];
  if (!was || !is) throw new ConflictProblem(say`This cannot be undone: there was nothing before.`);
  const patch: Partial<Membership> = {
    ...(was.name === is.name ? {} : { name: was.name }),
    // entries of before keepers had regions tell of none
    ...((was.region ?? null) === (is.region ?? null) ? {} : { region: was.region ?? null }),
    ...(was.roles.join() === is.roles.join() ? {} : { roles: was.roles }),
    ...(was.leftAt === is.leftAt ? {} : { leftAt: was.leftAt === null ? null : new Date(was.leftAt) }),
  };
  await changeKeeper(manager, keeper, patch, { action: opposites[action] ?? action, reversesId: id });
};

/** The form in which the journal keeps a keeper. */
type Kept = Omit<Membership, 'leftAt' | 'region'> & { readonly leftAt: string | null; readonly region?: string | null };

/** Makes the settings of the club what they were. */
const undoClub: Undo = async (manager, { id, recordVersion, before }) => {
  requireOffice();
  const club = await readClub(manager);
  if (!before || club?.version !== recordVersion)
    throw new ConflictProblem(
      say`The settings of the club were changed again after this. Undo the later changes first.`,
    );
  await changeClub(manager, [club.version], before, id);
};

/** The kinds of the people room. */
export const peopleKinds: readonly JournalKind[] = [
  {
    kind: 'keeper',
    seen: concerns,
    titles: keeperNames,
    undo: { changed: undoKeeper, 'roles-changed': undoKeeper, left: undoKeeper, returned: undoKeeper },
  },
  {
    kind: 'club',
    // there is one, and it has no id
    isOnlyOne: true,
    seen: (id) => `(${id} is null)`,
    titles: () => Promise.resolve(new Map()),
    undo: { 'club-changed': undoClub },
  },
  {
    kind: 'token',
    seen: (id) => `exists (select from access_token t where t.id = ${id} and ${concerns('t.keeper_id')})`,
    titles: (manager, ids) => named(manager, 'select id, name from access_token where id = any($1)', ids),
  },
  {
    kind: 'link',
    // whoever may make links reads of them, and whoever a link was for
    seen: (id) =>
      acting().roles.includes('administrator')
        ? `exists (select from sign_in_link l where l.id = ${id})`
        : `exists (select from sign_in_link l where l.id = ${id} and l.keeper_id = '${acting().id}')`,
    titles: linkTitles,
  },
];
