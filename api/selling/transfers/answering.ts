import type { EntityManager } from 'typeorm';
import { dateColumns } from '../../platform/dates.ts';
import { ConflictProblem, InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import { lockAnimalsOf, refuseUnlessGivable, type PassingAnimal } from './locked-animals.ts';
import { writeTransfer } from './locked-transfer.ts';
import { keepGivenCodes, readKeeper } from './offering.queries.ts';
import { refuseOffered } from './offering.ts';
import { pastDate, plannedUntilToday } from './passing-dates.ts';
import { endStays, giveTo, takenCodes } from './passing.queries.ts';
import type { AcceptanceRequest } from './transfer.dto.ts';
import { noteTransfer, type TransferTold } from './transfer-entries.ts';
import type { Transfer } from './transfer.entity.ts';
import { say } from '../../platform/say.ts';

/** The entry of the journal that a change undoes. */
export type Undoing = Pick<TransferTold, 'reversesId'>;

/** Codes by the ids of animals, and where the request named each. */
interface Codes {
  readonly codes: ReadonlyMap<string, string | null>;
  readonly pointers: ReadonlyMap<string, string>;
}

/**
 * Hands the animals of an open offer, which is locked, over to its receiver: they become the receiver's, under the code chosen, and their
 * stays in pairings of others end. 409 where one cannot change hands any more or its code is taken, 422.
 */
export async function accept(
  manager: EntityManager,
  transfer: Transfer,
  request: AcceptanceRequest,
  { reversesId }: Undoing = {},
): Promise<void> {
  const toId = receiverOf(transfer);
  const receiver = await readKeeper(manager, toId);
  if (receiver?.hasLeft)
    throw new ConflictProblem(say`${receiver.name} has left the club meanwhile. Let the giver withdraw this offer.`);
  const animals = await lockAnimalsOf(manager, transfer.id);
  refuseUnlessGivable(animals, transfer.keeperId);
  const { codes, pointers } = await chosenCodes(manager, animals, request);
  await refuseTakenCodes(manager, toId, codes, pointers);
  const date = pastDate(request.date ?? plannedUntilToday(transfer.date));
  const note = await noteTransfer(manager, transfer.id);
  await keepGivenCodes(manager, transfer.id);
  const endedStays = await endStays(manager, [...codes.keys()], toId, date);
  await giveTo(manager, toId, codes);
  const patch = { state: 'accepted' as const, reason: null, ...dateColumns('date', date.text), endedStays };
  await writeTransfer(manager, transfer, patch);
  await note({ action: 'accepted', ended: endedStays, reversesId });
}

/** The keeper to whom an offer is made. */
export function receiverOf({ toId }: Transfer): string {
  if (toId === null) throw new Error('only an offer has a receiver');
  return toId;
}

/** An animal that is not named keeps the code that it has. 422 for one that is no animal of the transfer. */
async function chosenCodes(
  manager: EntityManager,
  animals: readonly PassingAnimal[],
  { codes: chosen = [] }: AcceptanceRequest,
): Promise<Codes> {
  const named = chosen.map(({ individualId }, index) => ({
    text: individualId,
    pointer: `/codes/${index}/individualId`,
  }));
  const found = await resolveIndividuals(manager, named);
  const codes = new Map(animals.map(({ id, code }) => [id, code]));
  const pointers = new Map<string, string>();
  const errors: ProblemError[] = [];
  for (const [index, { id }] of found.entries()) {
    const pointer = `/codes/${index}/individualId`;
    if (!codes.has(id)) errors.push({ pointer, detail: say`This animal is not among those that are offered.` });
    else if (pointers.has(id)) errors.push({ pointer, detail: say`This animal stands twice. Give its code once.` });
    codes.set(id, chosen[index]?.code ?? null);
    pointers.set(id, `/codes/${index}/code`);
  }
  if (errors.length > 0) throw new InvalidProblem(say`Some codes cannot be given; each is named below.`, errors);
  return { codes, pointers };
}

/** 409 that names each code that the receiver has already, or that is given twice, and what to do. */
async function refuseTakenCodes(
  manager: EntityManager,
  toId: string,
  codes: ReadonlyMap<string, string | null>,
  pointers: ReadonlyMap<string, string>,
): Promise<void> {
  const taken = new Set(await takenCodes(manager, toId, codes));
  const errors: ProblemError[] = [];
  for (const [id, code] of codes) {
    if (code === null) continue;
    if (taken.has(code.toLowerCase()))
      errors.push({
        pointer: pointers.get(id) ?? '/codes',
        detail: say`The code ${code} is in use among the animals of the receiver. Choose another for this one, or none.`,
      });
    taken.add(code.toLowerCase());
  }
  const [first] = errors;
  if (first) throw new ConflictProblem(first.detail, {}, errors);
}

/** Declines an open offer, which is locked. */
export async function decline(manager: EntityManager, transfer: Transfer, reason: string | null): Promise<void> {
  await lockAnimalsOf(manager, transfer.id);
  const note = await noteTransfer(manager, transfer.id);
  await writeTransfer(manager, transfer, { state: 'declined', reason });
  await note({ action: 'declined' });
}

/** Takes an open offer, which is locked, back. */
export async function withdrawOffer(
  manager: EntityManager,
  transfer: Transfer,
  reason: string | null,
  { reversesId }: Undoing = {},
): Promise<void> {
  await lockAnimalsOf(manager, transfer.id);
  const note = await noteTransfer(manager, transfer.id);
  await writeTransfer(manager, transfer, { state: 'withdrawn', reason });
  await note({ action: 'offer-withdrawn', reversesId });
}

/** Makes a declined or withdrawn offer, which is locked, stand again. 409 where an animal cannot change hands any more or is on offer. */
export async function offerAgain(manager: EntityManager, transfer: Transfer, { reversesId }: Undoing): Promise<void> {
  const animals = await lockAnimalsOf(manager, transfer.id);
  refuseUnlessGivable(animals, transfer.keeperId);
  await refuseOffered(manager, animals);
  const note = await noteTransfer(manager, transfer.id);
  await writeTransfer(manager, transfer, { state: 'offered', reason: null });
  await note({ action: 'offered', reversesId });
}
