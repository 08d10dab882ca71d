import type { EntityManager } from 'typeorm';
import type { Role } from '../../shared/vocabulary.ts';

/** A keeper as signing in needs to know them. */
export interface SigningKeeper {
  readonly id: string;
  readonly name: string;
  readonly roles: Role[];
  readonly passwordHash: string | null;
}

const columns = 'k.id, k.name, k.roles, k.password_hash as "passwordHash"';

/** The keeper of a name who has not left; keeper_name_unique. */
export async function findKeeperByName(manager: EntityManager, name: string): Promise<SigningKeeper | null> {
  const [found] = await manager.query<SigningKeeper[]>(
    `select ${columns} from keeper k where lower(k.name) = lower($1) and k.left_at is null`,
    [name],
  );
  return found ?? null;
}

/**
 * A keeper who has not left. Waits for whoever changes the keeper at this moment, so that a passphrase that is replaced meanwhile
 * is never taken for the present one.
 */
export async function findStandingKeeper(manager: EntityManager, id: string): Promise<SigningKeeper | null> {
  const [found] = await manager.query<SigningKeeper[]>(
    `select ${columns} from keeper k where k.id = $1 and k.left_at is null for share`,
    [id],
  );
  return found ?? null;
}

/** The invented keepers of a demo club, by name; none in a real club. Whoever joined it with a passphrase is not invented. */
export async function listDemoKeepers(manager: EntityManager): Promise<SigningKeeper[]> {
  return manager.query<SigningKeeper[]>(
    `select ${columns} from keeper k, club c
     where c.demo and k.left_at is null and k.password_hash is null order by k.name`,
  );
}

/** Whether the register waits for its first administrator: nobody who may let others in can sign in, and it is no demo. */
export async function needsSetup(manager: EntityManager): Promise<boolean> {
  const [row] = await manager.query<{ needed: boolean }[]>(
    `select not exists (select from club where demo)
       and not exists (select from keeper
         where 'administrator' = any(roles) and left_at is null and password_hash is not null) as needed`,
  );
  return row?.needed ?? true;
}

/** Stores a passphrase. The version stays: it is that of name, roles and membership. */
export async function storePassphrase(manager: EntityManager, id: string, passwordHash: string): Promise<void> {
  await manager.query('update keeper set password_hash = $2, updated_at = now() where id = $1', [id, passwordHash]);
}
