import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { authorize } from '../../people/permissions.ts';
import { acting } from '../../platform/acting.ts';
import { isId, newId } from '../../platform/ids.ts';
import { ConflictProblem, InvalidProblem, LoopProblem, NotFoundProblem, StaleProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { pathOfDescent } from '../ancestor-path.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { present } from '../present.ts';
import { refuseImpossibleIndividual } from '../warnings/impossible.queries.ts';
import { compareRecords, sameRecord } from './comparison.service.ts';
import { Merge } from './merge.entity.ts';
import { noteMerge } from './merge-entries.ts';
import type { MergeRequest } from './merge.dto.ts';
import { findMerge } from './merge.queries.ts';
import type { MergeView, ObstacleView } from './merge.view.ts';
import { clutchesNaming, lockPairingsOf, readParentRows } from './merged-rows.queries.ts';
import { moveRecords } from './move-records.ts';
import { findObstacles, isOtherRole } from './obstacles.ts';
import { putBack, refuseChanged } from './put-back.ts';
import { say } from '../../platform/say.ts';

/** Merges two records of one animal, and parts them again. */
@Injectable()
export class MergesService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One merging; 404 where there is none. */
  async get(id: string): Promise<MergeView> {
    return shown(this.dataSource.manager, id);
  }

  /**
   * Merges the duplicate into the kept record. 404 where one is not there, 409 where one descends from the other (the path is
   * named) or something else stands against it, 412 where one was changed since it was compared, 422 where one was withdrawn.
   */
  async merge(request: MergeRequest): Promise<MergeView> {
    return inTransaction(this.dataSource, async (manager) => shown(manager, await mergeRecords(manager, request)));
  }

  /** Undoes a merging. 404, 409 where it was undone already or where something was changed since, so that it cannot be put back exactly. */
  async undo(id: string): Promise<MergeView> {
    return inTransaction(this.dataSource, async (manager) => {
      await undoMerge(manager, id);
      return shown(manager, id);
    });
  }
}

/** Merges inside a transaction and gives the id of the merging; see `MergesService.merge`. */
async function mergeRecords(manager: EntityManager, request: MergeRequest, reversesId?: string): Promise<string> {
  await lockPedigree(manager);
  const { kept, duplicate } = await lockBoth(manager, request.keptId, request.duplicateId);
  requireStanding(kept, '/keptId');
  requireStanding(duplicate, '/duplicateId');
  await requireVersions(manager, request, kept, duplicate);
  await refuseObstacles(manager, request, kept, duplicate);
  const note = await noteMerge(manager, kept, duplicate);
  const moved = await moveRecords(manager, kept, duplicate, request);
  await refuseImpossibleIndividual(manager, kept.id);
  const [id, { reason }] = [newId(), request];
  await manager.insert(Merge, { id, keptId: kept.id, duplicateId: duplicate.id, keeperId: acting().id, reason, moved });
  await note({ action: 'merged', mergeId: id, moved, reason, reversesId });
  return id;
}

/** Merges again what was parted, in answer to the entry `reversesId` of the journal. 409 where it was merged again already. */
export async function mergeAgain(manager: EntityManager, merge: Merge, reversesId: string): Promise<void> {
  const { keptId, duplicateId, reason, moved } = merge;
  await mergeRecords(manager, { keptId, duplicateId, reason, take: [...moved.fields] }, reversesId);
}

/** Undoes a merging inside a transaction; see `MergesService.undo`. `reversesId`: the entry of the journal that this answers. */
export async function undoMerge(manager: EntityManager, id: string, reversesId?: string): Promise<void> {
  await lockPedigree(manager);
  const merge = isId(id) ? await manager.findOneBy(Merge, { id }) : null;
  if (!merge) throw new NotFoundProblem(say`merging`, id);
  if (merge.undoneAt !== null) throw new ConflictProblem(say`This merging was undone already.`);
  const { kept, duplicate } = await lockBoth(manager, merge.keptId, merge.duplicateId);
  await refuseChanged(manager, merge, kept, duplicate);
  const note = await noteMerge(manager, kept, duplicate);
  await putBack(manager, merge, kept, duplicate);
  await manager.update(Merge, { id }, { undoneAt: new Date() });
  await note({ action: 'unmerged', mergeId: id, moved: merge.moved, reason: null, reversesId });
}

/** Locks both records, and before them the pairings that they live in, in the order in which changes of a pairing lock them. */
async function lockBoth(
  manager: EntityManager,
  keptId: string,
  duplicateId: string,
): Promise<{ kept: Individual; duplicate: Individual }> {
  if (keptId.toLowerCase() === duplicateId.toLowerCase()) throw sameRecord('/duplicateId');
  await lockPairingsOf(manager, [keptId, duplicateId]);
  const both = await manager
    .createQueryBuilder(Individual, 'i')
    .where('i.id in (:...ids)', { ids: [keptId, duplicateId] })
    .orderBy('i.id')
    .setLock('pessimistic_write')
    .getMany();
  const found = (id: string): Individual =>
    present(
      both.find((individual) => individual.id === id.toLowerCase()),
      () => new NotFoundProblem(say`animal`, id),
    );
  const locked = { kept: found(keptId), duplicate: found(duplicateId) };
  for (const record of Object.values(locked)) authorize('merge', 'individual', record);
  return locked;
}

function requireStanding(individual: Individual, pointer: string): void {
  if (individual.withdrawnAt === null) return;
  const detail =
    individual.mergedIntoId === null
      ? say`This animal was withdrawn. Restore it first, or choose another.`
      : say`This record was merged into another already. Choose that one.`;
  throw new InvalidProblem(detail, [{ pointer, detail }]);
}

async function requireVersions(
  manager: EntityManager,
  { keptVersion, duplicateVersion }: MergeRequest,
  kept: Individual,
  duplicate: Individual,
): Promise<void> {
  const isStale = (version: number | undefined, record: Individual): boolean =>
    version !== undefined && version !== record.version;
  if (isStale(keptVersion, kept) || isStale(duplicateVersion, duplicate))
    throw new StaleProblem(await compareRecords(manager, kept.id, duplicate.id));
}

/** The loop first, then everything else that stands against it. */
async function refuseObstacles(
  manager: EntityManager,
  { take }: MergeRequest,
  kept: Individual,
  duplicate: Individual,
): Promise<void> {
  const path = await pathOfDescent(manager, kept.id, duplicate.id);
  if (path !== null)
    throw new LoopProblem(path, say`The first and the last of them are two animals, or one of these parents is wrong.`);
  const obstacles = (await findObstacles(manager, kept, duplicate)).filter(({ blocks }) => blocks);
  const { sex } = take.includes('sex') ? duplicate : kept;
  const parents = await readParentRows(manager, await clutchesNaming(manager, duplicate.id));
  if (isOtherRole(sex, duplicate.id, parents)) obstacles.push(wrongRole(sex));
  const [first] = obstacles;
  if (first) throw new ConflictProblem(say`These two cannot be merged. ${first.detail}`, { obstacles });
}

const wrongRole = (sex: string): ObstacleView => ({
  code: 'role',
  blocks: true,
  detail: say`The animal would be ${sex}, and the duplicate is recorded as a parent in the role of the other sex. Take the other sex, or correct those clutches first.`,
  records: [],
});

async function shown(manager: EntityManager, id: string): Promise<MergeView> {
  return present(await findMerge(manager, id), () => new NotFoundProblem(say`merging`, id));
}
