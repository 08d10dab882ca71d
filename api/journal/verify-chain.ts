import type { ClientBase } from 'pg';
import { beginning, contentColumns, hashOfSeal, type SealedContent } from './chain.ts';

/** What is wrong with the journal, at the first place where something is. */
export interface Fault {
  /** Place in the chain; null where an entry has none and should. */
  readonly sequence: number | null;
  /** Id of the entry; null where it is gone. */
  readonly entryId: string | null;
  readonly wrong: string;
}

/** What looking through the whole journal found. */
export interface Verification {
  readonly sealed: number;
  readonly waiting: number;
  /** Hash of the newest seal, hexadecimal. */
  readonly head: string;
  readonly fault: Fault | null;
  /** The place in the chain of the hash that was asked for; null where it is not part of the chain. */
  readonly placeOfHash: number | null;
}

type SealRow = {
  readonly sequence: string;
  readonly entryId: string;
  readonly previous: string;
  readonly hash: string;
} & {
  readonly [Column in keyof SealedContent]: SealedContent[Column] | null;
};

const pageSize = 1000;

/**
 * Looks through the whole journal as it is at one moment, beside a service that may be writing: whether every seal follows the one before,
 * whether every entry still has the content that was sealed, whether any is missing or was left out. Stops at the first fault.
 *
 * @param hash a hash that somebody kept, hexadecimal, whose place in the chain is wanted
 */
export async function verifyJournal(client: ClientBase, hash?: string): Promise<Verification> {
  await client.query('begin isolation level repeatable read read only');
  try {
    const chain = await verifySeals(client, hash);
    const { rows } = await client.query<{ count: number }>('select count(*)::integer as count from journal_unsealed');
    return { ...chain, fault: chain.fault ?? (await findLeftOut(client)), waiting: rows[0]?.count ?? 0 };
  } finally {
    await client.query('rollback');
  }
}

async function verifySeals(client: ClientBase, hash: string | undefined): Promise<Omit<Verification, 'waiting'>> {
  let head = beginning;
  let sequence = 0;
  let placeOfHash = hash === beginning ? 0 : null;
  for (let rows = await sealsAfter(client, 0); rows.length > 0; rows = await sealsAfter(client, sequence))
    for (const row of rows) {
      const fault = faultOf(row, sequence + 1, head);
      if (fault) return { sealed: sequence, head, fault, placeOfHash };
      sequence++;
      head = row.hash;
      if (head === hash) placeOfHash = sequence;
    }
  return { sealed: sequence, head, fault: null, placeOfHash };
}

/** A page of seals with their entries, in order (journal_seal_pkey, journal_entry_pkey). */
async function sealsAfter(client: ClientBase, sequence: number): Promise<SealRow[]> {
  const { rows } = await client.query<SealRow>(
    `select s.sequence, s.entry_id as "entryId", encode(s.previous_hash, 'hex') as previous, encode(s.hash, 'hex') as hash,
       ${contentColumns('e')}
     from journal_seal s left join journal_entry e on e.id = s.entry_id where s.sequence > $1 order by s.sequence limit ${pageSize}`,
    [sequence],
  );
  return rows;
}

function faultOf(row: SealRow, expected: number, head: string): Fault | null {
  const { sequence, entryId, previous, hash, ...content } = row;
  const fault = (wrong: string): Fault => ({ sequence: expected, entryId, wrong });
  if (Number(sequence) !== expected)
    return { sequence: expected, entryId: null, wrong: `the seal is gone; the next one is number ${sequence}` };
  if (previous !== head)
    return fault('it does not follow the entry before: an entry there was changed, removed or added');
  if (content.id === null) return fault('the entry is gone');
  if (hashOfSeal(expected, previous, content as SealedContent) !== hash)
    return fault('the entry is not what was sealed: it was changed afterwards');
  return null;
}

/** An entry that is neither sealed nor waits for it: its seal was removed (journal_seal_once, journal_unsealed_pkey). */
async function findLeftOut(client: ClientBase): Promise<Fault | null> {
  const { rows } = await client.query<{ id: string; count: number }>(
    `select e.id, count(*) over ()::integer as count from journal_entry e
     where not exists (select from journal_seal s where s.entry_id = e.id)
       and not exists (select from journal_unsealed u where u.entry_id = e.id) order by e.id limit 1`,
  );
  const [row] = rows;
  if (!row) return null;
  const others = row.count === 1 ? '' : `; so are ${row.count - 1} others`;
  return {
    sequence: null,
    entryId: row.id,
    wrong: `the entry is neither sealed nor waiting for it: its seal was removed${others}`,
  };
}
