import type { EntityManager } from 'typeorm';
import { ChangedSince, type EntryToUndo, type JournalKind, type Undo } from '../../journal/journal-kinds.ts';
import { accept, offerAgain, withdrawOffer } from './answering.ts';
import { departAgain, takeReturn, takeReturnBack, withdrawDeparture } from './departures.ts';
import { lockTransfer } from './locked-transfer.ts';
import { takeAcceptanceBack } from './taking-back.ts';
import type { KeptPassing } from './transfer-entries.ts';
import type { Transfer } from './transfer.entity.ts';

type Work = (manager: EntityManager, transfer: Transfer, entry: EntryToUndo) => Promise<void>;

/** Locks the transfer of an entry as for the change itself, refuses where it was changed since, and does the opposite. */
const undoing =
  (side: 'giver' | 'receiver', work: Work): Undo =>
  async (manager, entry) => {
    const transfer = await lockTransfer(manager, entry.recordId, side);
    if (transfer.version !== entry.recordVersion) throw new ChangedSince(transfer.id, entry.recordVersion);
    await work(manager, transfer, entry);
  };

const reverses = ({ id }: EntryToUndo): { reversesId: string } => ({ reversesId: id });

const animalsIn = (form: EntryToUndo['before']): readonly KeptPassing[] =>
  (form?.['animals'] ?? []) as readonly KeptPassing[];

/** The animals whose return an entry tells of, or of whose return it tells that it was none. */
function movedIn({ before, after }: EntryToUndo): KeptPassing[] {
  const was = new Map(animalsIn(before).map(({ individualId, returned }) => [individualId, returned]));
  return animalsIn(after).filter(({ individualId, returned }) => was.get(individualId) !== returned);
}

/** Takes animals once more whose acceptance was undone, under the codes that they had. */
const acceptAgain: Work = async (manager, transfer, entry) => {
  const codes = animalsIn(entry.before).map(({ individualId, code }) => ({ individualId, code }));
  const date = entry.before?.['date'];
  await accept(manager, transfer, { codes, ...(typeof date === 'string' ? { date } : {}) }, reverses(entry));
};

const returnAgain: Work = async (manager, transfer, entry) => {
  const moved = movedIn(entry).map(({ individualId }) => individualId);
  const date = animalsIn(entry.before).find(({ individualId }) => moved.includes(individualId))?.returned;
  await takeReturn(manager, transfer, { animals: moved, ...(date ? { date } : {}) }, reverses(entry));
};

/** How each change of a transfer is undone, and who may do it. */
export const transferUndo: NonNullable<JournalKind['undo']> = {
  offered: undoing('giver', (manager, transfer, entry) => withdrawOffer(manager, transfer, null, reverses(entry))),
  'offer-withdrawn': undoing('giver', (manager, transfer, entry) => offerAgain(manager, transfer, reverses(entry))),
  declined: undoing('receiver', (manager, transfer, entry) => offerAgain(manager, transfer, reverses(entry))),
  accepted: undoing('receiver', (manager, transfer, entry) => takeAcceptanceBack(manager, transfer, reverses(entry))),
  'acceptance-undone': undoing('receiver', acceptAgain),
  departed: undoing('giver', (manager, transfer, entry) => withdrawDeparture(manager, transfer, null, reverses(entry))),
  'departure-withdrawn': undoing('giver', (manager, transfer, entry) =>
    departAgain(manager, transfer, reverses(entry)),
  ),
  'came-back': undoing('giver', (manager, transfer, entry) =>
    takeReturnBack(
      manager,
      transfer,
      movedIn(entry).map(({ individualId }) => individualId),
      reverses(entry),
    ),
  ),
  'return-undone': undoing('giver', returnAgain),
};
