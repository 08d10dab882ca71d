import type { EntityManager } from 'typeorm';
import { ConflictProblem } from '../../platform/problem.ts';
import { lockAnimalsOf, refuse, type Obstacle, type PassingAnimal } from './locked-animals.ts';
import { receiverOf, type Undoing } from './answering.ts';
import { writeTransfer } from './locked-transfer.ts';
import { giveTo, reopenStays, staysChangedSince, takenCodes } from './passing.queries.ts';
import { givenCodes, standingOn } from './taking-back.queries.ts';
import { noteTransfer } from './transfer-entries.ts';
import type { Transfer } from './transfer.entity.ts';
import { say } from '../../platform/say.ts';

/**
 * Undoes the acceptance of an offer, which is locked: the animals are the giver's again, under the giver's codes, their stays go on, and the
 * offer stands. 409 names what stands against it: an animal that passed on, died or was withdrawn, a stay or a clutch at the receiver's, a
 * stay that was changed, a code in use.
 */
export async function takeAcceptanceBack(
  manager: EntityManager,
  transfer: Transfer,
  { reversesId }: Undoing,
): Promise<void> {
  const toId = receiverOf(transfer);
  const animals = await lockAnimalsOf(manager, transfer.id);
  refuse(
    [
      ...animals.flatMap((animal) => changedSince(animal, toId)),
      ...(await standingOn(manager, transfer.id)),
      ...(await changedStays(manager, transfer)),
    ],
    say`This cannot be put back as it was.`,
    say`Undo that first; or offer the animals back.`,
  );
  const codes = await givenCodes(manager, transfer.id);
  await refuseTakenCodes(manager, transfer.keeperId, animals, codes);
  const note = await noteTransfer(manager, transfer.id);
  await giveTo(manager, transfer.keeperId, codes);
  await reopenStays(manager, transfer.endedStays);
  await writeTransfer(manager, transfer, { state: 'offered', reason: null, endedStays: [] });
  await note({ action: 'acceptance-undone', reopened: transfer.endedStays, reversesId });
}

function changedSince(animal: PassingAnimal, keeperId: string): Obstacle[] {
  const { id, number, isMerged, isWithdrawn, status } = animal;
  const detail = isMerged
    ? say`Its record was merged into another of the same animal.`
    : isWithdrawn
      ? say`Its record was withdrawn.`
      : animal.keeperId !== keeperId
        ? say`Another keeper keeps it now.`
        : status === 'alive'
          ? null
          : say`It is recorded as ${status} meanwhile.`;
  return detail === null ? [] : [{ individualId: id, number, detail }];
}

/** Stays that the transfer ended and that are no longer as it left them. */
export async function changedStays(manager: EntityManager, { endedStays }: Transfer): Promise<Obstacle[]> {
  return (await staysChangedSince(manager, endedStays)).map(({ individualId, number, pairing }) => ({
    individualId,
    number,
    detail: say`Its stay in ${pairing} was changed since.`,
  }));
}

async function refuseTakenCodes(
  manager: EntityManager,
  keeperId: string,
  animals: readonly PassingAnimal[],
  codes: ReadonlyMap<string, string | null>,
): Promise<void> {
  const taken = await takenCodes(manager, keeperId, codes);
  const clash = animals.find(({ id }) => taken.has(codes.get(id)?.toLowerCase() ?? ''));
  if (clash)
    throw new ConflictProblem(
      say`The giver has given the code ${codes.get(clash.id) ?? ''} of ${clash.number} to another animal meanwhile. That one needs another code first.`,
    );
}
