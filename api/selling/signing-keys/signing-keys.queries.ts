import type { EntityManager } from 'typeorm';
import { SigningKeyRecord } from './signing-key.entity.ts';

/** Every key that ever signed, the newest first. */
export function readSigningKeys(manager: EntityManager): Promise<SigningKeyRecord[]> {
  return manager.find(SigningKeyRecord, { order: { usedFrom: 'DESC', id: 'DESC' } });
}

/**
 * A key by its thumbprint, held so that it is not retired (`share`) or so that nobody else retires it (`change`) until the transaction
 * ends (signing_key_unique). Null where it is not known.
 */
export function holdSigningKey(
  manager: EntityManager,
  kid: string,
  until: 'share' | 'change',
): Promise<SigningKeyRecord | null> {
  const mode = until === 'share' ? 'pessimistic_read' : 'pessimistic_write';
  return manager.findOne(SigningKeyRecord, { where: { kid }, lock: { mode } });
}

/** Notes a key as in use from now on; gives its id, or null where it is known already. */
export async function addSigningKey(manager: EntityManager, kid: string, x: string): Promise<string | null> {
  const [added] = await manager.query<{ id: string }[]>(
    `insert into signing_key (kid, x, used_from) values ($1, $2, clock_timestamp()) on conflict (kid) do nothing returning id`,
    [kid, x],
  );
  return added?.id ?? null;
}

/** Notes that a key, which is held, is used no more. */
export async function endSigningKey(manager: EntityManager, id: string, reason: string): Promise<void> {
  await manager.query('update signing_key set used_until = clock_timestamp(), reason = $2 where id = $1', [id, reason]);
}
