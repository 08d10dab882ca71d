import type TestAgent from 'supertest/lib/agent.js';
import type { TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { keeperWithPassphrase } from '../../support/passphrase.ts';
import type { Asker } from './route-table.ts';

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
  /** Lets strangers see all records, as far as the club lets them read at all. */
  publish(): Promise<void>;
  withdraw(kind: string, id: string): Promise<void>;
  /** The code of the first warning of an animal. */
  warningOf(individualId: string): Promise<string>;
}

/** Founds the club. */
export async function foundWorld(api: TestApi): Promise<World> {
  const owner = await api.addKeeper('Owner');
  let serial = 0;
  return {
    api,
    askers: {
      stranger: api.stranger,
      'stranger, public': api.stranger,
      keeper: (await api.addKeeper('Somebody')).http,
      owner: owner.http,
      registrar: (await api.addKeeper('Registrar', ['registrar'])).http,
      administrator: (await api.addKeeper('Administrator', ['administrator'])).http,
      reader: (await api.addKeeper('Reader', ['registrar', 'administrator'], 'read')).http,
    },
    owner: new Factory(owner.http),
    fresh: (prefix) => prefix + [...String(++serial)].map((digit) => 'abcdefghij'[Number(digit)]).join(''),
    withPassphrase: (name) => keeperWithPassphrase(api, name),
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
