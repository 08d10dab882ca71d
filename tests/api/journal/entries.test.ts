import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Response } from 'supertest';
import type { OpenAPIObject } from '@nestjs/swagger';
import { startApi, type TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory, trio } from '../../support/factories.ts';
import { storedEntries } from './stored-entries.ts';
import { matchWritingRoutes } from './match-writing-routes.ts';
import { otherRoutes } from './other-writing-routes.ts';
import { transferRoutes } from './transfer-writing-routes.ts';
import { provenanceRoutes } from './provenance-writing-routes.ts';
import { foreignRoutes } from './foreign-writing-routes.ts';
import { sheetRoutes } from './sheet-writing-routes.ts';
import { idIn, registerRoutes, runOn, sheet, type Scenario } from './writing-routes.ts';

let api: TestApi;
let make: Factory;
let scenarios: Readonly<Record<string, Scenario>>;
const ends: (() => Promise<void>)[] = [];

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  runOn(api, make);
  scenarios = {
    ...registerRoutes(),
    ...provenanceRoutes(api, make),
    ...sheetRoutes(api, make),
    ...transferRoutes(api, make),
    ...matchWritingRoutes(api, make),
    ...foreignRoutes(api),
    ...otherRoutes(api, make, (end) => ends.push(end)),
  };
});

// tests send in seconds more than a keeper may in minutes
beforeEach(() => api.dataSource.query('delete from rate_limit'));

afterAll(async () => {
  for (const end of ends) await end();
  await api.close();
});

/** Questions that are put by POST: they write nothing. */
const questions = [
  'post /api/v1/lineage/kinship',
  'post /api/v1/lineage/figures',
  'post /api/v1/individuals/{id}/lineage/what-if',
  'post /api/v1/lineage/forecast',
  'post /api/v1/lineage/set',
  'post /api/v1/lines/{id}/plan-forecast',
  'post /api/v1/match/exchange',
  'post /api/v1/match/group',
  'post /api/v1/lines/{id}/plan',
  'post /api/v1/sheets/verification',
];

/** Who comes and goes is no change of the register; the log of the service knows it. */
const comingAndGoing = ['post /api/v1/session', 'post /api/v1/session/demo', 'delete /api/v1/session'];

describe('a write leaves exactly its entry in the journal', () => {
  it('on every route of the API that writes: each has a case', async () => {
    const document = bodyOf<OpenAPIObject>(await api.http.get('/api/openapi.json').expect(200));
    const routes = Object.entries(document.paths).flatMap(([path, item]) =>
      Object.keys(item as object)
        .filter((method) => ['post', 'put', 'patch', 'delete'].includes(method))
        .map((method) => `${method} ${path}`),
    );
    expect([...Object.keys(scenarios), ...questions, ...comingAndGoing].sort()).toEqual(routes.sort());
  });

  it('with what was there before, what is there now, who did it and why', async () => {
    for (const [route, [action, kind, perform]] of Object.entries(scenarios)) {
      const written = await perform();
      const { answer, recordId, before, after, reason = null, by, others = [], dataSource = api.dataSource } = written;
      const entries = await storedEntries(dataSource, 'request_id = $1', [answer.headers['x-request-id']]);
      const entry = entries.find(({ id }) => id === answer.headers['journal-entry']);
      const more = entries.filter((one) => one !== entry);
      expect(
        more.map((one) => one.kind),
        route,
      ).toEqual(others);
      const who = by ?? { keeper: 'Keeper', via: 'token' };
      const id = answer.headers['journal-entry'];
      expect(entry, route).toMatchObject({ id, action, kind, recordId, reason, ...who });
      for (const [state, expected] of [
        [entry?.before, before],
        [entry?.after, after],
      ])
        if (expected === null) expect(state, route).toBeNull();
        else expect(state, route).toMatchObject(expected ?? {});
      if (before !== null || after !== null) expect(entry?.after, route).not.toEqual(entry?.before);
      const version = bodyOf<{ version?: number }>(answer).version;
      if (version !== undefined) expect(entry?.recordVersion, route).toBe(version);
    }
    // every route that writes, one after the other
  }, 90_000);

  it('and never a passphrase, a token or the secret of a link', async () => {
    const rows = await api.dataSource.query<{ text: string }[]>(
      `select concat(before::text, after::text, reason) as text from journal_entry`,
    );
    expect(rows.filter(({ text }) => /yellow moss|lk_|argon2|\$argon/.test(text))).toEqual([]);
    expect(rows.length).toBeGreaterThan(50);
  });
});

describe('nothing is entered', () => {
  const count = async (): Promise<number> => (await storedEntries(api.dataSource, 'true', [])).length;

  it.each<[string, () => Promise<Response>]>([
    ['by a question', () => api.http.post('/api/v1/lineage/kinship').send({ individuals: [] })],
    [
      'by a sheet that was only checked',
      () => api.http.post('/api/v1/imports?dryRun=true').set('Content-Type', 'text/csv').send(sheet()),
    ],
    [
      'by a sheet that was refused',
      () => api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send('species,code\n,\n'),
    ],
    ['by a body that cannot be taken', () => api.http.post('/api/v1/species').send({ scientificName: 'x' })],
    [
      'by a code that is taken',
      async () => {
        const { code } = await make.individual({ code: 'taken' });
        const before = await make.species();
        return api.http.post('/api/v1/individuals').send({ code, speciesId: before.id });
      },
    ],
    [
      'by a version that is old',
      async () => {
        const { id } = await make.individual();
        return api.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '"9"').send({ notes: 'x' });
      },
    ],
    [
      'by a change that closes a loop',
      async () => {
        const { sire, dam } = await trio(make);
        const clutch = await make.clutchOf(sire.id, dam.id);
        return api.http.patch(`/api/v1/individuals/${sire.id}`).set('If-Match', '*').send({ clutchId: clutch.id });
      },
    ],
    [
      'by taking back what was not confirmed',
      async () => {
        const { id } = await make.individual();
        return api.http.delete(`/api/v1/individuals/${id}/warnings/sexed-early/confirmation`);
      },
    ],
  ])('%s', async (_, send) => {
    const answer = await send();
    expect(answer.headers['journal-entry']).toBeUndefined();
    expect(await storedEntries(api.dataSource, 'request_id = $1', [answer.headers['x-request-id']])).toEqual([]);
    expect(await count()).toBeGreaterThan(0);
  });
});

it('a repeated POST with the same key names the entry of the first, and writes no second', async () => {
  const send = (): Promise<Response> =>
    api.http
      .post('/api/v1/species')
      .set('Idempotency-Key', 'journal-1')
      .send({ scientificName: 'Inventus repetitus' })
      .then((answer) => answer);
  const [first, second] = [await send(), await send()];
  expect(second.headers['idempotency-replayed']).toBe('true');
  expect(first.headers['journal-entry']).toMatch(/-/);
  expect(second.headers['journal-entry']).toBe(first.headers['journal-entry']);
  expect(await storedEntries(api.dataSource, 'record_id = $1', [idIn(first)])).toHaveLength(1);
});

it('species and lines remember who entered them, and every record of a sheet its import, whose entry stands in its history', async () => {
  const answer = await api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet()).expect(201);
  for (const table of ['species', 'line', 'individual']) {
    const rows = await api.dataSource.query<{ id: string; keeper: string }[]>(
      `select r.id, k.name as keeper from ${table} r join keeper k on k.id = r.keeper_id where r.import_id = $1`,
      [idIn(answer)],
    );
    expect(rows.map((row) => row.keeper)).toEqual(['Keeper']);
    const history = await api.http.get(`/api/v1/journal?record=${rows[0]?.id}`).expect(200);
    expect(bodyOf<{ items: unknown[] }>(history).items).toMatchObject([
      { action: 'imported', record: { kind: 'import', id: idIn(answer), title: 'sheet of 1 animal' } },
    ]);
  }
});
