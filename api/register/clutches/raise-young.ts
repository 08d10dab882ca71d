import type { EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { insertIndividuals } from '../individuals/individual-origin.ts';
import { noteRaised, type RaisedFrom } from '../kept/note-raised.ts';
import { requireStanding } from '../standing.queries.ts';
import type { Clutch } from './clutch.entity.ts';
import type { OffspringRequest, YoungRequest } from './clutch.dto.ts';
import { readHeritage } from './heritage.queries.ts';
import { say } from '../../platform/say.ts';

/**
 * Writes the young of a clutch as animals of the acting keeper, and the entry that tells of them. They inherit the species of their
 * parents, and the line where all possible parents share one. Callers hold the lock of the lineage and that of the clutch, and check
 * the dates afterwards.
 *
 * @param at pointer to where the request speaks of the young
 * @returns the ids of the young, in the order asked for
 * @throws InvalidProblem for neither a count nor animals, or both; what is not there; an unclear species
 */
export async function raiseYoung(
  manager: EntityManager,
  keeper: Acting,
  clutch: RaisedFrom & Pick<Clutch, 'tier'>,
  request: OffspringRequest,
  at: string,
): Promise<string[]> {
  const young = requestedYoung(request, at);
  await requireStanding(manager, 'species', request.speciesId, `${at}/speciesId`);
  for (const [index, { lineId }] of young.entries())
    await requireStanding(manager, 'line', lineId, `${at}/animals/${index}/lineId`);
  const heritage = await readHeritage(manager, clutch.id);
  const speciesId = request.speciesId ?? heritage.speciesId ?? refuseSpecies(at);
  const lineId = speciesId === heritage.speciesId ? heritage.lineId : null;
  const inherited = { speciesId, clutchId: clutch.id, clutchTier: clutch.tier };
  const animals = young.map((animal) => ({ lineId, ...animal, ...inherited, id: newId() }));
  const ids = animals.map(({ id }) => id);
  await insertIndividuals(manager, keeper.id, animals);
  await noteRaised(manager, clutch, ids);
  return ids;
}

function requestedYoung({ count, animals }: OffspringRequest, at: string): YoungRequest[] {
  if ((count === undefined) === (animals === undefined)) {
    const detail = say`Say how many young there are in \`count\`, or list them in \`animals\`: one of the two.`;
    throw new InvalidProblem(detail, [{ pointer: `${at}/count`, detail }]);
  }
  return animals ?? Array.from({ length: count ?? 0 }, () => ({}));
}

function refuseSpecies(at: string): never {
  const detail = say`The parents do not tell the species: none is known, or they are of different species. Name it.`;
  throw new InvalidProblem(detail, [{ pointer: `${at}/speciesId`, detail }]);
}
