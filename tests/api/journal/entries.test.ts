import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Response } from 'supertest';
import type { OpenAPIObject } from '@nestjs/swagger';
import type { KeptForm } from '../../../api/platform/journal-entry.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';
import { storedEntries, type StoredEntry } from './stored-entries.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

/** What a write must leave in the journal: the fields that it sent, before and after. */
interface Written {
  readonly answer: Response;
  readonly recordId: string;
  readonly before: KeptForm | null;
  readonly after: KeptForm;
  readonly reason?: string;
}

type Scenario = readonly [action: string, kind: string, perform: () => Promise<Written>];

const idIn = (answer: Response): string => bodyOf<{ id: string }>(answer).id;

/** Adds a record: nothing was there before. */
const adding =
  (resource: string, body: () => Promise<object>, after: KeptForm = {}) =>
  async (): Promise<Written> => {
    const sent = await body();
    const answer = await api.http.post(`/api/v1/${resource}`).send(sent).expect(201);
    return { answer, recordId: idIn(answer), before: null, after: Object.keys(after).length > 0 ? after : { ...sent } };
  };

/** Changes a field of a fresh record. */
const changing =
  (resource: string, create: () => Promise<{ id: string }>, before: KeptForm, after: KeptForm) =>
  async (): Promise<Written> => {
    const { id } = await create();
    const answer = await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(after).expect(200);
    return { answer, recordId: id, before, after };
  };

const withdrawing = (resource: string, create: () => Promise<{ id: string }>) => async (): Promise<Written> => {
  const { id } = await create();
  const answer = await api.http
    .post(`/api/v1/${resource}/${id}/withdrawal`)
    .set('If-Match', '*')
    .send({ reason: 'a mistake' })
    .expect(201);
  const [before, after] = [{ withdrawnReason: null }, { withdrawnReason: 'a mistake' }];
  return { answer, recordId: id, before, after, reason: 'a mistake' };
};

const restoring = (resource: string, create: () => Promise<{ id: string }>) => async (): Promise<Written> => {
  const { recordId } = await withdrawing(resource, create)();
  const answer = await api.http.delete(`/api/v1/${resource}/${recordId}/withdrawal`).set('If-Match', '*').expect(200);
  return {
    answer,
    recordId,
    before: { withdrawnReason: 'a mistake' },
    after: { withdrawnReason: null, withdrawnAt: null },
  };
};

const observed = async (): Promise<{ id: string }> => make.observation({ individualId: (await make.individual()).id });

interface Stay {
  readonly id: string;
}

async function housed(): Promise<{ id: string; animal: string; member: string }> {
  const animal = await make.individual();
  const pairing = await make.pairing({ members: [{ individualId: animal.id, joined: '2020' }] });
  const member = (pairing as unknown as { members: Stay[] }).members[0]?.id ?? '';
  return { id: pairing.id, animal: animal.id, member };
}

/** An animal that left the water a day after it hatched: sooner than any frog. */
async function hasty(): Promise<{ id: string; code: string }> {
  const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
  const animal = await make.individual({ speciesId, hatched: '2020-03-01', outOfWater: '2020-03-02' });
  return { id: animal.id, code: animal.warnings[0]?.code ?? '' };
}

async function crowded(): Promise<{ id: string; code: string }> {
  const { sire, dam } = await trio(make);
  const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-03-01', eggs: 90 });
  return { id: clutch.id, code: clutch.warnings[0]?.code ?? '' };
}

const confirming =
  (resource: string, create: () => Promise<{ id: string; code: string }>) => async (): Promise<Written> => {
    const { id, code } = await create();
    const answer = await api.http
      .post(`/api/v1/${resource}/${id}/warnings/${code}/confirmation`)
      .send({ reason: 'seen it' })
      .expect(201);
    const after = { warnings: [expect.objectContaining({ code, reason: 'seen it' }) as unknown] };
    return { answer, recordId: id, before: { warnings: [] }, after, reason: 'seen it' };
  };

const unconfirming =
  (resource: string, create: () => Promise<{ id: string; code: string }>) => async (): Promise<Written> => {
    const made = await create();
    const { recordId, after } = await confirming(resource, () => Promise.resolve(made))();
    const answer = await api.http
      .delete(`/api/v1/${resource}/${recordId}/warnings/${made.code}/confirmation`)
      .expect(204);
    return { answer, recordId, before: after, after: { warnings: [] } };
  };

let serial = 0;
const unique = (): string => `journal ${++serial}`;

const sheet = (): string =>
  ['species,line,code,source,hatched', `Inventus ${unique()},Line,A-${++serial},S-${serial},2020`].join('\n');

async function importing(): Promise<Written> {
  const answer = await api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet()).expect(201);
  return {
    answer,
    recordId: idIn(answer),
    before: null,
    after: { rows: 1, sheetSha256: expect.stringMatching(/^[0-9a-f]{64}$/) as unknown },
  };
}

/** Every route that writes, and what it must leave behind. */
const scenarios: Readonly<Record<string, Scenario>> = {
  'post /api/v1/species': [
    'added',
    'species',
    adding('species', async () => Promise.resolve({ scientificName: `Inventus ${unique()}`, ranges: [] })),
  ],
  'patch /api/v1/species/{id}': [
    'changed',
    'species',
    changing('species', () => make.species({ commonName: 'one' }), { commonName: 'one' }, { commonName: 'two' }),
  ],
  'post /api/v1/species/{id}/withdrawal': ['withdrawn', 'species', withdrawing('species', () => make.species())],
  'delete /api/v1/species/{id}/withdrawal': ['restored', 'species', restoring('species', () => make.species())],
  'post /api/v1/lines': [
    'added',
    'line',
    adding('lines', async () => ({ name: unique(), speciesId: (await make.species()).id })),
  ],
  'patch /api/v1/lines/{id}': [
    'changed',
    'line',
    changing('lines', () => make.line({ policy: 'one' }), { policy: 'one' }, { policy: 'two' }),
  ],
  'post /api/v1/lines/{id}/withdrawal': ['withdrawn', 'line', withdrawing('lines', () => make.line())],
  'delete /api/v1/lines/{id}/withdrawal': ['restored', 'line', restoring('lines', () => make.line())],
  'post /api/v1/sources': [
    'added',
    'source',
    adding('sources', async () => Promise.resolve({ kind: 'import', date: '1994~' })),
  ],
  'patch /api/v1/sources/{id}': [
    'changed',
    'source',
    changing('sources', () => make.source(), { date: '1994~' }, { date: '1995' }),
  ],
  'post /api/v1/sources/{id}/withdrawal': ['withdrawn', 'source', withdrawing('sources', () => make.source())],
  'delete /api/v1/sources/{id}/withdrawal': ['restored', 'source', restoring('sources', () => make.source())],
  'post /api/v1/individuals': [
    'added',
    'individual',
    adding('individuals', async () => ({ code: unique(), hatched: '2020-03', speciesId: (await make.species()).id })),
  ],
  'patch /api/v1/individuals/{id}': [
    'changed',
    'individual',
    changing('individuals', () => make.individual({ sex: 'male' }), { sex: 'male' }, { sex: 'female' }),
  ],
  'post /api/v1/individuals/{id}/withdrawal': [
    'withdrawn',
    'individual',
    withdrawing('individuals', () => make.individual()),
  ],
  'delete /api/v1/individuals/{id}/withdrawal': [
    'restored',
    'individual',
    restoring('individuals', () => make.individual()),
  ],
  'post /api/v1/individuals/{id}/warnings/{code}/confirmation': [
    'confirmed',
    'individual',
    confirming('individuals', hasty),
  ],
  'delete /api/v1/individuals/{id}/warnings/{code}/confirmation': [
    'unconfirmed',
    'individual',
    unconfirming('individuals', hasty),
  ],
  'post /api/v1/pairings': ['added', 'pairing', adding('pairings', async () => Promise.resolve({ name: unique() }))],
  'patch /api/v1/pairings/{id}': [
    'changed',
    'pairing',
    changing('pairings', () => make.pairing({ notes: 'one' }), { notes: 'one' }, { notes: 'two' }),
  ],
  'post /api/v1/pairings/{id}/withdrawal': ['withdrawn', 'pairing', withdrawing('pairings', () => make.pairing())],
  'delete /api/v1/pairings/{id}/withdrawal': ['restored', 'pairing', restoring('pairings', () => make.pairing())],
  'post /api/v1/pairings/{id}/members': [
    'changed',
    'pairing',
    async () => {
      const [pairing, animal] = [await make.pairing(), await make.individual()];
      const answer = await api.http
        .post(`/api/v1/pairings/${pairing.id}/members`)
        .set('If-Match', '*')
        .send({ individualId: animal.id, joined: '2021' })
        .expect(201);
      return {
        answer,
        recordId: pairing.id,
        before: { members: [] },
        after: {
          members: [expect.objectContaining({ individualId: animal.id, joined: '2021', left: null }) as unknown],
        },
      };
    },
  ],
  'patch /api/v1/pairings/{id}/members/{memberId}': [
    'changed',
    'pairing',
    async () => {
      const { id, animal, member } = await housed();
      const answer = await api.http
        .patch(`/api/v1/pairings/${id}/members/${member}`)
        .set('If-Match', '*')
        .send({ left: '2022' })
        .expect(200);
      const row = { id: member, individualId: animal, joined: '2020' };
      return {
        answer,
        recordId: id,
        before: { members: [{ ...row, left: null }] },
        after: { members: [{ ...row, left: '2022' }] },
      };
    },
  ],
  'delete /api/v1/pairings/{id}/members/{memberId}': [
    'changed',
    'pairing',
    async () => {
      const { id, animal, member } = await housed();
      const answer = await api.http.delete(`/api/v1/pairings/${id}/members/${member}`).set('If-Match', '*').expect(200);
      return {
        answer,
        recordId: id,
        before: { members: [{ id: member, individualId: animal, joined: '2020', left: null }] },
        after: { members: [] },
      };
    },
  ],
  'post /api/v1/clutches': [
    'added',
    'clutch',
    async () => {
      const { sire, dam } = await trio(make);
      const body = {
        laid: '2021-03',
        eggs: 4,
        sires: [{ individualId: sire.id, reason: 'seen' }],
        dams: [{ individualId: dam.id }],
        losses: [{ cause: 'mould', count: 1 }],
      };
      const answer = await api.http.post('/api/v1/clutches').send(body).expect(201);
      const candidates = [
        { role: 'dam', individualId: dam.id, probability: 1, reason: null },
        { role: 'sire', individualId: sire.id, probability: 1, reason: 'seen' },
      ];
      return {
        answer,
        recordId: idIn(answer),
        before: null,
        after: { laid: '2021-03', eggs: 4, losses: body.losses, candidates, pairs: [] },
      };
    },
  ],
  'patch /api/v1/clutches/{id}': [
    'changed',
    'clutch',
    async () => {
      const { sire, dam, other } = await trio(make);
      const clutch = await make.clutchOf(sire.id, dam.id);
      const answer = await api.http
        .patch(`/api/v1/clutches/${clutch.id}`)
        .set('If-Match', '*')
        .send({ sires: [{ individualId: other.id }], losses: [{ cause: 'eaten', count: 2 }] })
        .expect(200);
      const of = (id: string): unknown[] => [
        { role: 'dam', individualId: dam.id, probability: 1, reason: null },
        { role: 'sire', individualId: id, probability: 1, reason: null },
      ];
      return {
        answer,
        recordId: clutch.id,
        before: { candidates: of(sire.id), losses: [] },
        after: { candidates: of(other.id), losses: [{ cause: 'eaten', count: 2 }] },
      };
    },
  ],
  'post /api/v1/clutches/{id}/withdrawal': ['withdrawn', 'clutch', withdrawing('clutches', () => make.clutch())],
  'delete /api/v1/clutches/{id}/withdrawal': ['restored', 'clutch', restoring('clutches', () => make.clutch())],
  'post /api/v1/clutches/{id}/offspring': [
    'raised',
    'clutch',
    async () => {
      const { sire, dam } = await trio(make);
      const clutch = await make.clutchOf(sire.id, dam.id);
      const answer = await api.http
        .post(`/api/v1/clutches/${clutch.id}/offspring`)
        .send({ animals: [{ code: unique() }, {}] })
        .expect(201);
      const young = bodyOf<{ items: { id: string }[] }>(answer).items.map(
        ({ id }) => expect.objectContaining({ individualId: id, version: 1 }) as unknown,
      );
      return { answer, recordId: clutch.id, before: null, after: { young } };
    },
  ],
  'post /api/v1/clutches/{id}/warnings/{code}/confirmation': ['confirmed', 'clutch', confirming('clutches', crowded)],
  'delete /api/v1/clutches/{id}/warnings/{code}/confirmation': [
    'unconfirmed',
    'clutch',
    unconfirming('clutches', crowded),
  ],
  'post /api/v1/observations': [
    'added',
    'observation',
    adding('observations', async () => ({
      kind: 'note',
      text: 'calls',
      observedOn: '2024-05',
      individualId: (await make.individual()).id,
    })),
  ],
  'patch /api/v1/observations/{id}': [
    'changed',
    'observation',
    changing('observations', observed, { text: 'calling' }, { text: 'silent' }),
  ],
  'post /api/v1/observations/{id}/withdrawal': ['withdrawn', 'observation', withdrawing('observations', observed)],
  'delete /api/v1/observations/{id}/withdrawal': ['restored', 'observation', restoring('observations', observed)],
  'post /api/v1/imports': ['imported', 'import', importing],
  'post /api/v1/journal/{id}/reversal': [
    'changed',
    'individual',
    async () => {
      const { answer: changed, recordId } = await changing(
        'individuals',
        () => make.individual({ notes: 'one' }),
        {},
        { notes: 'two' },
      )();
      const answer = await api.http.post(`/api/v1/journal/${changed.headers['journal-entry']}/reversal`).expect(201);
      return { answer, recordId, before: { notes: 'two' }, after: { notes: 'one' } };
    },
  ],
};

/** Questions that are put by POST: they write nothing. */
const questions = ['post /api/v1/lineage/kinship', 'post /api/v1/lineage/figures', 'post /api/v1/lineage/forecast'];

async function entryOf(answer: Response): Promise<StoredEntry | undefined> {
  const entries = await storedEntries(api.dataSource, 'request_id = $1', [answer.headers['x-request-id']]);
  expect(entries).toHaveLength(1);
  return entries[0];
}

describe('a write leaves exactly its entry in the journal', () => {
  it('on every route of the API that writes: each has a case below', async () => {
    const document = bodyOf<OpenAPIObject>(await api.http.get('/api/openapi.json').expect(200));
    const routes = Object.entries(document.paths).flatMap(([path, item]) =>
      Object.keys(item as object)
        .filter((method) => ['post', 'put', 'patch', 'delete'].includes(method))
        .map((method) => `${method} ${path}`),
    );
    expect([...Object.keys(scenarios), ...questions].sort()).toEqual(routes.sort());
  });

  it.each(Object.entries(scenarios))('%s', async (_, [action, kind, perform]) => {
    const { answer, recordId, before, after, reason = null } = await perform();
    const entry = await entryOf(answer);
    expect(entry).toMatchObject({
      id: answer.headers['journal-entry'],
      action,
      kind,
      recordId,
      via: 'token',
      keeper: 'Keeper',
      reason,
    });
    if (before === null) expect(entry?.before).toBeNull();
    else expect(entry?.before).toMatchObject(before);
    expect(entry?.after).toMatchObject(after);
    expect(entry?.after).not.toEqual(entry?.before);
    const version = bodyOf<{ version?: number }>(answer).version;
    if (version !== undefined) expect(entry?.recordVersion).toBe(version);
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
