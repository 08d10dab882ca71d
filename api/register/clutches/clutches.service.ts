import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { finishSteps, inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import { requireStanding } from '../standing.queries.ts';
import { ClutchLoss } from './clutch-loss.entity.ts';
import type { ClutchChangeRequest, LossRequest, NewClutchRequest } from './clutch.dto.ts';
import { Clutch } from './clutch.entity.ts';
import { findClutch, findPossibleClutch } from './clutch.queries.ts';
import type { ClutchView } from './clutch.view.ts';
import { housedParents } from './housing.queries.ts';
import { isAtEqualOdds, isSameParents, unknownParents, type Parents } from './parents.ts';
import { insertParents, readSides, tierAbove, writeParents } from './parents.queries.ts';
import { raiseYoung } from './raise-young.ts';
import { requestedParents } from './requested-parents.ts';
import { say } from '../../platform/say.ts';

export const clutchKind: Kind<Clutch, ClutchView> = { word: 'clutch', entity: Clutch, find: findClutch };

const plainFields = ['pairingId', 'code', 'eggs', 'fertile', 'hatched', 'outOfWater', 'site', 'notes'] as const;

/** Clutches and who may be their parents. */
@Injectable()
export class ClutchesService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One clutch, whole; 404 where there is none. */
  async get(id: string): Promise<ClutchView> {
    return present(await findClutch(this.dataSource.manager, id), () => new NotFoundProblem(say`clutch`, id));
  }

  /**
   * Adds a clutch of the acting keeper. With a pairing and no parents named, they are the animals housed there when it was laid. Its
   * young may be raised with it, as `OffspringService` does it later. 409 where a code is taken, 422 where it names what is not there or cannot be.
   */
  async add(keeper: Acting, request: NewClutchRequest): Promise<ClutchView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await requireStanding(manager, 'pairing', request.pairingId, '/pairingId');
      const laid = request.laid ?? null;
      const named = await requestedParents(manager, request, () => Promise.resolve({ sire: [], dam: [] }));
      const housed = request.pairingId ? await housedParents(manager, request.pairingId, laid) : null;
      const parents = named ?? housed ?? unknownParents;
      const id = newId();
      const tier = tierAbove(parents);
      await manager.insert(Clutch, {
        id,
        keeperId: keeper.id,
        ...sentFields(request, plainFields),
        ...dateColumns('laid', laid),
        ...dateColumns('hatchedOn', request.hatchedOn ?? null),
        parentsFromPairing: housed !== null && isSameParents(parents, housed),
        tier,
      });
      noteAdded(manager, 'clutch', id);
      await writeLosses(manager, id, request.losses ?? []);
      await insertParents(manager, id, tier, parents);
      if (request.offspring) {
        // the journal tells of the clutch before it tells of its young
        await finishSteps(manager);
        const clutch = { id, version: 1, keeperId: keeper.id, tier };
        await raiseYoung(manager, keeper, clutch, request.offspring, '/offspring');
      }
      return presentPossible(manager, id, '/offspring/animals');
    });
  }

  /** Changes a clutch; parents stay as they are unless named. 404, 409 (code taken, loop, withdrawn), 412, 422. */
  async change(id: string, match: VersionMatch, request: ClutchChangeRequest): Promise<ClutchView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const clutch = await lockStanding(manager, clutchKind, id, match);
      await requireStanding(manager, 'pairing', request.pairingId, '/pairingId');
      const named = await requestedParents(manager, request, () => readSides(manager, id));
      const housed = await housedAt(manager, { ...clutch, ...sentFields(request, ['pairingId', 'laid']) });
      const parents = named ?? (request.parentsFromPairing ? housed : null);
      const laid = request.laid === undefined ? {} : dateColumns('laid', request.laid);
      const hatchedOn = request.hatchedOn === undefined ? {} : dateColumns('hatchedOn', request.hatchedOn);
      const origin = originOf(request.parentsFromPairing, parents, housed);
      const fields = { ...sentFields(request, plainFields), ...laid, ...hatchedOn, ...origin };
      await writeChange(manager, clutchKind, clutch, fields);
      if (request.losses) await replaceLosses(manager, id, request.losses);
      if (parents) await writeParents(manager, id, parents);
      return presentPossible(manager, id, '/laid');
    });
  }
}

/** A clutch as it was just written; 422 where its dates, or those of its young, cannot be. */
async function presentPossible(manager: EntityManager, id: string, young: string): Promise<ClutchView> {
  const clutch = await findPossibleClutch(manager, id, { parents: '/laid', young });
  return present(clutch, () => new NotFoundProblem(say`clutch`, id));
}

async function housedAt(manager: EntityManager, clutch: Pick<Clutch, 'pairingId' | 'laid'>): Promise<Parents | null> {
  return clutch.pairingId === null ? null : housedParents(manager, clutch.pairingId, clutch.laid);
}

/**
 * Whether the parents count as taken from the housing: as the request says, else by comparing. 422 where the clutch has no pairing
 * that could tell them, or where the named parents carry odds or reasons of their own.
 */
function originOf(
  said: boolean | undefined,
  parents: Parents | null,
  housed: Parents | null,
): { parentsFromPairing?: boolean } {
  const refuse = (detail: string): never => {
    throw new InvalidProblem(detail, [{ pointer: '/parentsFromPairing', detail }]);
  };
  if (said && !housed) refuse(say`This clutch was not laid in a pairing that could tell its parents. Name them.`);
  if (said && parents && !isAtEqualOdds(parents))
    refuse(say`Parents with odds or reasons of their own do not come from the housing. Leave out one of the two.`);
  if (said !== undefined) return { parentsFromPairing: said };
  return parents ? { parentsFromPairing: housed !== null && isSameParents(parents, housed) } : {};
}

async function replaceLosses(manager: EntityManager, clutchId: string, losses: readonly LossRequest[]): Promise<void> {
  await manager.delete(ClutchLoss, { clutchId });
  await writeLosses(manager, clutchId, losses);
}

async function writeLosses(manager: EntityManager, clutchId: string, losses: readonly LossRequest[]): Promise<void> {
  const twice = losses.findIndex((loss, index) => losses.findIndex((other) => other.cause === loss.cause) !== index);
  if (twice !== -1) {
    const detail = say`This cause stands here twice. Add the numbers up.`;
    throw new InvalidProblem(detail, [{ pointer: `/losses/${twice}/cause`, detail }]);
  }
  if (losses.length > 0)
    await manager.insert(
      ClutchLoss,
      losses.map(({ cause, count }) => ({ clutchId, cause, count })),
    );
}
