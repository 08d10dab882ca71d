import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { readPublishedKeys, type SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { ShapeProblem } from '../../../shared/sheet/shape.ts';
import type { Acting } from '../../platform/acting.ts';
import { isId, newId } from '../../platform/ids.ts';
import { writeEntry, type NewEntry } from '../../platform/journal-entry.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { present } from '../../register/present.ts';
import type { MoreKeysRequest, NewOtherRegisterRequest } from './other-register.dto.ts';
import { OtherRegister } from './other-register.entity.ts';
import type { OtherRegisterView } from './other-register.view.ts';
import { findOtherRegister } from './other-registers.queries.ts';
import { say } from '../../platform/say.ts';

/** Registers of other clubs: registrars say by which keys their sheets are believed. */
@Injectable()
export class OtherRegistersService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One of them; 404 where there is none. */
  get(id: string): Promise<OtherRegisterView> {
    return shown(this.dataSource.manager, id);
  }

  /** Adds a register with its keys. 409 where a name or a key is another's, 422 for keys that cannot be read. */
  async add(keeper: Acting, { name, address, keys }: NewOtherRegisterRequest): Promise<OtherRegisterView> {
    const read = await keysIn(keys);
    return inTransaction(this.dataSource, async (manager) => {
      await lockRegisters(manager);
      await refuseKeysOfOthers(manager, null, read);
      const id = newId();
      await manager.insert(OtherRegister, { id, keeperId: keeper.id, name, address: address ?? null, keys: read });
      await this.#note(manager, id, {
        action: 'added',
        before: null,
        after: { name, address: address ?? null, keys: kidsOf(read) },
      });
      return shown(manager, id);
    });
  }

  /** Adds keys that a register took up since, and until when it used others. 404, 409, 422. */
  async addKeys(id: string, { keys }: MoreKeysRequest): Promise<OtherRegisterView> {
    const read = await keysIn(keys);
    return inTransaction(this.dataSource, async (manager) => {
      const register = await lock(manager, id);
      if (register.withdrawnAt !== null)
        throw new ConflictProblem(say`This register is not believed any more. Restore it first.`);
      await refuseKeysOfOthers(manager, id, read);
      const told = new Map([...register.keys, ...read].map((key) => [key.kid, key]));
      await manager.update(OtherRegister, { id }, { keys: [...told.values()] });
      await this.#note(manager, id, {
        action: 'changed',
        before: { keys: kidsOf(register.keys) },
        after: { keys: [...told.keys()] },
      });
      return shown(manager, id);
    });
  }

  /** Believes its sheets no more; what came in stays. 404, 409. */
  withdraw(id: string, reason: string): Promise<OtherRegisterView> {
    return inTransaction(this.dataSource, async (manager) => {
      const register = await lock(manager, id);
      if (register.withdrawnAt !== null)
        throw new ConflictProblem(say`This register is not believed any more already.`);
      const at = new Date();
      await manager.update(OtherRegister, { id }, { withdrawnAt: at, withdrawnReason: reason });
      const after = { withdrawnAt: at.toISOString(), withdrawnReason: reason };
      await this.#note(manager, id, { action: 'withdrawn', before: standing, after, reason });
      return shown(manager, id);
    });
  }

  /** Believes its sheets again. 404, 409 where its name or a key is another's meanwhile. */
  restore(id: string): Promise<OtherRegisterView> {
    return inTransaction(this.dataSource, async (manager) => {
      const register = await lock(manager, id);
      if (register.withdrawnAt === null) throw new ConflictProblem(say`This register is believed.`);
      await refuseKeysOfOthers(manager, id, register.keys);
      await manager.update(OtherRegister, { id }, { withdrawnAt: null, withdrawnReason: null });
      const before = { withdrawnAt: register.withdrawnAt.toISOString(), withdrawnReason: register.withdrawnReason };
      await this.#note(manager, id, { action: 'restored', before, after: standing });
      return shown(manager, id);
    });
  }

  #note(
    manager: EntityManager,
    id: string,
    entry: Pick<NewEntry, 'action' | 'before' | 'after' | 'reason'>,
  ): Promise<string> {
    return writeEntry(manager, { ...entry, kind: 'other_register', recordId: id });
  }
}

const standing = { withdrawnAt: null, withdrawnReason: null };

const kidsOf = (keys: readonly SheetKey[]): string[] => keys.map(({ kid }) => kid);

async function keysIn(text: string): Promise<SheetKey[]> {
  const refuse = (detail: string): never => {
    throw new InvalidProblem(say`These keys cannot be read.`, [{ pointer: '/keys', detail }]);
  };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    refuse(say`This is no JSON. Take the file of keys from the well-known address of the other register as it is.`);
  }
  try {
    const keys = await readPublishedKeys(value);
    return keys.length > 0 ? keys : refuse(say`There is no key in this file.`);
  } catch (error) {
    if (!(error instanceof ShapeProblem)) throw error;
    return refuse(error.message);
  }
}

/** Adding and restoring wait for each other, so that a key never speaks for two registers. */
async function lockRegisters(manager: EntityManager): Promise<void> {
  await manager.query(`select pg_advisory_xact_lock(hashtext('other registers'))`);
}

async function lock(manager: EntityManager, id: string): Promise<OtherRegister> {
  await lockRegisters(manager);
  const found = isId(id) ? await manager.findOneBy(OtherRegister, { id }) : null;
  return present(found, () => new NotFoundProblem(say`other register`, id));
}

async function refuseKeysOfOthers(manager: EntityManager, id: string | null, keys: readonly SheetKey[]): Promise<void> {
  const [other] = await manager.query<{ name: string; kid: string }[]>(
    `select o.name, k ->> 'kid' as kid from other_register o cross join jsonb_array_elements(o.keys) k
     where o.withdrawn_at is null and o.id is distinct from $1 and k ->> 'kid' = any($2::text[]) limit 1`,
    [id, kidsOf(keys)],
  );
  if (other) throw new ConflictProblem(say`The key ${other.kid} is one of ${other.name}, which is known already.`);
}

async function shown(manager: EntityManager, id: string): Promise<OtherRegisterView> {
  return present(await findOtherRegister(manager, id), () => new NotFoundProblem(say`other register`, id));
}
