import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchItemView, ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let sire: IndividualView;
let dam: IndividualView;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  ({ sire, dam } = await trio(make));
});

afterAll(() => api.close());

const get = async (id: string): Promise<ClutchView> =>
  (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;
const change = async (id: string, body: object): Promise<ClutchView> =>
  (await api.http.patch(`/api/v1/clutches/${id}`).set('If-Match', '*').send(body).expect(200)).body as ClutchView;
const laid = (fields: object = {}) => make.clutchOf(sire.id, dam.id, { laid: '2026-10-01', eggs: 10, ...fields });

describe('a clutch is told how far it is', () => {
  it.each([
    ['eggs that nobody counted since', {}, 'egg'],
    ['eggs of which some were lost', { losses: [{ cause: 'mould', count: 9 }] }, 'egg'],
    ['eggs that were all lost', { losses: [{ cause: 'mould', count: 10 }] }, 'ended'],
    ['eggs of which none hatched', { hatched: 0 }, 'ended'],
    ['tadpoles', { hatched: 6 }, 'water'],
    ['tadpoles whose day of hatching is all that is known', { hatchedOn: '2026-10-12' }, 'water'],
    ['tadpoles after losses among the eggs only', { hatched: 6, losses: [{ cause: 'mould', count: 4 }] }, 'water'],
    ['tadpoles that were all lost', { hatched: 6, losses: [{ cause: 'unknown', count: 10 }] }, 'ended'],
    ['froglets and tadpoles', { hatched: 6, outOfWater: 5 }, 'water'],
    ['froglets', { hatched: 6, outOfWater: 6 }, 'out'],
    [
      'froglets, the other tadpoles lost',
      { hatched: 6, outOfWater: 4, losses: [{ cause: 'unknown', count: 6 }] },
      'out',
    ],
  ])('%s', async (_what, fields, stage) => {
    const clutch = await laid(fields);
    expect(clutch.stage).toBe(stage);
  });

  it('by the young raised from it, and anew once that is undone', async () => {
    const clutch = await laid({ hatched: 2 });
    const [first] = await make.offspring(clutch.id, { count: 2 });
    expect((await get(clutch.id)).stage).toBe('out');
    const withdrawn = { reason: 'counted twice' };
    await api.http.post(`/api/v1/individuals/${first?.id}/withdrawal`).set('If-Match', '*').send(withdrawn).expect(201);
    expect((await get(clutch.id)).stage).toBe('water');
  });

  it('anew when counts and losses change, also by undoing', async () => {
    const clutch = await laid();
    const answer = await api.http
      .patch(`/api/v1/clutches/${clutch.id}`)
      .set('If-Match', '*')
      .send({ losses: [{ cause: 'eaten', count: 10 }] })
      .expect(200);
    expect(answer.body).toMatchObject({ stage: 'ended' });
    await api.http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`).send({}).expect(201);
    expect((await get(clutch.id)).stage).toBe('egg');
    expect(await change(clutch.id, { hatched: 7, hatchedOn: '2026-10-13' })).toMatchObject({ stage: 'water' });
  });
});

describe('the day of hatching', () => {
  it('is taken back by undoing, and refused where it cannot be', async () => {
    const clutch = await laid();
    const hatched = await api.http
      .patch(`/api/v1/clutches/${clutch.id}`)
      .set('If-Match', '*')
      .send({ hatched: 7, hatchedOn: '2026-10-13' })
      .expect(200);
    await api.http.post(`/api/v1/journal/${hatched.headers['journal-entry']}/reversal`).send({}).expect(201);
    expect(await get(clutch.id)).toMatchObject({ hatched: null, hatchedOn: null });
    const refused = (body: object) =>
      api.http.patch(`/api/v1/clutches/${clutch.id}`).set('If-Match', '*').send(body).expect(422);
    expect((await refused({ hatchedOn: '2026-09-30' })).body).toMatchObject({
      errors: [{ pointer: '/hatchedOn', detail: 'Eggs cannot hatch before they were laid. Check both dates.' }],
    });
    expect((await refused({ hatched: 0, hatchedOn: '2026-10-13' })).body).toMatchObject({
      errors: [{ pointer: '/hatchedOn' }],
    });
  });
});

describe('what is expected of a clutch next', () => {
  it('follows from the profile of its species: ten to eighteen days in the egg', async () => {
    expect((await laid({ laid: '2026-10-01' })).expected).toMatchObject({
      event: 'hatching',
      since: '2026-10-01',
      from: '2026-10-11',
      to: '2026-10-19',
      countedFrom: 'laying',
    });
    expect((await laid({ laid: '2026-10' })).expected).toMatchObject({ from: '2026-10-11', to: '2026-11-18' });
  });

  it('counts seventy to hundred and ten days in the water from the hatching, else from the laying', async () => {
    expect((await laid({ hatchedOn: '2026-10-12' })).expected).toMatchObject({
      event: 'leaving-water',
      since: '2026-10-12',
      from: '2026-12-21',
      to: '2027-01-30',
      countedFrom: 'hatching',
    });
    expect((await laid({ hatched: 5 })).expected).toMatchObject({
      event: 'leaving-water',
      from: '2026-12-20',
      to: '2027-02-06',
      countedFrom: 'laying',
    });
  });

  it('is nothing where the dates, the profile, or the stage do not say', async () => {
    const { id: speciesId } = await make.species();
    const [alone] = await make.individuals({ speciesId });
    const sires = [{ individualId: alone?.id }];
    expect((await laid({ laid: null })).expected).toBeNull();
    expect((await laid({ laid: '2026-10/..' })).expected).toBeNull();
    expect((await make.clutch({ sires, laid: '2026-10-01' })).expected).toBeNull();
    expect((await laid({ hatched: 3, outOfWater: 3 })).expected).toBeNull();
  });
});

describe('clutches are listed', () => {
  it('by stage, and by the line of a parent or a young', async () => {
    const list = async (query: string): Promise<string[]> => {
      const answer = await api.http.get(`/api/v1/clutches?${query}`).expect(200);
      return (answer.body as { items: ClutchItemView[] }).items.map(({ id }) => id);
    };
    const { id: lineId, speciesId } = await make.line();
    const [inLine, outside] = await make.individuals({ speciesId, lineId }, { speciesId });
    const one = (fields: object): Promise<ClutchView> =>
      make.clutch({ sires: [{ individualId: inLine?.id }], laid: '2026-08-01', ...fields });
    const [eggs, tadpoles] = [await one({}), await one({ hatched: 3 })];
    const ofYoung = await make.clutch({ sires: [{ individualId: outside?.id }], laid: '2026-07-01' });
    await make.offspring(ofYoung.id, { animals: [{ lineId }] });
    expect(await list(`lineId=${lineId}`)).toEqual(expect.arrayContaining([eggs.id, tadpoles.id, ofYoung.id]));
    expect(await list(`lineId=${lineId}&stage=egg`)).toEqual([eggs.id]);
    expect(await list(`lineId=${lineId}&stage=water`)).toEqual([tadpoles.id]);
    expect(await list(`lineId=${lineId}&stage=out`)).toEqual([ofYoung.id]);
    expect(await list(`stage=egg`)).toContain(eggs.id);
    expect(await list(`stage=egg`)).not.toContain(tadpoles.id);
  });
});
