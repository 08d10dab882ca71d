import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClutchView, OffspringView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

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
