import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

const withdraw = (resource: string, id: string) =>
  api.http.post(`/api/v1/${resource}/${id}/withdrawal`).set('If-Match', '*').send({ reason: 'a mistake' });
const restore = (resource: string, id: string) =>
  api.http.delete(`/api/v1/${resource}/${id}/withdrawal`).set('If-Match', '*');

describe('what standing records need cannot be withdrawn, and they are named', () => {
  it.each([
    [
      'a species with a line',
      async () => {
        const line = await make.line({ name: 'Rio Claro' });
        return ['species', line.speciesId, { kind: 'line', id: line.id, name: 'Rio Claro' }] as const;
      },
    ],
    [
      'a line with an animal',
      async () => {
        const line = await make.line();
        const animal = await make.individual({ speciesId: line.speciesId, lineId: line.id });
        return [
          'lines',
          line.id,
          { kind: 'individual', id: animal.id, name: `${animal.number} ${animal.code}` },
        ] as const;
      },
    ],
    [
      'a source with an animal',
      async () => {
        const source = await make.source();
        const animal = await make.individual({ sourceId: source.id, code: null });
        return ['sources', source.id, { kind: 'individual', id: animal.id, name: animal.number }] as const;
      },
    ],
    [
      'a parent of a clutch',
      async () => {
        const { sire, dam } = await trio(make);
        const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-04' });
        return ['individuals', dam.id, { kind: 'clutch', id: clutch.id, name: 'clutch of 2021-04' }] as const;
      },
    ],
    [
      'one of a candidate pair',
      async () => {
        const [a, b] = await make.individuals({}, {});
        const clutch = await make.clutch({ pairs: [{ a: a?.id, b: b?.id }], code: 'P-1' });
        return ['individuals', b?.id ?? '', { kind: 'clutch', id: clutch.id, name: 'clutch P-1' }] as const;
      },
    ],
    [
      'a clutch with young',
      async () => {
        const clutch = await make.clutch();
        const animal = await make.individual({ clutchId: clutch.id, code: null });
        return ['clutches', clutch.id, { kind: 'individual', id: animal.id, name: animal.number }] as const;
      },
    ],
    [
      'a pairing with a clutch',
      async () => {
        const pairing = await make.pairing();
        const clutch = await make.clutch({ pairingId: pairing.id });
        return ['pairings', pairing.id, { kind: 'clutch', id: clutch.id, name: 'clutch without a date' }] as const;
      },
    ],
  ])('%s', async (_, build) => {
    const [resource, id, dependant] = await build();
    const answer = await withdraw(resource, id).expect(409);
    expect(answer.body).toMatchObject({ type: '/api/problems/conflict', dependants: [dependant] });
    await withdraw(
      dependant.kind === 'line' ? 'lines' : dependant.kind === 'clutch' ? 'clutches' : 'individuals',
      dependant.id,
    ).expect(201);
    await withdraw(resource, id).expect(201);
  });
});

describe('what needs a withdrawn record cannot be restored before it', () => {
  it('an animal before its clutch, a clutch before its parent', async () => {
    const { sire, dam, speciesId } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    const young = await make.individual({ speciesId, clutchId: clutch.id });
    await withdraw('individuals', young.id).expect(201);
    await withdraw('clutches', clutch.id).expect(201);
    await withdraw('individuals', sire.id).expect(201);
    expect((await restore('individuals', young.id).expect(409)).body).toMatchObject({
      dependants: [{ kind: 'clutch', id: clutch.id }],
    });
    expect((await restore('clutches', clutch.id).expect(409)).body).toMatchObject({
      dependants: [{ kind: 'individual', id: sire.id }],
    });
    await restore('individuals', sire.id).expect(200);
    await restore('clutches', clutch.id).expect(200);
    await restore('individuals', young.id).expect(200);
  });

  it('an animal before its source, its line and its species', async () => {
    const line = await make.line();
    const source = await make.source();
    const animal = await make.individual({ speciesId: line.speciesId, lineId: line.id, sourceId: source.id });
    await withdraw('individuals', animal.id).expect(201);
    await withdraw('sources', source.id).expect(201);
    await withdraw('lines', line.id).expect(201);
    await withdraw('species', line.speciesId).expect(201);
    const answer = await restore('individuals', animal.id).expect(409);
    expect((answer.body as { dependants: { kind: string }[] }).dependants.map((record) => record.kind).sort()).toEqual([
      'line',
      'source',
      'species',
    ]);
    await restore('lines', line.id).expect(409);
    await restore('species', line.speciesId).expect(200);
    await restore('lines', line.id).expect(200);
    await restore('sources', source.id).expect(200);
    await restore('individuals', animal.id).expect(200);
  });

  it('a pairing whose animal lives elsewhere meanwhile', async () => {
    const animal = await make.individual();
    const stay = { members: [{ individualId: animal.id, joined: '2024' }] };
    const old = await make.pairing(stay);
    await api.http
      .post('/api/v1/pairings')
      .send({ name: 'Elsewhere', ...stay })
      .expect(409);
    await withdraw('pairings', old.id).expect(201);
    await make.pairing(stay);
    expect((await restore('pairings', old.id).expect(409)).body).toMatchObject({ errors: [{ pointer: '/joined' }] });
  });

  it('an animal whose code another one took meanwhile', async () => {
    const animal = await make.individual({ code: 'Taken-1' });
    await withdraw('individuals', animal.id).expect(201);
    await make.individual({ code: 'taken-1' });
    expect((await restore('individuals', animal.id).expect(409)).body).toMatchObject({
      errors: [{ pointer: '/code' }],
    });
  });
});

it('a parent cannot be withdrawn while somebody writes a clutch of it: one of the two is told', async () => {
  for (let round = 0; round < 8; round++) {
    const animal = await make.individual({ sex: 'male' });
    const [gone, laid] = await Promise.all([
      withdraw('individuals', animal.id),
      api.http.post('/api/v1/clutches').send({ sires: [{ individualId: animal.id }] }),
    ]);
    expect([
      [201, 422],
      [409, 201],
    ]).toContainEqual([gone.status, laid.status]);
  }
});

it('a withdrawn record can still be read', async () => {
  const animal = await make.individual();
  await withdraw('individuals', animal.id).expect(201);
  const answer = await api.http.get(`/api/v1/individuals/${animal.id}`).expect(200);
  expect(answer.body).toMatchObject({ withdrawn: { reason: 'a mistake' } });
});
