import http, { type IncomingMessage } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answering } from '../../../api/platform/acting.ts';
import { inTransaction } from '../../../api/platform/transaction.ts';
import { usualSeconds } from '../../../api/platform/time-limits.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';

let api: TestApi;
let other: TestApi;
let hanna: TestKeeper;

beforeAll(async () => {
  api = await startApi();
  other = await startApiOn(api.databaseUrl);
  hanna = await api.addKeeper('Hanna');
});

afterAll(async () => {
  await other.close();
  await api.close();
});

const speciesNamed = async (name: string): Promise<number> => {
  const [row] = await api.dataSource.query<{ count: number }[]>(
    'select count(*)::integer from species where scientific_name = $1',
    [name],
  );
  return row?.count ?? -1;
};

describe('one POST, sent 20 times at once over two copies of the service', () => {
  it('makes one record; whoever is answered hears the same', async () => {
    const send = (to: TestApi) =>
      to.stranger
        .post('/api/v1/species')
        .set({ Authorization: `Bearer ${hanna.token}`, 'Idempotency-Key': 'offline-1' })
        .send({ scientificName: 'Ameerega bassleri' });
    const answers = await Promise.all(Array.from({ length: 20 }, (_, at) => send(at % 2 === 0 ? api : other)));
    const made = answers.filter(({ status }) => status === 201);
    expect(made.length).toBeGreaterThan(0);
    expect(answers.filter(({ status }) => ![201, 409].includes(status))).toEqual([]);
    expect(new Set(made.map(({ text }) => text)).size).toBe(1);
    expect(await speciesNamed('Ameerega bassleri')).toBe(1);
    for (const copy of [api, other]) {
      const repeat = await send(copy).expect(201);
      expect([repeat.text, repeat.headers['idempotency-replayed']]).toEqual([made[0]?.text, 'true']);
    }
    const entries = await api.dataSource.query<unknown[]>(
      `select 1 from journal_entry where action = 'added' and record_id = $1`,
      [(made[0]?.body as { id: string }).id],
    );
    expect(entries).toHaveLength(1);
  });
});

/** Begins to send a sheet of 90 MB and waits for the answer; gives the way to break it off. */
function beginSheet(headers: Record<string, string>): { answer: Promise<IncomingMessage>; end: () => void } {
  const request = http.request(`${api.url}/api/v1/imports?dryRun=true`, {
    method: 'POST',
    agent: false,
    headers: { 'Content-Type': 'text/csv', 'Content-Length': '90000000', ...headers },
  });
  const answer = new Promise<IncomingMessage>((resolve, reject) => {
    request.once('response', resolve);
    request.once('error', reject);
  });
  answer.catch(() => undefined);
  request.write('code,species\nA-1,Aus bus\n');
  return { answer, end: () => request.destroy() };
}

describe('a sheet', () => {
  it('is not read for somebody who may not send one: the answer comes before the sheet', async () => {
    const reader = await api.addKeeper('Reader', [], 'read');
    for (const [headers, status] of [
      [{}, 401],
      [{ Authorization: `Bearer ${reader.token}` }, 403],
    ] as const) {
      const { answer, end } = beginSheet(headers);
      expect((await answer).statusCode).toBe(status);
      end();
    }
  });

  it('waits for none: the fifth at once is told when to come again', async () => {
    const headers = { Authorization: `Bearer ${hanna.token}` };
    const begun = Array.from({ length: 5 }, () => beginSheet(headers));
    // four wait for the rest of their sheets, whichever of the five they are
    const { statusCode, headers: told } = await Promise.race(begun.map(({ answer }) => answer));
    expect([statusCode, told['retry-after']]).toEqual([503, '5']);
    for (const { end } of begun) end();
    const take = () =>
      hanna.http.post('/api/v1/imports?dryRun=true').type('text/csv').send('code,species\nA-1,Aus bus\n');
    await expect.poll(async () => (await take()).status).toBe(200);
  });
});

describe('time', () => {
  it('of work that was given up is not written', async () => {
    const write = answering({ requestId: 'slow', isGivenUp: true }, () =>
      inTransaction(api.dataSource, (manager) =>
        manager.query(`insert into species (scientific_name) values ('Aus tardus')`),
      ),
    );
    await expect(write).rejects.toThrow('rolled back');
    expect(await speciesNamed('Aus tardus')).toBe(0);
  });

  it('of a statement and of waiting for another writer is bounded by the database, below that of a request', async () => {
    const [row] = await api.dataSource.query<Record<string, string>[]>(
      `select current_setting('statement_timeout') as statement, current_setting('lock_timeout') as lock,
              current_setting('idle_in_transaction_session_timeout') as idle`,
    );
    expect(row).toEqual({ statement: '30s', lock: '20s', idle: '1min' });
    expect(usualSeconds).toBeGreaterThan(30);
  });

  it('to send headers and bodies is bounded, and so are connections', () => {
    const { headersTimeout, requestTimeout, maxConnections, maxHeadersCount } = api.app.getHttpServer();
    expect({ headersTimeout, requestTimeout, maxConnections, maxHeadersCount }).toEqual({
      headersTimeout: 20_000,
      requestTimeout: 300_000,
      maxConnections: 1000,
      maxHeadersCount: 100,
    });
  });

  it('spent waiting for another writer ends in a conflict, told as that', async () => {
    const { id } = bodyOf<{ id: string }>(
      await hanna.http.post('/api/v1/species').send({ scientificName: 'Aus lentus' }).expect(201),
    );
    await api.dataSource.transaction(async (manager) => {
      await manager.query('select 1 from species where id = $1 for update', [id]);
      const refused = await hanna.http
        .patch(`/api/v1/species/${id}`)
        .set('If-Match', '*')
        .send({ commonName: 'slow frog' })
        .expect(409);
      expect(bodyOf<ProblemBody>(refused).detail).toMatch(/at the same moment/);
    });
  }, 40_000);
});
