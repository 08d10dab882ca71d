import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView, NewClutchView, OffspringView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';
import { storedEntries } from '../journal/stored-entries.ts';

const nowhere = '00000000-0000-7000-8000-000000000000';

let api: TestApi;
let make: Factory;
let sire: IndividualView;
let dam: IndividualView;
let speciesId: string;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  ({ sire, dam, speciesId } = await trio(make));
});

afterAll(() => api.close());

const get = async (id: string): Promise<ClutchView> =>
  (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;

describe('young are raised from a clutch', () => {
  it('and the answer carries their figures, also when it is given again', async () => {
    const first = await make.clutchOf(sire.id, dam.id, { laid: '2020-02-01' });
    const [daughter] = await make.offspring(first.id, { animals: [{ sex: 'female' }] });
    const inbred = await make.clutchOf(sire.id, daughter?.id ?? '', { laid: '2022-02-01' });
    const raise = () =>
      api.http
        .post(`/api/v1/clutches/${inbred.id}/offspring`)
        .set('Idempotency-Key', 'young-with-figures')
        .send({ count: 2 })
        .expect(201);
    const view = bodyOf<OffspringView>(await raise());
    // father and daughter: a quarter (Wright 1922)
    const figures = { inbreeding: 0.25, inbreedingLeast: 0.25, inbreedingGreatest: 0.25, depth: 2, current: true };
    expect(view.figures).toEqual(view.items.map(({ id }) => ({ id, ...figures })));
    expect(bodyOf<OffspringView>(await raise())).toEqual(view);
  });

  it('by their number, with the species and the line of their parents', async () => {
    const line = await make.line({ speciesId });
    const [father, mother] = await make.individuals(
      { speciesId, lineId: line.id, sex: 'male' },
      { speciesId, lineId: line.id, sex: 'female' },
    );
    const clutch = await make.clutchOf(father?.id ?? '', mother?.id ?? '', { laid: '2021-04-12' });
    const young = await make.offspring(clutch.id, { count: 3 });
    expect(young).toHaveLength(3);
    expect(new Set(young.map((animal) => animal.number)).size).toBe(3);
    for (const animal of young)
      expect(animal).toMatchObject({ speciesId, line: line.name, sex: 'unsexed', status: 'alive' });
    expect((await get(clutch.id)).young).toEqual(young);
  });

  it('each with what is known of it; a line is not invented where the parents have none', async () => {
    const line = await make.line({ speciesId });
    const clutch = await make.clutchOf(sire.id, dam.id);
    const young = await make.offspring(clutch.id, {
      animals: [{ code: 'Y-1', sex: 'male', hatched: '2022-05-01' }, { lineId: line.id }],
    });
    expect(young).toMatchObject([
      { code: 'Y-1', sex: 'male', hatched: '2022-05-01', line: null },
      { code: null, line: line.name },
    ]);
  });

  it('with a species named, where the parents do not tell it', async () => {
    const clutch = await make.clutch();
    const raise = (body: object) => api.http.post(`/api/v1/clutches/${clutch.id}/offspring`).send(body);
    expect((await raise({ count: 1 }).expect(422)).body).toMatchObject({ errors: [{ pointer: '/speciesId' }] });
    await raise({ count: 1, speciesId }).expect(201);
    await raise({ count: 1 }).expect(201); // its clutch-mate tells it from now on
  });

  it.each([
    ['neither a count nor animals', {}, '/count'],
    ['both', { count: 1, animals: [{}] }, '/count'],
    ['none', { count: 0 }, '/count'],
    ['too many', { count: 201 }, '/count'],
    ['an empty list', { animals: [] }, '/animals'],
    ['a young that is no object', { animals: [7] }, '/animals'],
    ['null for a young', { animals: [null] }, '/animals'],
    ['a line that is not there', { animals: [{}, { lineId: nowhere }] }, '/animals/1/lineId'],
    ['hatched before the clutch was laid', { animals: [{ hatched: '2001' }] }, '/animals'],
  ])('but not with %s', async (_, body, pointer) => {
    const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
    const answer = await api.http.post(`/api/v1/clutches/${clutch.id}/offspring`).send(body).expect(422);
    expect((answer.body as { errors: { pointer: string }[] }).errors[0]?.pointer.startsWith(pointer)).toBe(true);
  });

  it('but not from a clutch that is not there, or was withdrawn', async () => {
    await api.http.post(`/api/v1/clutches/${nowhere}/offspring`).send({ count: 1 }).expect(404);
    const clutch = await make.clutch();
    await api.http
      .post(`/api/v1/clutches/${clutch.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'never laid' })
      .expect(201);
    await api.http.post(`/api/v1/clutches/${clutch.id}/offspring`).send({ count: 1, speciesId }).expect(409);
  });
});

describe('young come with their clutch in one request', () => {
  const add = (offspring: object, fields: object = {}) =>
    api.http.post('/api/v1/clutches').send({
      laid: '2021-04-12',
      sires: [{ individualId: sire.id }],
      dams: [{ individualId: dam.id }],
      offspring,
      ...fields,
    });

  it('with their figures in the answer, which is given again for the same key', async () => {
    const first = await make.clutchOf(sire.id, dam.id, { laid: '2020-02-01' });
    const [daughter] = await make.offspring(first.id, { animals: [{ sex: 'female' }] });
    const lay = () =>
      add({ count: 5 }, { laid: '2022-02-01', dams: [{ individualId: daughter?.id }] })
        .set('Idempotency-Key', 'clutch-with-young')
        .expect(201);
    const clutch = bodyOf<NewClutchView>(await lay());
    expect(clutch.young).toHaveLength(5);
    // father and daughter: a quarter (Wright 1922)
    const figures = { inbreeding: 0.25, inbreedingLeast: 0.25, inbreedingGreatest: 0.25, depth: 2, current: true };
    expect(clutch.figures).toEqual(clutch.young.map(({ id }) => ({ id, ...figures })));
    expect(bodyOf<NewClutchView>(await lay())).toEqual(clutch);
    expect({ ...(await get(clutch.id)), figures: clutch.figures }).toEqual(clutch);
  });

  it('and the journal tells of the clutch, then of its young, each of which can be undone', async () => {
    const answer = await add({ animals: [{ code: 'W-1', sex: 'male' }, {}] }).expect(201);
    const clutch = bodyOf<NewClutchView>(answer);
    expect(clutch.young).toMatchObject([{ code: 'W-1', sex: 'male' }, { sex: 'unsexed' }]);
    const entries = await storedEntries(api.dataSource, 'request_id = $1', [answer.headers['x-request-id']]);
    expect(entries).toMatchObject([
      { action: 'added', recordId: clutch.id, recordVersion: 1, after: { laid: '2021-04-12' } },
      {
        action: 'raised',
        recordId: clutch.id,
        recordVersion: 1,
        after: { young: clutch.young.map(({ id }) => ({ individualId: id })) },
      },
    ]);
    expect(answer.headers['journal-entry']).toBe(entries[0]?.id);
    const undo = (entry: string | undefined) => api.http.post(`/api/v1/journal/${entry}/reversal`).send({});
    await undo(entries[0]?.id).expect(409); // its young need it
    await undo(entries[1]?.id).expect(201);
    await undo(entries[0]?.id).expect(201);
    expect(await get(clutch.id)).toMatchObject({ young: [], withdrawn: expect.anything() as unknown });
  });

  it('and it warns of what looks wrong by then', async () => {
    const clutch = bodyOf<NewClutchView>(await add({ count: 3 }, { eggs: 2 }).expect(201));
    expect(clutch.warnings.map(({ code }) => code)).toContain('more-young-than-eggs');
  });

  it.each([
    ['neither a count nor animals', {}, {}, '/offspring/count'],
    ['something else', 5, {}, '/offspring'],
    ['null', null, {}, '/offspring'],
    ['a field that is unknown', { number: 5 }, {}, '/offspring/number'],
    ['too many', { count: 201 }, {}, '/offspring/count'],
    ['a species that nobody tells', { count: 1 }, { sires: [], dams: [] }, '/offspring/speciesId'],
    ['a line that is not there', { animals: [{ lineId: nowhere }] }, {}, '/offspring/animals/0/lineId'],
    ['a day before the clutch was laid', { animals: [{ hatched: '2001' }] }, {}, '/offspring/animals'],
  ])('but nothing is written with %s', async (_, offspring, fields, pointer) => {
    const count = (): Promise<unknown> => api.dataSource.query('select count(*) from clutch');
    const before = await count();
    const answer = await add(offspring as object, fields).expect(422);
    expect((answer.body as { errors: { pointer: string }[] }).errors[0]?.pointer).toBe(pointer);
    expect(await count()).toEqual(before);
  });

  it('and never to a clutch that is changed', async () => {
    const clutch = await make.clutchOf(sire.id, dam.id);
    await api.http
      .patch(`/api/v1/clutches/${clutch.id}`)
      .set('If-Match', '*')
      .send({ offspring: { count: 1 } })
      .expect(422);
  });
});
