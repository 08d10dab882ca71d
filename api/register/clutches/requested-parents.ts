import type { EntityManager } from 'typeorm';
import { InvalidProblem } from '../../platform/problem.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { resolveIndividuals, type Named } from '../individuals/resolve-individuals.queries.ts';
import type { CandidateRequest, ClutchChangeRequest } from './clutch.dto.ts';
import { parentErrors, type Candidate, type ParentAnimal, type Parents } from './parents.ts';
import { say } from '../../platform/say.ts';

/** The two sides as they stand, for a request that names only one. */
type Sides = () => Promise<Record<'sire' | 'dam', readonly Candidate[]>>;

/**
 * The parents that a request names, or null where it names none. A side that is left out stays as `standing` gives it. 422 that
 * names each animal that is not there, stands twice, or is of the wrong sex, and where both lists and pairs are given.
 */
export async function requestedParents(
  manager: EntityManager,
  request: ClutchChangeRequest,
  standing: Sides,
): Promise<Parents | null> {
  const { sires, dams, pairs } = request;
  if (!sires && !dams && !pairs) return null;
  if (pairs && (sires?.length || dams?.length)) {
    const detail = say`Give sires and dams, or pairs, not both.`;
    throw new InvalidProblem(detail, [{ pointer: '/pairs', detail }]);
  }
  const animals = await findAnimals(manager, request);
  const parents = pairs ? pairsOf(pairs, animals) : await listsOf(request, animals, standing);
  const errors = parentErrors(parents);
  if (errors.length > 0) throw new InvalidProblem(say`Some parents cannot be taken; each is named below.`, errors);
  return parents;
}

type Animals = ReadonlyMap<string, ParentAnimal>;

async function findAnimals(manager: EntityManager, request: ClutchChangeRequest): Promise<Animals> {
  const named: Named[] = [
    ...(['sires', 'dams'] as const).flatMap((side) =>
      (request[side] ?? []).flatMap(({ individualId }, index) =>
        individualId === null ? [] : [{ text: individualId, pointer: `/${side}/${index}/individualId` }],
      ),
    ),
    ...(request.pairs ?? []).flatMap((pair, index) => [
      { text: pair.a, pointer: `/pairs/${index}/a` },
      { text: pair.b, pointer: `/pairs/${index}/b` },
    ]),
  ];
  const found = await resolveIndividuals(manager, named);
  return new Map(
    found.map((animal, index) => [
      named[index]?.pointer ?? '',
      { ...animal, number: formatRegistryNumber(animal.number) },
    ]),
  );
}

function pairsOf(pairs: NonNullable<ClutchChangeRequest['pairs']>, animals: Animals): Parents {
  return {
    mode: 'pairs',
    pairs: pairs.flatMap(({ weight = 1, reason = null }, index) => {
      const a = animals.get(`/pairs/${index}/a`);
      const b = animals.get(`/pairs/${index}/b`);
      return a && b ? [{ a, b, weight, reason }] : [];
    }),
  };
}

async function listsOf(request: ClutchChangeRequest, animals: Animals, standing: Sides): Promise<Parents> {
  const current = request.sires && request.dams ? { sire: [], dam: [] } : await standing();
  const side = (name: 'sires' | 'dams', requests: readonly CandidateRequest[]): Candidate[] =>
    requests.map(({ weight = 1, reason = null }, index) => ({
      animal: animals.get(`/${name}/${index}/individualId`) ?? null,
      weight,
      reason,
    }));
  return {
    mode: 'lists',
    sires: request.sires ? side('sires', request.sires) : current.sire,
    dams: request.dams ? side('dams', request.dams) : current.dam,
  };
}
