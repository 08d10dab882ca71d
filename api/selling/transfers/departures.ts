import type { EntityManager } from 'typeorm';
import { storedDate } from '../../platform/dates.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import type { Undoing } from './answering.ts';
import { readReturned, setReturned } from './departures.queries.ts';
import { lockAnimalsOf, refuse, refuseUnlessGivable, type Obstacle, type PassingAnimal } from './locked-animals.ts';
import { writeTransfer } from './locked-transfer.ts';
import { refuseOffered } from './offering.ts';
import { pastDate } from './passing-dates.ts';
import { endStays, reopenStays, setStatus } from './passing.queries.ts';
import { changedStays } from './taking-back.ts';
import type { ReturnRequest } from './transfer.dto.ts';
import { noteTransfer } from './transfer-entries.ts';
import type { Transfer } from './transfer.entity.ts';
import { say } from '../../platform/say.ts';

/**
 * Puts back that animals left the club, of a departure that is locked: they live with their keeper, and their stays go on. What was corrected
 * meanwhile stays. 409 names an animal that came back, died, was withdrawn or is with somebody else, and a stay that was changed.
 */
export async function withdrawDeparture(
  manager: EntityManager,
  transfer: Transfer,
  reason: string | null,
  { reversesId }: Undoing = {},
): Promise<void> {
  const animals = await lockAnimalsOf(manager, transfer.id);
  const returned = await readReturned(manager, transfer.id);
  refuse(
    [
      ...animals.flatMap((animal) => whyNotBack(animal, transfer.keeperId, returned.has(animal.id))),
      ...(await changedStays(manager, transfer)),
    ],
    say`This cannot be put back as it was.`,
    say`Undo that first, or correct the animals one by one.`,
  );
  const note = await noteTransfer(manager, transfer.id);
  const gone = animals.filter(({ status }) => status === 'gone').map(({ id }) => id);
  await setStatus(manager, gone, 'alive');
  await reopenStays(manager, transfer.endedStays);
  await writeTransfer(manager, transfer, { state: 'withdrawn', reason, endedStays: [] });
  await note({ action: 'departure-withdrawn', reopened: transfer.endedStays, reversesId });
}

/** An animal that somebody set alive again by hand is where it should be. */
function whyNotBack(
  { id, number, isMerged, isWithdrawn, status, keeperId }: PassingAnimal,
  giverId: string,
  isBack: boolean,
): Obstacle[] {
  const detail = isMerged
    ? say`Its record was merged into another of the same animal.`
    : isWithdrawn
      ? say`Its record was withdrawn.`
      : keeperId !== giverId
        ? say`Another keeper keeps it now.`
        : isBack
          ? say`It came back later, so it had left.`
          : status === 'gone' || status === 'alive'
            ? null
            : say`It is recorded as ${status} meanwhile.`;
  return detail === null ? [] : [{ individualId: id, number, detail }];
}

/** Notes once more that animals left, of a departure that was put back and is locked. 409 where one cannot any more. */
export async function departAgain(manager: EntityManager, transfer: Transfer, { reversesId }: Undoing): Promise<void> {
  const animals = await lockAnimalsOf(manager, transfer.id);
  refuseUnlessGivable(animals, transfer.keeperId);
  await refuseOffered(manager, animals);
  const ids = animals.map(({ id }) => id);
  const note = await noteTransfer(manager, transfer.id);
  const endedStays = await endStays(manager, ids, null, storedDate(transfer.date));
  await setStatus(manager, ids, 'gone');
  await writeTransfer(manager, transfer, { state: 'accepted', reason: null, endedStays });
  await note({ action: 'departed', ended: endedStays, reversesId });
}

/** Notes that animals of a departure, which is locked, came back. 409 where one is not gone any more, 422 for one that is not of it. */
export async function takeReturn(
  manager: EntityManager,
  transfer: Transfer,
  request: ReturnRequest,
  { reversesId }: Undoing = {},
): Promise<void> {
  const animals = await lockAnimalsOf(manager, transfer.id);
  const returned = await readReturned(manager, transfer.id);
  const ids =
    request.animals === undefined
      ? animals.flatMap(({ id }) => (returned.has(id) ? [] : [id]))
      : await namedAmong(manager, animals, request.animals);
  refuse(
    animals.filter(({ id }) => ids.includes(id)).flatMap((animal) => whyNotReturned(animal, returned.has(animal.id))),
    say`Not all of these animals can come back.`,
    say`Name the others alone.`,
  );
  const date = pastDate(request.date);
  if (date.latest !== null && transfer.dateEarliest !== null && date.latest < transfer.dateEarliest) {
    const detail = say`They left on ${transfer.date ?? ''}; this date lies before it. Give a later one.`;
    throw new InvalidProblem(detail, [{ pointer: '/date', detail }]);
  }
  const note = await noteTransfer(manager, transfer.id);
  await setReturned(manager, transfer.id, ids, date);
  await setStatus(manager, ids, 'alive');
  await writeTransfer(manager, transfer, {});
  await note({ action: 'came-back', reversesId });
}

async function namedAmong(
  manager: EntityManager,
  animals: readonly PassingAnimal[],
  texts: readonly string[],
): Promise<string[]> {
  const named = texts.map((text, index) => ({ text, pointer: `/animals/${index}` }));
  const ids = (await resolveIndividuals(manager, named)).map(({ id }) => id);
  const errors = ids.flatMap((id, index): ProblemError[] =>
    animals.some((animal) => animal.id === id)
      ? []
      : [{ pointer: `/animals/${index}`, detail: say`This animal is not among those that left.` }],
  );
  if (ids.length === 0) errors.push({ pointer: '/animals', detail: say`Name at least one animal.` });
  if (errors.length > 0)
    throw new InvalidProblem(say`Some animals did not leave by this; each is named below.`, errors);
  return [...new Set(ids)];
}

function whyNotReturned({ id, number, isWithdrawn, status }: PassingAnimal, isBack: boolean): Obstacle[] {
  const detail = isBack
    ? say`It came back already.`
    : isWithdrawn
      ? say`Its record was withdrawn.`
      : status === 'gone'
        ? null
        : say`It is recorded as ${status}, not as gone.`;
  return detail === null ? [] : [{ individualId: id, number, detail }];
}

/** Takes back that animals came back, of a departure that is locked: they are gone. 409 where one is with somebody else or not alive. */
export async function takeReturnBack(
  manager: EntityManager,
  transfer: Transfer,
  ids: readonly string[],
  { reversesId }: Undoing,
): Promise<void> {
  const animals = (await lockAnimalsOf(manager, transfer.id)).filter(({ id }) => ids.includes(id));
  refuseUnlessGivable(animals, transfer.keeperId);
  await refuseOffered(manager, animals);
  const note = await noteTransfer(manager, transfer.id);
  await setReturned(manager, transfer.id, ids, storedDate(null));
  await setStatus(manager, ids, 'gone');
  await writeTransfer(manager, transfer, {});
  await note({ action: 'return-undone', reversesId });
}
