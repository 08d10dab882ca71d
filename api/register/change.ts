import type { EntityManager, EntityTarget, FindOptionsWhere, UpdateQueryBuilder } from 'typeorm';
import { authorize, type Subject } from '../people/permissions.ts';
import { isMatch, type VersionMatch } from '../platform/etag.ts';
import { isId } from '../platform/ids.ts';
import { ConflictProblem, NotFoundProblem, StaleProblem } from '../platform/problem.ts';
import { noteChange } from './kept/note-change.ts';
import { tableOf, type KindWord } from './kind-words.ts';
import type { Kept, WithdrawableRecord } from './record.ts';
import { seenOf } from './seen-records.ts';
import { say } from '../platform/say.ts';

/** A kind of record as the change functions need to know it. */
export interface Kind<
  Entity extends WithdrawableRecord & Kept,
  View extends { readonly version: number } = { readonly version: number },
> {
  readonly word: KindWord;
  readonly entity: EntityTarget<Entity>;
  /** The record as it goes out; null where there is none. */
  readonly find: (manager: EntityManager, id: string) => Promise<View | null>;
}

/** What permissions call a kind of record. */
const subjectOf = (word: KindWord): Subject => (word === 'animal' ? 'individual' : word);

/**
 * Locks a record for a change, compares its version with those the change was made from, and notes it for the journal.
 * Errors: 404 where there is none or it may not be seen, 403 where it is another keeper's, 412 with the record as it is now where the
 * version is another.
 */
export async function lockForChange<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
  match: VersionMatch,
): Promise<Entity> {
  const record = await lockOwn(manager, kind, id);
  if (!isMatch(match, record.version)) throw new StaleProblem(await kind.find(manager, id));
  await noteChange(manager, tableOf(kind.word), id);
  return record;
}

async function lockOwn<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
): Promise<Entity> {
  const record = isId(id) ? await findSeen(manager, kind, id) : null;
  if (!record) throw new NotFoundProblem(kind.word, id);
  authorize('change', subjectOf(kind.word), record);
  return record;
}

/** The condition is part of the statement, so that a record that may not be seen is neither found nor waited for. */
async function findSeen<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
): Promise<Entity | null> {
  return manager
    .createQueryBuilder(kind.entity, 'r')
    .setLock('pessimistic_write')
    .where('r.id = :id', { id })
    .andWhere(seenOf(kind.word, 'r'))
    .getOne();
}

/** As `lockForChange`, and refuses with 409 to change what was withdrawn. */
export async function lockStanding<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
  match: VersionMatch,
): Promise<Entity> {
  return refuseWithdrawn(kind, await lockForChange(manager, kind, id, match));
}

/**
 * As `lockStanding`, for work that adds to a record without changing it and writes an entry of its own: nothing is noted for the
 * journal.
 */
export async function lockForAdding<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  id: string,
): Promise<Entity> {
  return refuseWithdrawn(kind, await lockOwn(manager, kind, id));
}

function refuseWithdrawn<Entity extends WithdrawableRecord & Kept>(kind: Kind<Entity>, record: Entity): Entity {
  refuseMerged(record);
  if (record.withdrawnAt !== null)
    throw new ConflictProblem(say`This ${kind.word} was withdrawn. Restore it before you change it.`);
  return record;
}

/** Refuses with 409 to change a record in whose place another one goes on. */
export function refuseMerged(record: object): void {
  if ('mergedIntoId' in record && record.mergedIntoId !== null)
    throw new ConflictProblem(
      say`This record was merged into another one of the same animal. Change that one, or undo the merging first.`,
    );
}

type Patch<Entity extends WithdrawableRecord & Kept> = Parameters<UpdateQueryBuilder<Entity>['set']>[0];

/**
 * Writes a change of a record that was locked before. The version stands in the condition as well, so that a change of a
 * record that somebody else changed can never be written, whatever the caller forgot.
 */
export async function writeChange<Entity extends WithdrawableRecord & Kept>(
  manager: EntityManager,
  kind: Kind<Entity>,
  record: Entity,
  patch: Patch<Entity>,
): Promise<void> {
  const where = { id: record.id, version: record.version } as FindOptionsWhere<Entity>;
  const result = await manager.update(kind.entity, where, { ...patch, updatedAt: new Date() });
  if (result.affected !== 1) throw new StaleProblem(await kind.find(manager, record.id));
}

/** The fields of a request that were sent, so that those left out stay as they are. */
export function sentFields<Request extends object, Field extends keyof Request>(
  request: Request,
  fields: readonly Field[],
): Partial<Pick<Request, Field>> {
  const sent: Partial<Pick<Request, Field>> = {};
  for (const field of fields) if (request[field] !== undefined) sent[field] = request[field];
  return sent;
}
