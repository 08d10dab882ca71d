import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import { requireStanding } from '../standing.queries.ts';
import { refuseImpossibleIndividual } from '../warnings/impossible.queries.ts';
import type { IndividualChangeRequest, NewIndividualRequest } from './individual.dto.ts';
import { Individual } from './individual.entity.ts';
import { findIndividual } from './individual.queries.ts';
import type { IndividualView } from './individual.view.ts';
import { insertIndividuals, originOf, tierOf } from './individual-origin.ts';
import { say } from '../../platform/say.ts';

export const individualKind: Kind<Individual, IndividualView> = {
  word: 'animal',
  entity: Individual,
  find: findIndividual,
};

/** Fields whose change is a change of the lineage. */
const lineageFields = ['speciesId', 'lineId', 'sex', 'sourceId', 'clutchId', 'status', 'hatched', 'died'] as const;

/** Animals. */
@Injectable()
export class IndividualsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One animal, whole; 404 where there is none. */
  async get(id: string): Promise<IndividualView> {
    return present(await findIndividual(this.dataSource.manager, id), () => new NotFoundProblem(say`animal`, id));
  }

  /** Adds an animal of the acting keeper; 409 where the code is taken, 422 where it names what is not there or cannot be. */
  async add(keeper: Acting, request: NewIndividualRequest): Promise<IndividualView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await requireOrigins(manager, request);
      const id = newId();
      const clutchTier = request.clutchId ? await tierOf(manager, request.clutchId) : null;
      await insertIndividuals(manager, keeper.id, [{ id, ...request, clutchTier }]);
      noteAdded(manager, 'individual', id);
      await refuseImpossibleIndividual(manager, id);
      return present(await findIndividual(manager, id), () => new NotFoundProblem(say`animal`, id));
    });
  }

  /** Changes an animal. 404, 409 (code taken, loop, withdrawn), 412, 422. */
  async change(id: string, match: VersionMatch, request: IndividualChangeRequest): Promise<IndividualView> {
    return inTransaction(this.dataSource, async (manager) => {
      if (lineageFields.some((field) => request[field] !== undefined)) await lockPedigree(manager);
      const individual = await lockStanding(manager, individualKind, id, match);
      await requireOrigins(manager, request);
      const isDead = request.died !== undefined && request.died !== null && request.status === undefined;
      await writeChange(manager, individualKind, individual, {
        ...sentFields(request, [
          'code',
          'speciesId',
          'lineId',
          'sex',
          'sexBasis',
          'sourceId',
          'status',
          'notes',
          'visibility',
        ]),
        ...dateFields(request),
        ...(request.clutchId === undefined ? {} : await originOf(manager, individual, request.clutchId)),
        ...(isDead ? { status: 'died' as const } : {}),
      });
      await refuseImpossibleIndividual(manager, id);
      return present(await findIndividual(manager, id), () => new NotFoundProblem(say`animal`, id));
    });
  }
}

function dateFields(request: IndividualChangeRequest): Record<string, string | null> {
  const columns: Record<string, string | null> = {};
  for (const field of ['sexedOn', 'hatched', 'outOfWater', 'died'] as const)
    if (request[field] !== undefined) Object.assign(columns, dateColumns(field, request[field]));
  return columns;
}

async function requireOrigins(manager: EntityManager, request: IndividualChangeRequest): Promise<void> {
  await requireStanding(manager, 'species', request.speciesId, '/speciesId');
  await requireStanding(manager, 'line', request.lineId, '/lineId');
  await requireStanding(manager, 'source', request.sourceId, '/sourceId');
  await requireStanding(manager, 'clutch', request.clutchId, '/clutchId');
}
