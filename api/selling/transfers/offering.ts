import type { EntityManager } from 'typeorm';
import { authorize } from '../../people/permissions.ts';
import { acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import { newId } from '../../platform/ids.ts';
import { ConflictProblem, InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import { requireStanding } from '../../register/standing.queries.ts';
import { lockAnimals, whyNotToGive, type PassingAnimal } from './locked-animals.ts';
import { readKeeper, readYoungToGive, insertAnimals } from './offering.queries.ts';
import { pastDate } from './passing-dates.ts';
import { endStays, onOffer, setStatus } from './passing.queries.ts';
import { noteNewTransfer } from './transfer-entries.ts';
import { TRANSFERRED_MOST, type NewTransferRequest } from './transfer.dto.ts';
import { Transfer } from './transfer.entity.ts';
import { say } from '../../platform/say.ts';

/**
 * Offers animals, or notes that they left the club, in the transaction of `manager`, and gives the id of the transfer. 403 where one is
 * another keeper's, 409 where one is on offer already, 422 where one cannot pass.
 */
export async function addTransfer(manager: EntityManager, request: NewTransferRequest): Promise<string> {
  requireOneOf(
    request,
    'to',
    'leftTo',
    say`Name either the keeper who gets the animals, or say that they left the club.`,
  );
  requireOneOf(request, 'animals', 'clutch', say`Name either animals, or a clutch whose young pass.`);
  if (request.to === undefined) await lockPedigree(manager);
  const { ids, pointerOf } = await findAnimals(manager, request);
  const animals = await lockAnimals(manager, ids);
  const keeperId = giverOf(animals, pointerOf(0));
  await requireGivable(manager, animals, keeperId, (id) => pointerOf(ids.indexOf(id)));
  if (request.to === undefined) return addDeparture(manager, keeperId, request, ids);
  await requireReceiver(manager, request.to, keeperId);
  return addOffer(manager, keeperId, request, ids);
}

async function addOffer(
  manager: EntityManager,
  keeperId: string,
  { to, date = null, note = null }: NewTransferRequest,
  ids: readonly string[],
): Promise<string> {
  const id = newId();
  await manager.insert(Transfer, {
    id,
    keeperId,
    toId: to ?? null,
    ...dateColumns('date', date),
    note,
    state: 'offered',
  });
  await insertAnimals(manager, id, 'offered', ids);
  await noteNewTransfer(manager, id, { action: 'offered', before: null });
  return id;
}

async function addDeparture(
  manager: EntityManager,
  keeperId: string,
  { leftTo = null, date, note = null }: NewTransferRequest,
  ids: readonly string[],
): Promise<string> {
  const [id, left] = [newId(), pastDate(date)];
  const endedStays = await endStays(manager, ids, null, left);
  await manager.insert(Transfer, {
    id,
    keeperId,
    leftTo,
    ...dateColumns('date', left.text),
    note,
    state: 'accepted',
    settledById: acting().id,
    settledAt: new Date(),
    endedStays,
  });
  await insertAnimals(manager, id, 'accepted', ids);
  await setStatus(manager, ids, 'gone');
  await noteNewTransfer(manager, id, { action: 'departed', before: null, ended: endedStays });
  return id;
}

type Alternatives = 'to' | 'leftTo' | 'animals' | 'clutch';

function requireOneOf(request: NewTransferRequest, one: Alternatives, other: Alternatives, detail: string): void {
  if ((request[one] === undefined) !== (request[other] === undefined)) return;
  throw new InvalidProblem(detail, [{ pointer: `/${one}`, detail }]);
}

interface Found {
  readonly ids: readonly string[];
  readonly pointerOf: (index: number) => string;
}

/** The animals that a request names, each once. 422 where none is named, one is not there, or one stands twice. */
async function findAnimals(manager: EntityManager, { animals, clutch }: NewTransferRequest): Promise<Found> {
  if (clutch !== undefined) return findYoung(manager, clutch);
  const pointerOf = (index: number): string => `/animals/${index}`;
  const named = (animals ?? []).map((text, index) => ({ text, pointer: pointerOf(index) }));
  if (named.length === 0) {
    const detail = say`Name at least one animal.`;
    throw new InvalidProblem(detail, [{ pointer: '/animals', detail }]);
  }
  const ids = (await resolveIndividuals(manager, named)).map(({ id }) => id);
  const twice = ids.flatMap((id, index): ProblemError[] =>
    ids.indexOf(id) === index
      ? []
      : [{ pointer: pointerOf(index), detail: say`This animal stands twice. Name it once.` }],
  );
  if (twice.length > 0) throw new InvalidProblem(say`Some animals stand twice; each is named below.`, twice);
  return { ids, pointerOf };
}

/** Young of one keeper: of whoever acts, or, for a registrar who keeps none of them, of the one keeper who does. */
async function findYoung(manager: EntityManager, clutch: string): Promise<Found> {
  await requireStanding(manager, 'clutch', clutch, '/clutch');
  const young = await readYoungToGive(manager, clutch);
  const { id: actingId, roles } = acting();
  const own = young.filter(({ keeperId }) => keeperId === actingId);
  const keepers = new Set(young.map(({ keeperId }) => keeperId));
  const chosen = own.length === 0 && roles.includes('registrar') && keepers.size === 1 ? young : own;
  const refuse = (detail: string): never => {
    throw new InvalidProblem(detail, [{ pointer: '/clutch', detail }]);
  };
  if (chosen.length === 0)
    return refuse(
      say`You keep no living young of this clutch that are not on offer. Raise them first, or name animals.`,
    );
  if (chosen.length > TRANSFERRED_MOST)
    return refuse(say`These are more than ${TRANSFERRED_MOST} animals. Name those of one transfer, then the others.`);
  return { ids: chosen.map(({ id }) => id), pointerOf: () => '/clutch' };
}

/** The one keeper of all animals; 403 where they are another keeper's, 422 where they are of several. */
function giverOf(animals: readonly PassingAnimal[], pointer: string): string {
  for (const animal of animals) authorize('change', 'individual', animal);
  const [first] = animals;
  if (!first) throw new Error('animals that were resolved are there');
  if (animals.every(({ keeperId }) => keeperId === first.keeperId)) return first.keeperId;
  const detail = say`These animals belong to several keepers. Make one transfer for each of them.`;
  throw new InvalidProblem(detail, [{ pointer, detail }]);
}

async function requireGivable(
  manager: EntityManager,
  animals: readonly PassingAnimal[],
  keeperId: string,
  pointerOf: (id: string) => string,
): Promise<void> {
  const errors = animals.flatMap((animal): ProblemError[] => {
    const why = whyNotToGive(animal, keeperId);
    const detail = say`${animal.number}: ${why ?? ''} Leave it out, or correct its record first.`;
    return why === null ? [] : [{ pointer: pointerOf(animal.id), detail }];
  });
  if (errors.length > 0)
    throw new InvalidProblem(say`Only living animals change hands; each other is named below.`, errors);
  await refuseOffered(manager, animals, pointerOf);
}

/** 409 that names those that are on offer already. */
export async function refuseOffered(
  manager: EntityManager,
  animals: readonly PassingAnimal[],
  pointerOf: (id: string) => string = () => '/animals',
): Promise<void> {
  const offered = await onOffer(
    manager,
    animals.map(({ id }) => id),
  );
  const errors = animals
    .filter(({ id }) => offered.has(id))
    .map(({ id, number }) => ({
      pointer: pointerOf(id),
      detail: say`${number} is on offer already. Withdraw that offer first, or leave the animal out.`,
    }));
  const [first] = errors;
  if (first) throw new ConflictProblem(first.detail, {}, errors);
}

/** 422 where the receiver is no member any more, or gives the animals. */
export async function requireReceiver(manager: EntityManager, to: string, keeperId: string): Promise<void> {
  const receiver = await readKeeper(manager, to);
  const detail =
    receiver === null
      ? say`There is no keeper with this id.`
      : receiver.hasLeft
        ? say`${receiver.name} has left the club. Choose somebody else, or note that the animals left the club.`
        : to === keeperId
          ? say`The animals are with this keeper already. Choose somebody else.`
          : null;
  if (detail !== null) throw new InvalidProblem(detail, [{ pointer: '/to', detail }]);
}
