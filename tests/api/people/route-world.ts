import { Passphrases } from '../../../api/people/passphrases.ts';
import { hashOfSecret, randomSecret } from '../../../api/people/secrets.ts';
import type TestAgent from 'supertest/lib/agent.js';
import type { TestApi, TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import { askers, type Asker } from './route-table.ts';

/** A club with one of each who may come to a route, and what the table needs to make records of the owner. */
export interface World {
  readonly askers: Readonly<Record<Asker, TestAgent>>;
  /** Makes records that belong to the owner. */
  readonly owner: Factory;
  readonly api: TestApi;
  /** A text that was not given before. */
  readonly fresh: (prefix: string) => string;
  /** A keeper who can sign in: what they send for that. */
  readonly withPassphrase: (name: string) => Promise<{ name: string; password: string }>;
  /** Gives whoever asks another token, to be revoked; its id. */
  spareToken(asker: Asker): Promise<string>;
  /** Gives whoever asks a passphrase. */
  givePassphrase(asker: Asker): Promise<string>;
  /** Lets strangers see all records, as far as the club lets them read at all. */
  publish(): Promise<void>;
  withdraw(kind: string, id: string): Promise<void>;
  /** The code of the first warning of an animal. */
  warningOf(individualId: string): Promise<string>;
}

/** Founds the club. */
export async function foundWorld(api: TestApi): Promise<World> {
  const owner = await api.addKeeper('Owner');
  const keepers: Partial<Record<Asker, TestKeeper>> = {
    keeper: await api.addKeeper('Somebody'),
    owner,
    registrar: await api.addKeeper('Registrar', ['registrar']),
    administrator: await api.addKeeper('Administrator', ['administrator']),
    reader: await api.addKeeper('Reader', ['registrar', 'administrator'], 'read'),
  };
  const speaks = (asker: Asker): TestAgent => keepers[asker]?.http ?? api.stranger;
  let serial = 0;
  return {
    api,
    askers: Object.fromEntries(askers.map((asker) => [asker, speaks(asker)])) as Record<Asker, TestAgent>,
    owner: new Factory(owner.http),
    fresh: (prefix) => prefix + [...String(++serial)].map((digit) => 'abcdefghij'[Number(digit)]).join(''),
    withPassphrase: (name) => keeperWithPassphrase(api, name),
    spareToken: async (asker) => {
      const [row] = await api.dataSource.query<{ id: string }[]>(
        `insert into access_token (keeper_id, name, scope, token_hash) values ($1, 'spare', 'read', $2) returning id`,
        [keepers[asker]?.id ?? owner.id, hashOfSecret(randomSecret())],
      );
      return row?.id ?? '';
    },
    givePassphrase: async (asker) => {
      const password = `the passphrase of the ${asker}`;
      const stored = await api.app.get(Passphrases).hash(password);
      await api.dataSource.query('update keeper set password_hash = $1 where id = $2', [stored, keepers[asker]?.id]);
      return password;
    },
    publish: async () => {
      for (const kind of ['individual', 'source', 'observation'])
        await api.dataSource.query(`update ${kind} set visibility = 'public' where visibility <> 'public'`);
    },
    withdraw: async (kind, id) => {
      await owner.http
        .post(`/api/v1/${kind}/${id}/withdrawal`)
        .set('If-Match', '*')
        .send({ reason: 'entered twice' })
        .expect(201);
    },
    warningOf: async (id) => {
      const answer = await owner.http.get(`/api/v1/individuals/${id}`).expect(200);
      return (answer.body as { warnings: { code: string }[] }).warnings[0]?.code ?? 'none';
    },
  };
}

/** Whether strangers may read what is public. */
export async function setPublicReading(api: TestApi, publicReading: boolean): Promise<void> {
  await api.dataSource.query('update club set public_reading = $1', [publicReading]);
}
