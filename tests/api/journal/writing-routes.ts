import { expect } from 'vitest';
import type { Response } from 'supertest';
import type { DataSource } from 'typeorm';
import type { KeptForm } from '../../../api/platform/journal-entry.ts';
import type { TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

/** Says on which service the cases run. */
export function runOn(service: TestApi, factory: Factory): void {
  api = service;
  make = factory;
}

/** What a write must leave in the journal: the fields that it sent, before and after. */
export interface Written {
  readonly answer: Response;
  readonly recordId: string | null;
  readonly before: KeptForm | null;
  readonly after: KeptForm | null;
  readonly reason?: string;
  /** Kinds of the records that the request added besides, which have an entry each. */
  readonly others?: readonly string[];
  /** Whose name stands beside it; "Keeper" by a token, if not given. */
  readonly by?: { readonly keeper: string | null; readonly via: string };
  /** Where the entry is, if elsewhere than in the register of the test. */
  readonly dataSource?: DataSource;
}

export type Scenario = readonly [action: string, kind: string, perform: () => Promise<Written>];

export const idIn = (answer: Response): string => bodyOf<{ id: string }>(answer).id;

/** Adds a record: nothing was there before. */
export const adding =
  (resource: string, body: () => Promise<object>, after: KeptForm = {}) =>
  async (): Promise<Written> => {
    const sent = await body();
    const answer = await api.http.post(`/api/v1/${resource}`).send(sent).expect(201);
    return { answer, recordId: idIn(answer), before: null, after: Object.keys(after).length > 0 ? after : { ...sent } };
  };

/** Changes a field of a fresh record. */
export const changing =
  (resource: string, create: () => Promise<{ id: string }>, before: KeptForm, after: KeptForm) =>
  async (): Promise<Written> => {
    const { id } = await create();
    const answer = await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(after).expect(200);
    return { answer, recordId: id, before, after };
  };

export const withdrawing = (resource: string, create: () => Promise<{ id: string }>) => async (): Promise<Written> => {
  const { id } = await create();
  const answer = await api.http
    .post(`/api/v1/${resource}/${id}/withdrawal`)
    .set('If-Match', '*')
    .send({ reason: 'a mistake' })
    .expect(201);
  const [before, after] = [{ withdrawnReason: null }, { withdrawnReason: 'a mistake' }];
  return { answer, recordId: id, before, after, reason: 'a mistake' };
};

export const restoring = (resource: string, create: () => Promise<{ id: string }>) => async (): Promise<Written> => {
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
export const unique = (): string => `journal ${++serial}`;

export const sheet = (): string =>
  ['species,line,code,source,hatched', `Inventus ${unique()},Line,A-${++serial},S-${serial},2020`].join('\n');

export async function importing(): Promise<Written> {
  const answer = await api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet()).expect(201);
  return {
    answer,
    recordId: idIn(answer),
    before: null,
    after: { rows: 1, sheetSha256: expect.stringMatching(/^[0-9a-f]{64}$/) as unknown },
  };
}

/** Every route that changes records of the register, and what it must leave behind. */
export const registerRoutes = (): Readonly<Record<string, Scenario>> => ({
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
  'post /api/v1/individuals/changes': [
    'changed-together',
    'change_together',
    async () => {
      const animals = [await make.individual(), await make.individual()];
      const answer = await api.http
        .post('/api/v1/individuals/changes')
        .send({ animals: animals.map(({ id, version }) => ({ id, version })), fields: { sex: 'male' } })
        .expect(201);
      return {
        answer,
        recordId: expect.any(String) as unknown as string,
        before: null,
        after: { animals: 2, fields: ['sex'] },
        others: ['individual', 'individual'],
      };
    },
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
});
