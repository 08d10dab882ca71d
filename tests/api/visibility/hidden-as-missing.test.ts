import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import type { Logger } from 'typeorm';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { currentRequest } from '../../../api/platform/acting.ts';
import { newId } from '../../../api/platform/ids.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { madePdf } from '../../support/made-pdf.ts';
import { makeSecretRegister, setPublicReading, type SecretRegister } from './secret-register.ts';

let api: TestApi;
let register: SecretRegister;
/** The statements that were run, and for which request: the service's own work, such as sealing the journal, goes on beside. */
let statements: [requestId: string | undefined, text: string][] = [];

beforeAll(async () => {
  api = await startApi();
  register = await makeSecretRegister(api);
  await setPublicReading(api, true);
  const silent = (): void => undefined;
  const logger: Logger = {
    logQuery: (query) => void statements.push([currentRequest()?.requestId, query]),
    logQueryError: silent,
    logQuerySlow: silent,
    logSchemaBuild: silent,
    logMigration: silent,
    log: silent,
  };
  api.dataSource.setOptions({ logging: true, logger });
  // the lineage is read once, by whoever comes first
  await api.http.get(`/api/v1/individuals/${register.ids['the club young']}/lineage`).expect(200);
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));

afterAll(() => api.close());

/** An answer and what the database was asked for it; `named` is put out of both. */
async function answerTo(request: PromiseLike<Response>, named: string): Promise<{ told: object; asked: string[] }> {
  statements = [];
  const { status, headers, text } = await request;
  const plain = (value: string): string =>
    value.replaceAll(named, 'NAMED').replaceAll(encodeURIComponent(named), 'NAMED');
  const said = headers as Record<string, string>;
  // the clock, the number of the request, and what follows from the length of the name
  const shown = Object.entries(said).filter(
    ([header]) => !['date', 'x-request-id', 'content-length', 'etag'].includes(header),
  );
  const id = said['x-request-id'];
  return {
    told: { status, text: plain(text), headers: plain(JSON.stringify(shown)) },
    asked: statements.flatMap(([request, statement]) => (request === id ? [plain(statement)] : [])),
  };
}

const noStay = newId();

type Ask = (http: TestAgent, name: string) => PromiseLike<Response>;

const kinds = {
  individuals: ['the private sire', 'the private withdrawn animal', 'the imported animal'],
  sources: ['the private source'],
  clutches: ['the private clutch'],
  pairings: ['the private pairing'],
  observations: ["the owner's own remark", 'a remark on a private animal', 'a remark on a private source'],
  claims: ['the claim of the private source'],
  evidence: ['the evidence of the private source'],
  photographs: ['the photograph of the private sire'],
  acknowledgements: ['the acknowledged flag of the private sire'],
  imports: ['the import'],
};
const changed = (path: string, body: object): Ask[] => [
  (http, id) => http.patch(`/api/v1/${path}/${id}`).set('If-Match', '"1"').send(body),
  (http, id) => http.post(`/api/v1/${path}/${id}/withdrawal`).set('If-Match', '"1"').send({ reason: 'a try' }),
  (http, id) => http.delete(`/api/v1/${path}/${id}/withdrawal`).set('If-Match', '"1"'),
];
const read =
  (path: string): Ask =>
  (http, id) =>
    http.get(`/api/v1/${path.replace('{id}', id)}`);

const routes: Record<keyof typeof kinds, Ask[]> = {
  individuals: [
    ...['', '/lineage', '/pedigree', '/descendants', '/mates'].map((of) => read(`individuals/{id}${of}`)),
    ...changed('individuals', { notes: 'a try' }),
    (http, id) => http.post(`/api/v1/individuals/${id}/warnings/size/confirmation`).send({ reason: 'a try' }),
    (http, id) => http.delete(`/api/v1/individuals/${id}/warnings/size/confirmation`),
  ],
  sources: [read('sources/{id}'), ...changed('sources', { notes: 'a try' })],
  clutches: [
    read('clutches/{id}'),
    ...changed('clutches', { notes: 'a try' }),
    (http, id) => http.post(`/api/v1/clutches/${id}/offspring`).send({ count: 1 }),
    (http, id) => http.post(`/api/v1/clutches/${id}/warnings/no-eggs/confirmation`).send({ reason: 'a try' }),
  ],
  pairings: [
    ...['pairings/{id}', 'pairings/{id}/parent-corrections'].map(read),
    ...changed('pairings', { notes: 'a try' }),
    (http, id) =>
      http
        .post(`/api/v1/pairings/${id}/members`)
        .set('If-Match', '"1"')
        .send({ individualId: register.ids['the club young'] }),
    (http, id) => http.delete(`/api/v1/pairings/${id}/members/${noStay}`).set('If-Match', '"1"'),
  ],
  observations: [read('observations/{id}'), ...changed('observations', { text: 'a try' })],
  claims: [read('claims/{id}'), ...changed('claims', { notes: 'a try' })],
  evidence: [
    ...['evidence/{id}', 'evidence/{id}/file'].map(read),
    ...changed('evidence', { notes: 'a try' }),
    (http, id) => http.put(`/api/v1/evidence/${id}/file`).set('If-Match', '"1"').attach('file', madePdf(), 'a.pdf'),
  ],
  photographs: [
    ...['photographs/{id}', 'photographs/{id}/file', 'photographs/{id}/file?size=small'].map(read),
    ...changed('photographs', { notes: 'a try' }),
  ],
  acknowledgements: [read('acknowledgements/{id}')],
  imports: [
    read('imports/{id}'),
    (http, id) => http.post(`/api/v1/imports/${id}/withdrawal`).send({ reason: 'a try' }),
    (http, id) => http.delete(`/api/v1/imports/${id}/withdrawal`),
  ],
};

describe('a record that may not be seen', () => {
  it.each(Object.keys(kinds) as (keyof typeof kinds)[])(
    'answers at every address of its own as one that does not exist, by the same statements: %s',
    async (kind) => {
      const { http } = register.other;
      for (const name of kinds[kind])
        for (const ask of routes[kind]) {
          const [id, none] = [register.ids[name] ?? '', newId()];
          const hidden = await answerTo(ask(http, id), id);
          const missing = await answerTo(ask(http, none), none);
          expect(hidden).toEqual(missing);
          expect(hidden.told).toMatchObject({ status: 404 });
        }
    },
  );

  it('does so to a stranger as well', async () => {
    for (const [kind, path] of [
      ['the club young', 'individuals/{id}'],
      ['the club young', 'individuals/{id}/pedigree'],
      ['the club young', 'individuals/{id}/descendants'],
      ['the private source', 'sources/{id}'],
      ['a remark for the club', 'observations/{id}'],
    ] as const) {
      const [id, none] = [register.ids[kind] ?? '', newId()];
      const hidden = await answerTo(read(path)(api.stranger, id), id);
      expect(hidden).toEqual(await answerTo(read(path)(api.stranger, none), none));
      expect(hidden.told).toMatchObject({ status: 404 });
    }
  });

  const speciesOf = async (): Promise<string> => {
    const answer = await api.http.get(`/api/v1/individuals/${register.ids['the club young']}`);
    return (answer.body as { speciesId: string }).speciesId;
  };
  const young = (): string => register.ids['the club young'] ?? '';
  const naming: Record<
    string,
    [kind: string, ask: (http: TestAgent, name: string, speciesId: string) => PromiseLike<Response>]
  > = {
    'as the source of an animal': [
      'the private source',
      (http, sourceId, speciesId) => http.post('/api/v1/individuals').send({ speciesId, sourceId }),
    ],
    'as the clutch of an animal': [
      'the private clutch',
      (http, clutchId, speciesId) => http.post('/api/v1/individuals').send({ speciesId, clutchId }),
    ],
    'as the pairing of a clutch': [
      'the private pairing',
      (http, pairingId) => http.post('/api/v1/clutches').send({ pairingId }),
    ],
    'as a parent of a clutch': [
      'the private sire',
      (http, individualId) => http.post('/api/v1/clutches').send({ sires: [{ individualId }] }),
    ],
    'in a pair': ['the private sire', (http, a) => http.post('/api/v1/clutches').send({ pairs: [{ a, b: young() }] })],
    'as a member of a pairing': [
      'the private sire',
      (http, individualId) => http.post('/api/v1/pairings').send({ name: 'A try', members: [{ individualId }] }),
    ],
    'in a remark on an animal': [
      'the private sire',
      (http, individualId) =>
        http.post('/api/v1/observations').send({ individualId, kind: 'note', observedOn: '2024', text: 'a' }),
    ],
    'in a remark on a clutch': [
      'the private clutch',
      (http, clutchId) =>
        http.post('/api/v1/observations').send({ clutchId, kind: 'note', observedOn: '2024', text: 'a' }),
    ],
    'in a remark on a pairing': [
      'the private pairing',
      (http, pairingId) =>
        http.post('/api/v1/observations').send({ pairingId, kind: 'note', observedOn: '2024', text: 'a' }),
    ],
    'among animals whose kinship is asked': [
      'the private sire',
      (http, id) => http.post('/api/v1/lineage/kinship').send({ individuals: [id, young()] }),
    ],
    'among animals whose figures are asked': [
      'the private sire',
      (http, id) => http.post('/api/v1/lineage/figures').send({ individuals: [id] }),
    ],
    'as a mate in a forecast': [
      'the private sire',
      (http, id) => http.post('/api/v1/lineage/forecast').send({ sires: [id], dams: [young()] }),
    ],
    'as a common ancestor whose loops are asked': [
      'the private sire',
      (http, id) => http.get(`/api/v1/individuals/${young()}/lineage/loops?commonAncestor=${id}`),
    ],
    'as a clutch with an unknown parent whose loops are asked': [
      'the private clutch',
      (http, id) => http.get(`/api/v1/individuals/${young()}/lineage/loops?commonAncestor=${id}`),
    ],
    'as a source whose loops are asked': [
      'the private source',
      (http, id) => http.get(`/api/v1/individuals/${young()}/lineage/loops?commonAncestor=${id}`),
    ],
    'as a parent in a sheet': [
      'the private sire',
      (http, sire) =>
        http
          .post('/api/v1/imports?dryRun=true')
          .set('Content-Type', 'text/csv')
          .send(`code,species,sire\nNEW-1,Inventus species1,${sire}\n`),
    ],
  };

  it.each(Object.keys(naming))('is refused %s as one that does not exist, by the same statements', async (where) => {
    const [kind, ask] = naming[where] ?? ['', () => Promise.reject(new Error('no such case'))];
    const speciesId = await speciesOf();
    const { http } = register.other;
    const named: [string, string][] = [[register.ids[kind] ?? '', newId()]];
    if (register.numbers[kind] !== undefined) named.push([register.numbers[kind], formatRegistryNumber(999_999)]);
    for (const [id, none] of named) {
      const hidden = await answerTo(ask(http, id, speciesId), id);
      expect(hidden).toEqual(await answerTo(ask(http, none, speciesId), none));
      expect(hidden.told).toMatchObject({ status: 422 });
    }
  });

  it('changes nothing that others read when it changes itself', async () => {
    const { http } = register.other;
    const addresses = [
      'individuals?total=true',
      'sources?total=true',
      'clutches?total=true',
      'pairings?total=true',
      'observations?total=true',
      'lines?total=true',
      'imports?total=true',
      'journal?total=true',
      `individuals/${young()}`,
      `individuals/${register.ids['the club dam']}`,
      `individuals/${young()}/pedigree`,
      `individuals/${young()}/descendants`,
      `clutches/${register.ids['the mixed clutch']}`,
      `pairings/${register.ids['the mixed pairing']}`,
    ];
    const readAll = async (): Promise<unknown[]> => {
      const answers = [];
      for (const address of addresses) {
        const answer = await http.get(`/api/v1/${address}`).expect(200);
        answers.push([address, (answer.headers as Record<string, string>)['etag'], withoutSeals(answer.body)]);
      }
      return answers;
    };
    const before = await readAll();
    const change = (path: string, body: object) =>
      register.owner.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200);
    const { ids } = register;
    await change(`individuals/${ids['the young private sire']}`, {
      code: 'OTHER',
      hatched: '2001-07-29',
      status: 'gone',
    });
    await change(`individuals/${ids['the private young']}`, { sex: 'male', notes: 'other', lineId: null });
    await change(`sources/${ids['the private source']}`, { date: '1955', labelNote: 'other', kind: 'purchase' });
    await change(`observations/${ids["the owner's own remark"]}`, { text: 'other', svlMm: 12 });
    await register.owner.http
      .post('/api/v1/observations')
      .send({ individualId: ids['the club dam'], kind: 'note', observedOn: '2024', text: 'new', visibility: 'private' })
      .expect(201);
    expect(await readAll()).toEqual(before);
  });
});

/** Seals follow by themselves a moment after each entry. */
function withoutSeals(body: unknown): unknown {
  return JSON.parse(JSON.stringify(body, (key, value: unknown) => (key === 'seal' ? undefined : value)));
}
