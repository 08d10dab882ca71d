import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { isOwn } from '../../people/visibility.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import { holdStanding, requireStanding } from '../standing.queries.ts';
import { observationSubjects, type NewObservationRequest, type ObservationChangeRequest } from './observation.dto.ts';
import { Observation } from './observation.entity.ts';
import { findObservation } from './observation.queries.ts';
import type { ObservationView } from './observation.view.ts';
import { say } from '../../platform/say.ts';

export const observationKind: Kind<Observation, ObservationView> = {
  word: 'observation',
  entity: Observation,
  find: findObservation,
};

/** Dated remarks. */
@Injectable()
export class ObservationsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One remark; 404 where there is none. */
  async get(id: string): Promise<ObservationView> {
    return present(await findObservation(this.dataSource.manager, id), () => new NotFoundProblem(say`observation`, id));
  }

  /** Adds a remark of the acting keeper; 422 unless it is about one record that stands and says something. */
  async add(keeper: Acting, request: NewObservationRequest): Promise<ObservationView> {
    return inTransaction(this.dataSource, async (manager) => {
      await requireSubject(manager, request);
      const id = newId();
      await manager.insert(Observation, {
        id,
        keeperId: keeper.id,
        ...sentFields(request, [...observationSubjects, 'kind', 'text', 'svlMm', 'massG', 'visibility']),
        ...dateColumns('observedOn', request.observedOn),
      });
      noteAdded(manager, 'observation', id);
      return present(await findObservation(manager, id), () => new NotFoundProblem(say`observation`, id));
    });
  }

  /** Changes a remark; 404, 409 where it was withdrawn, 412, 422. */
  async change(id: string, match: VersionMatch, request: ObservationChangeRequest): Promise<ObservationView> {
    return inTransaction(this.dataSource, async (manager) => {
      const observation = await lockStanding(manager, observationKind, id, match);
      if (request.visibility === 'private' && !isOwn(observation)) refusePrivate();
      const observedOn = request.observedOn === undefined ? {} : dateColumns('observedOn', request.observedOn);
      await writeChange(manager, observationKind, observation, {
        ...sentFields(request, ['kind', 'text', 'svlMm', 'massG', 'visibility']),
        ...observedOn,
      });
      return present(await findObservation(manager, id), () => new NotFoundProblem(say`observation`, id));
    });
  }
}

async function requireSubject(manager: EntityManager, request: NewObservationRequest): Promise<void> {
  const named = observationSubjects.filter((subject) => request[subject] !== undefined);
  if (named.length !== 1) {
    const detail = say`Say what it is about: exactly one of individualId, pairingId, clutchId and sourceId.`;
    throw new InvalidProblem(detail, [{ pointer: '/individualId', detail }]);
  }
  for (const table of ['individual', 'pairing', 'clutch', 'source'] as const) {
    const id = request[`${table}Id`];
    await requireStanding(manager, table, id, `/${table}Id`);
    if (id) await holdStanding(manager, table, [id.toLowerCase()], () => `/${table}Id`);
  }
}

/** A private remark is seen by its keeper alone: whoever else makes it so could not bring it back. */
function refusePrivate(): never {
  const detail = say`Only the keeper who made a remark can make it private. Choose club, or withdraw it with a reason.`;
  throw new InvalidProblem(detail, [{ pointer: '/visibility', detail }]);
}
