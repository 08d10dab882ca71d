import type { DataSource, EntityManager } from 'typeorm';
import { beginning, contentColumns, hashOfSeal, type SealedContent } from './chain.ts';

/** How many entries are sealed in one transaction. */
export const batchSize = 1000;

/** The newest seal: where the chain stands. */
export interface Head {
  readonly sequence: number;
  /** Hexadecimal. */
  readonly hash: string;
  readonly sealedAt: string | null;
}

/** Where the chain stands (journal_seal_pkey); at 0 and 32 zero bytes while nothing was sealed. */
export async function readHead(manager: EntityManager): Promise<Head> {
  const [row] = await manager.query<{ sequence: string; hash: string; sealed_at: Date }[]>(
    `select sequence, encode(hash, 'hex') as hash, sealed_at from journal_seal order by sequence desc limit 1`,
  );
  if (!row) return { sequence: 0, hash: beginning, sealedAt: null };
  return { sequence: Number(row.sequence), hash: row.hash, sealedAt: row.sealed_at.toISOString() };
}

/** How many entries wait for their seal, and for how many seconds the oldest of them does (journal_unsealed_pkey, primary key). */
export async function readWaiting(manager: EntityManager): Promise<{ count: number; oldestSeconds: number }> {
  const [row] = await manager.query<{ count: number; seconds: number }[]>(
    `select count(*)::integer as count,
       greatest(0, coalesce(extract(epoch from clock_timestamp() - min(e.at)), 0))::double precision as seconds
     from journal_unsealed u join journal_entry e on e.id = u.entry_id`,
  );
  return { count: row?.count ?? 0, oldestSeconds: row?.seconds ?? 0 };
}

/**
 * Gives the oldest waiting entries their places in the chain, in one transaction: all of them, or none. Gives how many, or null where
 * another copy of the service is sealing.
 */
export async function sealBatch(dataSource: DataSource): Promise<number | null> {
  return dataSource.transaction(async (manager) => {
    const [lock] = await manager.query<{ got: boolean }[]>(
      `select pg_try_advisory_xact_lock(hashtext('linekeeper sealer')) as got`,
    );
    if (!lock?.got) return null;
    const entries = await manager.query<SealedContent[]>(
      `select ${contentColumns('e')} from journal_unsealed u join journal_entry e on e.id = u.entry_id order by u.entry_id limit $1`,
      [batchSize],
    );
    if (entries.length > 0) await seal(manager, entries);
    return entries.length;
  });
}

async function seal(manager: EntityManager, entries: readonly SealedContent[]): Promise<void> {
  const head = await readHead(manager);
  const ids = entries.map((entry) => entry.id);
  const hashes: string[] = [];
  for (const [index, entry] of entries.entries())
    hashes.push(hashOfSeal(head.sequence + 1 + index, hashes.at(-1) ?? head.hash, entry));
  await manager.query(
    `insert into journal_seal (sequence, entry_id, previous_hash, hash)
     select $1::bigint + place, entry_id, decode(previous, 'hex'), decode(hash, 'hex')
     from unnest($2::uuid[], $3::text[], $4::text[]) with ordinality as s (entry_id, previous, hash, place)`,
    [head.sequence, ids, [head.hash, ...hashes.slice(0, -1)], hashes],
  );
  await manager.query('delete from journal_unsealed where entry_id = any($1)', [ids]);
}
