import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding } from '../change.ts';
import { insertIndividuals } from '../individuals/individual-origin.ts';
import { readIndividualItems } from '../individuals/individual.queries.ts';
import { noteRaised } from '../kept/note-raised.ts';
import { requireStanding } from '../standing.queries.ts';
import { refuseImpossibleClutch } from '../warnings/impossible.queries.ts';
import type { OffspringRequest, YoungRequest } from './clutch.dto.ts';
import type { OffspringView } from './clutch.view.ts';
import { clutchKind } from './clutches.service.ts';
import { readHeritage } from './heritage.queries.ts';

/** Raising young from a clutch. */
@Injectable()
export class OffspringService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * Adds the young of a clutch as animals of the acting keeper. They inherit the species of their parents, and the line where
   * all possible parents share one. 403 (another keeper's clutch), 404, 409 (code taken, clutch withdrawn), 422 (neither a count nor animals, species unclear).
   */
  async raise(keeper: Acting, clutchId: string, request: OffspringRequest): Promise<OffspringView> {
    const young = requestedYoung(request);
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await lockStanding(manager, clutchKind, clutchId, 'any');
      await requireStanding(manager, 'species', request.speciesId, '/speciesId');
      for (const [index, { lineId }] of young.entries())
        await requireStanding(manager, 'line', lineId, `/animals/${index}/lineId`);
      const heritage = await readHeritage(manager, clutchId);
      const speciesId = request.speciesId ?? heritage.speciesId ?? refuseSpecies();
      const lineId = speciesId === heritage.speciesId ? heritage.lineId : null;
      const animals = young.map((animal) => ({ lineId, ...animal, id: newId(), speciesId, clutchId }));
      await insertIndividuals(manager, keeper.id, animals);
      await refuseImpossibleClutch(manager, clutchId, '/animals');
      await noteRaised(
        manager,
        clutchId,
        animals.map((animal) => animal.id),
      );
      return {
        items: await readIndividualItems(
          manager,
          animals.map((animal) => animal.id),
        ),
      };
    });
  }
}

function requestedYoung({ count, animals }: OffspringRequest): YoungRequest[] {
  if ((count === undefined) === (animals === undefined)) {
    const detail = 'Say how many young there are in `count`, or list them in `animals`: one of the two.';
    throw new InvalidProblem(detail, [{ pointer: '/count', detail }]);
  }
  return animals ?? Array.from({ length: count ?? 0 }, () => ({}));
}

function refuseSpecies(): never {
  const detail = 'The parents do not tell the species: none is known, or they are of different species. Name it.';
  throw new InvalidProblem(detail, [{ pointer: '/speciesId', detail }]);
}
