import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import { writeEntry, type KeptForm } from '../../platform/journal-entry.ts';
import type { EndedStay } from './transfer.entity.ts';

/** An animal of a transfer as an entry tells of it. */
export interface KeptPassing {
  readonly individualId: string;
  readonly version: number;
  readonly keeperId: string;
  readonly code: string | null;
  readonly status: string;
  readonly returned: string | null;
}

interface State {
  readonly version: number;
  readonly ownerId: string;
  readonly form: KeptForm & { readonly animals: readonly KeptPassing[] };
}

/** A transfer as the database keeps it, with its animals (primary key, transfer_animal_pkey). */
async function readState(manager: EntityManager, id: string): Promise<State> {
  const [row] = await manager.query<State[]>(
    `select t.version, t.keeper_id as "ownerId", json_build_object('fromId', t.keeper_id, 'toId', t.to_id, 'leftTo', t.left_to, 'date', t.date,
       'note', t.note, 'state', t.state, 'reason', t.reason,
       'animals', (select json_agg(json_build_object('individualId', i.id, 'version', i.version, 'keeperId', i.keeper_id, 'code', i.code,
           'status', i.status, 'returned', a.returned) order by i.number)
         from transfer_animal a join individual i on i.id = a.individual_id where a.transfer_id = t.id)) as form
     from transfer t where t.id = $1`,
    [id],
  );
  if (!row) throw new Error('a transfer is never destroyed');
  return row;
}

/** What is told of a change. */
export interface TransferTold {
  readonly action: JournalAction;
  /** Stays that it ended, or let go on again. */
  readonly ended?: readonly EndedStay[];
  readonly reopened?: readonly EndedStay[];
  /** The entry of the journal that this one undoes. */
  readonly reversesId?: string | undefined;
}

/**
 * Reads a transfer before a change; what it gives writes, afterwards, the one entry that tells of the transfer, its animals and the stays
 * that ended or went on. It stands in the history of each of them.
 */
export async function noteTransfer(manager: EntityManager, id: string): Promise<(told: TransferTold) => Promise<void>> {
  const before = await readState(manager, id);
  return (told) => writeTransferEntry(manager, id, before.form, told);
}

/** Writes the entry of a transfer that is new. `before`: what was so of its animals, if it changed them. */
export async function noteNewTransfer(
  manager: EntityManager,
  id: string,
  told: TransferTold & { readonly before: KeptForm | null },
): Promise<void> {
  await writeTransferEntry(manager, id, told.before, told);
}

async function writeTransferEntry(
  manager: EntityManager,
  id: string,
  before: KeptForm | null,
  { action, ended = [], reopened = [], reversesId }: TransferTold,
): Promise<void> {
  const after = await readState(manager, id);
  const open = (stays: readonly EndedStay[]): KeptForm[] => stays.map((stay) => ({ ...stay, left: null }));
  const stays = { before: [...open(ended), ...reopened], after: [...ended, ...open(reopened)] };
  const withStays = (form: KeptForm, rows: readonly object[]): KeptForm =>
    rows.length === 0 ? form : { ...form, stays: rows };
  await writeEntry(manager, {
    action,
    kind: 'transfer',
    recordId: id,
    recordVersion: after.version,
    ownerId: after.ownerId,
    before: before === null ? null : withStays(before, stays.before),
    after: withStays(after.form, stays.after),
    reversesId: reversesId ?? null,
    aboutIds: [
      ...after.form.animals.map(({ individualId }) => individualId),
      ...new Set([...ended, ...reopened].map(({ pairingId }) => pairingId)),
    ],
  });
}
