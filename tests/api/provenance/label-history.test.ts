import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LabelHistoryView } from '../../../api/provenance/label-history/label-history.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { LineView } from '../../../api/register/lines/line.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { setPublicReading } from '../people/route-world.ts';

let api: TestApi;
let keeper: TestKeeper;
let registrar: TestKeeper;
let make: Factory;
let animal: IndividualView;
let first: LineView;
let second: LineView;

const historyOf = async (who: TestKeeper['http'], path: string): Promise<LabelHistoryView> =>
  (await who.get(`/api/v1/${path}/label-history`).expect(200)).body as LabelHistoryView;

const told = ({ events }: LabelHistoryView): (string | null)[][] =>
  events.map(({ event, label, before, who }) => [event, before, label, who]);

const change = (path: string, body: object) =>
  keeper.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200);

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Kim');
  registrar = await api.addKeeper('Ria', ['registrar']);
  make = new Factory(keeper.http);
  first = await make.line({ name: 'Zaruma' });
  second = await make.line({ name: 'Santa Isabel', speciesId: first.speciesId });
  const source = await make.source({
    labelAsReceived: 'Santa Isabell',
    receivedFrom: 'an importer',
    date: '1994~',
    visibility: 'public',
  });
  const sourceId = source.id;
  animal = await make.individual({ speciesId: first.speciesId, lineId: first.id, sourceId, visibility: 'public' });
  await change(`lines/${first.id}`, { name: 'Zaruma, old' });
  await change(`individuals/${animal.id}`, { lineId: second.id });
  await change(`individuals/${animal.id}`, { notes: 'calls in the morning' });
  const claim = await make.claim({ sourceId, value: 'Sta. Isabel', statedBy: 'the importer' });
  await change(`claims/${claim.id}`, { value: 'Santa Isabel' });
  const paper = await make.evidence({ claimId: claim.id, kind: 'export-permit', reference: 'EC-17' });
  await registrar.http
    .post(`/api/v1/evidence/${paper.id}/review`)
    .set('If-Match', '*')
    .send({ verdict: 'accepted', reason: 'names the place' })
    .expect(201);
  const wrong = await make.claim({ individualId: animal.id, value: 'Loja' });
  await keeper.http
    .post(`/api/v1/claims/${wrong.id}/withdrawal`)
    .set('If-Match', '*')
    .send({ reason: 'a mix-up' })
    .expect(201);
  await setPublicReading(api, true);
});

afterAll(() => api.close());

describe('the history of the label of an animal', () => {
  it('tells what it came as, under which line it was entered, and all that changed, oldest first', async () => {
    const history = await historyOf(keeper.http, `individuals/${animal.id}`);
    expect(history.present).toEqual({ name: 'Santa Isabel', kind: 'locality' });
    expect(told(history)).toEqual([
      ['received', null, 'Santa Isabell', 'an importer'],
      ['entered', null, 'Zaruma', 'Kim'],
      ['line-renamed', 'Zaruma', 'Zaruma, old', 'Kim'],
      ['line-changed', 'Zaruma, old', 'Santa Isabel', 'Kim'],
      ['claimed', null, 'Sta. Isabel', 'the importer'],
      ['claim-changed', 'Sta. Isabel', 'Santa Isabel', 'Kim'],
      ['evidence-accepted', null, 'Santa Isabel', 'Ria'],
      ['claimed', null, 'Loja', 'Kim'],
      ['claim-withdrawn', null, 'Loja', null],
    ]);
    expect(history.events[0]).toMatchObject({ date: '1994~', at: null, record: { kind: 'source' } });
    expect(history.events.at(-1)).toMatchObject({ reason: 'a mix-up', record: { kind: 'claim' } });
    expect(history.isCut).toBe(false);
  });

  it('is found by registry number too, and is missing where there is no such animal', async () => {
    expect(told(await historyOf(keeper.http, `individuals/${animal.number}`))).toHaveLength(9);
    await keeper.http.get('/api/v1/individuals/1-1/label-history').expect(404);
    await keeper.http.get('/api/v1/individuals/nobody/label-history').expect(404);
  });

  it('names nobody to strangers, and tells them of what was public then', async () => {
    const history = await historyOf(api.stranger, `individuals/${animal.id}`);
    expect(told(history)).toEqual([
      ['received', null, 'Santa Isabell', null],
      ['entered', null, 'Zaruma, old', null],
      ['line-changed', 'Zaruma, old', 'Santa Isabel', null],
      ['claimed', null, 'Santa Isabel', null],
      ['claimed', null, 'Loja', null],
      ['claim-withdrawn', null, 'Loja', null],
    ]);
    expect(history.events.every(({ reason }) => reason === null)).toBe(true);
  });

  it('keeps a state that was private from those who may see the animal now', async () => {
    const hidden = await make.individual({ speciesId: first.speciesId, lineId: first.id, visibility: 'private' });
    await change(`individuals/${hidden.id}`, { lineId: null });
    await change(`individuals/${hidden.id}`, { visibility: 'club' });
    await change(`individuals/${hidden.id}`, { lineId: second.id });
    const other = await api.addKeeper('Olu');
    expect(told(await historyOf(keeper.http, `individuals/${hidden.id}`))).toHaveLength(3);
    expect(told(await historyOf(other.http, `individuals/${hidden.id}`))).toEqual([
      ['entered', null, null, 'Kim'],
      ['line-changed', null, 'Santa Isabel', 'Kim'],
    ]);
    await other.http
      .get(`/api/v1/individuals/${(await make.individual({ visibility: 'private' })).id}/label-history`)
      .expect(404);
  });

  it('of one that was raised or brought by a sheet begins with the line that it was entered under', async () => {
    const sheet = 'code,species,line,label\nSH-1,Inventus sheet,Pangua,Pangua\n';
    await keeper.http.post('/api/v1/imports').type('text/csv').send(sheet).expect(201);
    const [brought] = await api.dataSource.query<{ id: string }[]>(`select id from individual where code = 'SH-1'`);
    await change(`individuals/${brought?.id}`, { lineId: null });
    expect(told(await historyOf(keeper.http, `individuals/${brought?.id}`))).toEqual([
      ['received', null, 'Pangua', null],
      ['entered', null, 'Pangua', 'Kim'],
      ['line-changed', 'Pangua', null, 'Kim'],
    ]);
  });
});

describe('the history of the label of a line', () => {
  it('tells under which labels its founders came, and what it was called', async () => {
    expect(told(await historyOf(keeper.http, `lines/${second.id}`))).toEqual([
      ['received', null, 'Santa Isabell', 'an importer'],
      ['entered', null, 'Santa Isabel', 'Kim'],
      ['claimed', null, 'Sta. Isabel', 'the importer'],
      ['claim-changed', 'Sta. Isabel', 'Santa Isabel', 'Kim'],
      ['evidence-accepted', null, 'Santa Isabel', 'Ria'],
    ]);
    const renamed = await historyOf(keeper.http, `lines/${first.id}`);
    expect(renamed.events.map(({ event, label }) => [event, label])).toEqual([
      ['entered', 'Zaruma'],
      ['line-renamed', 'Zaruma, old'],
    ]);
    await keeper.http.get('/api/v1/lines/nowhere/label-history').expect(404);
  });
});
