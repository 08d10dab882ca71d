import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { counts, importSheet, places } from './sheet-requests.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const frogs = (prefix: string, count: number): string =>
  `code,species,sire,hatched,notes\n${Array.from({ length: count }, (_, place) => `${prefix}-${place},Ranitomeya imitator,${place < 5 ? '' : `${prefix}-${place % 5}`},,"remark number ${place}"\n`).join('')}`;

describe('what is not a sheet', () => {
  test.each([
    ['application/json', '{"a":1}'],
    ['text/plain', 'code\nA\n'],
    ['text/csv; charset=iso-8859-1', 'code\nA\n'],
    ['application/x-www-form-urlencoded', 'a=b'],
  ])('%s is told 415', async (type, body) => {
    const answer = await api.http.post('/api/v1/imports').set('Content-Type', type).send(body);
    expect([answer.status, answer.body]).toEqual([
      415,
      expect.objectContaining({ type: '/api/problems/unsupported-media-type' }),
    ]);
  });

  test('a packed body and a body without a type are told 415', async () => {
    const packed = await api.http
      .post('/api/v1/imports')
      .set('Content-Type', 'text/csv')
      .set('Content-Encoding', 'gzip')
      .send('code\nA\n');
    expect(packed.status).toBe(415);
    expect((await api.http.post('/api/v1/imports')).status).toBe(415);
  });

  test('a form without the file, with another field or cut short is told so', async () => {
    const without = await api.http.post('/api/v1/imports').field('name', 'x');
    expect([without.status, without.body]).toEqual([
      422,
      expect.objectContaining({ errors: [expect.objectContaining({ pointer: '/file' })] }),
    ]);
    const other = await api.http.post('/api/v1/imports').attach('sheet', Buffer.from('code\nA\n'), 'a.csv');
    expect(other.status).toBe(422);
    for (const type of ['multipart/form-data; boundary=xx', 'multipart/form-data']) {
      const cut = await api.http
        .post('/api/v1/imports')
        .set('Content-Type', type)
        .send('--xx\r\nContent-Disposition: form-data; name="file"; filename="a.csv"\r\n\r\ncode\nA');
      expect([cut.status, cut.body]).toEqual([400, expect.objectContaining({ type: '/api/problems/malformed' })]);
    }
  });

  test('an unknown option of the address is named', async () => {
    const answer = await importSheet(api, 'code\nA\n', '?dry=yes');
    expect(answer.body).toMatchObject({ status: 422, errors: [{ pointer: '/dry' }] });
    expect((await importSheet(api, 'code\nA\n', '?dryRun=perhaps')).status).toBe(422);
  });

  test('a body that announces more than the limit is told 413 before it is sent', async () => {
    const { token } = await api.addKeeper('Sender');
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const request = httpRequest(`${api.url}/api/v1/imports`, {
        method: 'POST',
        headers: { 'Content-Type': 'text/csv', 'Content-Length': 200_000_000, Authorization: `Bearer ${token}` },
      });
      request.on('response', (response) => {
        resolve(response.statusCode);
        request.destroy();
      });
      request.on('error', reject);
      request.write('code\nA\n');
    });
    expect(status).toBe(413);
  });
});

test('a body that turns out larger than the limit is told 413', async () => {
  const { token } = await api.addKeeper('Sender');
  const status = await new Promise<number | undefined>((resolve, reject) => {
    const request = httpRequest(`${api.url}/api/v1/imports`, {
      method: 'POST',
      headers: { 'Content-Type': 'text/csv', Authorization: `Bearer ${token}` },
    });
    request.on('response', (response) => {
      resolve(response.statusCode);
      request.destroy();
    });
    request.on('error', reject);
    const megabyte = Buffer.alloc(1_000_000, 'x');
    // the first row names no columns, so that nothing of the rest is looked at
    request.write('nothing\n');
    void (async () => {
      for (let sent = 0; sent < 101 && !request.destroyed; sent++)
        if (!request.write(megabyte)) await once(request, 'drain');
    })().catch(() => undefined); // the answer may come before all is sent
  });
  expect(status).toBe(413);
});

describe('retries', () => {
  test('the same key and sheet give the same answer and write once; another sheet under the key is refused', async () => {
    const key = randomUUID();
    const sheet = frogs('R', 20_000);
    const send = (body: string) =>
      api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').set('Idempotency-Key', key).send(body);
    const first = await send(sheet);
    expect(first.status).toBe(201);
    const before = await counts(api);
    const second = await send(sheet);
    expect([second.status, second.body]).toEqual([201, first.body]);
    expect((await send(sheet.replace('number 7"', 'number 8"'))).status).toBe(422);
    expect(await counts(api)).toEqual(before);
  });

  test('a refused sheet may be sent again under its key, corrected', async () => {
    const key = randomUUID();
    const send = (body: string) =>
      api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').set('Idempotency-Key', key).send(body);
    expect((await send('code,species,sex\nQ-1,Abc def,nonsense\n')).status).toBe(422);
    expect((await send('code,species,sex\nQ-1,Abc def,m\n')).status).toBe(201);
  });
});

describe('two at once', () => {
  test('of two sheets with the same codes exactly one is taken, the other is refused whole', async () => {
    const other = await startApiOn(api.databaseUrl);
    try {
      const before = await counts(api);
      const answers = await Promise.all(
        [api, other, api, other].map((service) => importSheet(service, frogs('T', 500))),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([201, 422, 422, 422]);
      for (const answer of answers.filter(({ status }) => status === 422)) expect(places(answer)).toContain('2 code');
      const after = await counts(api);
      expect((after['individual'] ?? 0) - (before['individual'] ?? 0)).toBe(500);
      expect((after['register_import'] ?? 0) - (before['register_import'] ?? 0)).toBe(1);
    } finally {
      await other.close();
    }
  });
});

describe('what breaks off', () => {
  test('an upload that breaks off stores nothing, and the service goes on', async () => {
    const before = await counts(api);
    const { hostname, port } = new URL(api.url);
    const sheet = frogs('B', 5_000);
    await new Promise<void>((resolve, reject) => {
      const socket = connect(Number(port), hostname, () => {
        socket.write(
          `POST /api/v1/imports HTTP/1.1\r\nHost: x\r\nContent-Type: text/csv\r\nContent-Length: ${sheet.length}\r\n\r\n`,
        );
        socket.write(sheet.slice(0, sheet.length / 2), () => {
          socket.destroy();
          resolve();
        });
      });
      socket.on('error', reject);
    });
    await pause(200);
    expect(await counts(api)).toEqual(before);
    expect((await importSheet(api, frogs('B', 10))).status).toBe(201);
  });

  test('a database connection that breaks while the sheet is written stores nothing', async () => {
    const before = await counts(api);
    const killer = new pg.Client({ connectionString: api.databaseUrl });
    await killer.connect();
    try {
      const answer = importSheet(api, frogs('K', 20_000));
      let killed = 0;
      for (let attempt = 0; attempt < 2_000 && killed === 0; attempt++) {
        const result = await killer.query(
          `select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and state = 'active' and query like 'copy individual%'`,
        );
        killed = result.rowCount ?? 0;
        await pause(1);
      }
      expect(killed).toBe(1);
      expect((await answer).status).toBe(503);
      expect(await counts(api)).toEqual(before);
      expect((await importSheet(api, frogs('K', 10))).status).toBe(201);
    } finally {
      await killer.end();
    }
  });
});
