import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

interface Versioned {
  readonly id: string;
  readonly version: number;
}

const kinds: [string, () => Promise<Versioned>, Record<string, unknown>, Record<string, unknown>][] = [
  ['species', () => make.species(), { commonName: 'one' }, { commonName: 'two' }],
  ['lines', () => make.line(), { policy: 'one' }, { policy: 'two' }],
  ['sources', () => make.source(), { notes: 'one' }, { notes: 'two' }],
  ['individuals', () => make.individual(), { notes: 'one' }, { notes: 'two' }],
  ['pairings', () => make.pairing(), { notes: 'one' }, { notes: 'two' }],
  ['clutches', () => make.clutch(), { notes: 'one' }, { notes: 'two' }],
  [
    'observations',
    async () => make.observation({ individualId: (await make.individual()).id }),
    { text: 'one' },
    { text: 'two' },
  ],
];

describe.each(kinds)('a change of %s', (resource, create, one, two) => {
  it('goes through from the version that was read, and the answer carries the next', async () => {
    const { id } = await create();
    const read = await api.http.get(`/api/v1/${resource}/${id}`).expect(200);
    expect(read.headers['etag']).toBe('"1"');
    const answer = await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '"1"').send(one).expect(200);
    expect(answer.headers['etag']).toBe('"2"');
    expect(answer.body).toMatchObject({ ...one, version: 2 });
    expect((await api.http.get(`/api/v1/${resource}/${id}`)).body).toEqual(answer.body);
  });

  it('is refused with the record as it is now, where somebody changed it meanwhile', async () => {
    const { id } = await create();
    await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '"1"').send(one).expect(200);
    const answer = await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '"1"').send(two).expect(412);
    expect(answer.body).toMatchObject({ type: '/api/problems/stale', current: { id, version: 2, ...one } });
    expect((await api.http.get(`/api/v1/${resource}/${id}`)).body).toMatchObject(one);
  });

  it('is refused without If-Match, and by tags that are not its own', async () => {
    const { id } = await create();
    expect((await api.http.patch(`/api/v1/${resource}/${id}`).send(one).expect(428)).body).toMatchObject({
      type: '/api/problems/precondition-required',
    });
    for (const tag of ['W/"1"', '"2"', '1', '""', 'nonsense'])
      await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', tag).send(one).expect(412);
    await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '"7", "1"').send(one).expect(200);
    await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(two).expect(200);
  });

  it('made by many at once from one version goes through once', async () => {
    const { id } = await create();
    const answers = await Promise.all(
      Array.from({ length: 6 }, () => api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '"1"').send(one)),
    );
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 412, 412, 412, 412, 412]);
    expect((await api.http.get(`/api/v1/${resource}/${id}`)).body).toMatchObject({ version: 2 });
  });

  it('made by many at once from whatever is there goes through each time', async () => {
    const { id } = await create();
    const answers = await Promise.all(
      Array.from({ length: 6 }, () => api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(one)),
    );
    expect(answers.map((answer) => answer.status)).toEqual(answers.map(() => 200));
    expect((await api.http.get(`/api/v1/${resource}/${id}`)).body).toMatchObject({ version: 7 });
  });

  it('of a record that is not there is 404', async () => {
    for (const id of ['00000000-0000-7000-8000-000000000000', 'seventeen'])
      await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(one).expect(404);
  });

  it('is refused once the record is withdrawn, until it is restored', async () => {
    const { id } = await create();
    const withdrawal = `/api/v1/${resource}/${id}/withdrawal`;
    await api.http.post(withdrawal).send({ reason: 'a mistake' }).expect(428);
    await api.http.post(withdrawal).set('If-Match', '"2"').send({ reason: 'a mistake' }).expect(412);
    await api.http.post(withdrawal).set('If-Match', '"1"').send({}).expect(422);
    const withdrawn = await api.http.post(withdrawal).set('If-Match', '"1"').send({ reason: 'a mistake' }).expect(201);
    expect(withdrawn.body).toMatchObject({
      version: 2,
      withdrawn: { reason: 'a mistake', at: expect.stringMatching(/Z$/) as string },
    });
    await api.http.post(withdrawal).set('If-Match', '*').send({ reason: 'again' }).expect(409);
    await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(one).expect(409);
    const list = await api.http.get(`/api/v1/${resource}?limit=200`).expect(200);
    expect((list.body as { items: Versioned[] }).items.map((item) => item.id)).not.toContain(id);
    await api.http.delete(withdrawal).expect(428);
    await api.http.delete(withdrawal).set('If-Match', '"1"').expect(412);
    expect((await api.http.delete(withdrawal).set('If-Match', '"2"').expect(200)).body).toMatchObject({
      version: 3,
      withdrawn: null,
    });
    await api.http.delete(withdrawal).set('If-Match', '*').expect(409);
    await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(one).expect(200);
  });
});
