import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

const change = (path: string, body: object) => api.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body);

describe('a species profile', () => {
  it('is entered with its ranges and read back whole', async () => {
    const species = await make.species({
      scientificName: 'Epipedobates anthonyi',
      commonName: 'Phantasmal poison frog',
      citesAppendix: 'II',
      nativeRange: ['EC', 'PE'],
      ranges: mediumPoisonFrog,
    });
    expect(species).toMatchObject({ citesAppendix: 'II', nativeRange: ['EC', 'PE'] });
    const { keeper } = (await api.http.get('/api/v1/session').expect(200)).body as { keeper: { id: string } };
    expect(species).toMatchObject({ keeperId: keeper.id }); // who wrote it may change it
    expect(species.ranges).toHaveLength(mediumPoisonFrog.length);
    expect(species.ranges.find((range) => range.trait === 'snout-vent-male')).toEqual({
      trait: 'snout-vent-male',
      usualLeast: 25,
      usualMost: 38,
      extremeLeast: null,
      extremeMost: null,
      unit: 'mm',
      source: 'common practice',
    });
    expect((await api.http.get(`/api/v1/species/${species.id}`).expect(200)).body).toEqual(species);
  });

  it('has its ranges replaced as a whole', async () => {
    const species = await make.species({ ranges: mediumPoisonFrog });
    const ranges = [{ trait: 'lifespan', usualMost: 9, source: 'common practice' }];
    expect((await change(`species/${species.id}`, { ranges }).expect(200)).body).toMatchObject({
      ranges: [{ trait: 'lifespan', usualMost: 9 }],
    });
    expect((await change(`species/${species.id}`, { commonName: 'x' }).expect(200)).body).toMatchObject({
      ranges: [{ trait: 'lifespan' }],
    });
    expect((await change(`species/${species.id}`, { ranges: [] }).expect(200)).body).toMatchObject({ ranges: [] });
  });

  it('is there once, whatever the case of its name', async () => {
    await make.species({ scientificName: 'Ranitomeya amazonica' });
    const answer = await api.http.post('/api/v1/species').send({ scientificName: 'RANITOMEYA amazonica' }).expect(409);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/scientificName' }] });
  });

  it('is found by any part of its names, in pages by name', async () => {
    for (const name of ['Zzz tertius', 'zzz primus', 'Zzz secundus']) await make.species({ scientificName: name });
    await make.species({ scientificName: 'Other quartus', commonName: 'the zzz frog' });
    const first = await api.http.get('/api/v1/species?q=ZZZ&limit=2&total=true').expect(200);
    expect(first.body).toMatchObject({
      total: 4,
      items: [{ scientificName: 'Other quartus' }, { scientificName: 'zzz primus' }],
    });
    const next = (first.body as { next: string }).next;
    const second = await api.http.get(`/api/v1/species?q=ZZZ&limit=2&after=${next}`).expect(200);
    expect(second.body).toMatchObject({
      next: null,
      items: [{ scientificName: 'Zzz secundus' }, { scientificName: 'Zzz tertius' }],
    });
  });
});

describe('a line', () => {
  it('counts its animals, and those alive', async () => {
    const line = await make.line({ name: 'Quebrada Honda', policy: 'no outcross before 2030' });
    expect(line).toMatchObject({
      labelKind: 'locality',
      policy: 'no outcross before 2030',
      counts: { animals: 0, alive: 0 },
    });
    const of = { speciesId: line.speciesId, lineId: line.id };
    const [, , third] = await make.individuals(of, { ...of, died: '2020' }, of);
    await api.http
      .post(`/api/v1/individuals/${third?.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'test' })
      .expect(201);
    expect((await api.http.get(`/api/v1/lines/${line.id}`).expect(200)).body).toMatchObject({
      counts: { animals: 2, alive: 1 },
    });
    expect((await api.http.get(`/api/v1/lines?speciesId=${line.speciesId}&total=true`)).body).toMatchObject({
      total: 1,
      items: [{ counts: { animals: 2 } }],
    });
  });

  it('has a name of its own within the species', async () => {
    const line = await make.line({ name: 'Rio Claro' });
    const again = { speciesId: line.speciesId, name: 'rio claro' };
    expect((await api.http.post('/api/v1/lines').send(again).expect(409)).body).toMatchObject({
      errors: [{ pointer: '/name' }],
    });
    await make.line({ name: 'Rio Claro' });
    const answer = await api.http
      .post('/api/v1/lines')
      .send({ ...again, speciesId: '00000000-0000-7000-8000-000000000000' })
      .expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: '/speciesId' }] });
  });
});

describe('a source', () => {
  it('is entered, with what people call it and how many came of it', async () => {
    const fields = {
      code: 'S-1',
      kind: 'wild-collection',
      date: '1993/1996',
      receivedFrom: 'a wholesaler',
      receivedBy: 'a pet shop',
      countryOfExport: 'EC',
      permitReferences: ['EC-1994-17'],
      labelAsReceived: 'Quebrada Honda',
      labelNote: 'by word',
      baseKinship: 0.125,
      notes: 'twelve animals',
    };
    const source = await make.source(fields);
    expect(source).toMatchObject({ ...fields, title: 'Wild collection, 1993 to 1996', founders: 0 });
    await make.individual({ sourceId: source.id });
    expect((await api.http.get(`/api/v1/sources/${source.id}`)).body).toMatchObject({ founders: 1 });
    expect((await change(`sources/${source.id}`, { date: null, baseKinship: 0 }).expect(200)).body).toMatchObject({
      title: 'Wild collection',
      date: null,
      baseKinship: 0,
    });
  });

  it('is listed by its date, vague ones at their earliest, undated ones last', async () => {
    for (const date of [null, '1999', '199X', '../1980', '1999-03-01', '1999/..'])
      await make.source({ date, labelAsReceived: 'sorted' });
    const dates: unknown[] = [];
    for (let after = ''; ;) {
      const answer = await api.http.get(`/api/v1/sources?q=SORTED&limit=2${after}`).expect(200);
      const page = answer.body as { items: { date: string | null }[]; next: string | null };
      dates.push(...page.items.map((item) => item.date));
      if (page.next === null) break;
      after = `&after=${page.next}`;
    }
    expect(dates.slice(0, 2)).toEqual(['../1980', '199X']);
    expect(new Set(dates.slice(2, 4))).toEqual(new Set(['1999', '1999/..']));
    expect(dates.slice(4)).toEqual(['1999-03-01', null]);
  });
});

describe('an observation', () => {
  it('is about exactly one record that stands, and says something', async () => {
    const { id: individualId } = await make.individual();
    const { id: sourceId } = await make.source();
    const base = { kind: 'note', observedOn: '2024', text: 'calls' };
    const post = (body: object) => api.http.post('/api/v1/observations').send(body);
    expect((await post(base).expect(422)).body).toMatchObject({ errors: [{ pointer: '/individualId' }] });
    await post({ ...base, individualId, sourceId }).expect(422);
    const missing = await post({ ...base, clutchId: '00000000-0000-7000-8000-000000000000' }).expect(422);
    expect(missing.body).toMatchObject({ errors: [{ pointer: '/clutchId' }] });
    const silent = await post({ ...base, text: null, individualId }).expect(422);
    expect(silent.body).toMatchObject({
      errors: [{ pointer: '/text', detail: expect.stringMatching(/needs a text/) as string }],
    });
    for (const [name, id] of [
      ['individualId', individualId],
      ['sourceId', sourceId],
      ['pairingId', (await make.pairing()).id],
      ['clutchId', (await make.clutch()).id],
    ] as const)
      expect((await post({ ...base, [name]: id }).expect(201)).body).toMatchObject({
        [name]: id,
        keeper: 'Keeper',
        observedOn: '2024',
      });
  });

  it('is listed newest first, by what it is about', async () => {
    const { id: individualId } = await make.individual();
    for (const observedOn of ['2021', '2023-05-01', '2022-12~']) await make.observation({ individualId, observedOn });
    await make.observation({ individualId, observedOn: '2020', kind: 'health', text: 'thin' });
    const page = await api.http.get(`/api/v1/observations?individualId=${individualId}&limit=3&total=true`).expect(200);
    const body = page.body as { items: { observedOn: string }[]; next: string; total: number };
    expect(body.total).toBe(4);
    expect(body.items.map((item) => item.observedOn)).toEqual(['2023-05-01', '2022-12~', '2021']);
    const rest = await api.http
      .get(`/api/v1/observations?individualId=${individualId}&limit=3&after=${body.next}`)
      .expect(200);
    expect(rest.body).toMatchObject({ next: null, items: [{ observedOn: '2020' }] });
    expect((await api.http.get(`/api/v1/observations?individualId=${individualId}&kind=health`)).body).toMatchObject({
      items: [{ text: 'thin' }],
    });
  });
});

describe('the club', () => {
  it('shows its name, whether it is invented, and whether strangers may read', async () => {
    const answer = await api.http.get('/api/v1/club').expect(200);
    expect(answer.body).toEqual({
      version: 1,
      name: 'My register',
      demo: false,
      publicReading: false,
    });
  });

  it('lists its keepers by name, in pages', async () => {
    await api.dataSource.query(`insert into keeper (name) values ('zoe Kaltwasser'), ('Ansgar Teichmann')`);
    const first = await api.http.get('/api/v1/keepers?limit=2&total=true').expect(200);
    expect(first.body).toMatchObject({ total: 3, items: [{ name: 'Ansgar Teichmann' }, { name: 'Keeper' }] });
    const second = await api.http
      .get(`/api/v1/keepers?limit=2&after=${(first.body as { next: string }).next}`)
      .expect(200);
    expect(second.body).toMatchObject({ items: [{ name: 'zoe Kaltwasser' }], next: null });
  });
});
