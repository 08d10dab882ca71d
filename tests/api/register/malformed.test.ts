import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let ids: { species: string; individual: string; source: string };

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  const individual = await make.individual();
  ids = { species: individual.speciesId, individual: individual.id, source: (await make.source()).id };
});

afterAll(() => api.close());

type Body = Record<string, unknown>;

/** For each resource a body that would be taken, and its fields by kind. */
const resources: Record<
  string,
  {
    valid: () => Body;
    texts: Record<string, number>;
    dates?: string[];
    ids?: string[];
    integers?: string[];
    numbers?: string[];
    choices?: string[];
    lists?: string[];
  }
> = {
  species: {
    valid: () => ({ scientificName: `Malformata species${Math.random()}` }),
    texts: { scientificName: 120, commonName: 120 },
    choices: ['citesAppendix'],
    lists: ['nativeRange', 'ranges'],
  },
  lines: {
    valid: () => ({ speciesId: ids.species, name: `Line ${Math.random()}` }),
    texts: { name: 120, policy: 2000 },
    ids: ['speciesId'],
    choices: ['labelKind'],
  },
  sources: {
    valid: () => ({}),
    texts: { code: 40, receivedFrom: 200, receivedBy: 200, labelAsReceived: 120, labelNote: 2000, notes: 10_000 },
    dates: ['date'],
    numbers: ['baseKinship'],
    choices: ['kind', 'countryOfExport'],
    lists: ['permitReferences'],
  },
  individuals: {
    valid: () => ({ speciesId: ids.species }),
    texts: { code: 40, notes: 10_000 },
    dates: ['sexedOn', 'hatched', 'outOfWater', 'died'],
    ids: ['speciesId', 'lineId', 'sourceId', 'clutchId'],
    choices: ['sex', 'sexBasis', 'status'],
  },
  pairings: { valid: () => ({ name: 'Tank' }), texts: { name: 120, notes: 10_000 }, lists: ['members'] },
  clutches: {
    valid: () => ({}),
    texts: { code: 40, site: 200, notes: 10_000 },
    dates: ['laid'],
    ids: ['pairingId'],
    integers: ['eggs', 'fertile', 'hatched', 'outOfWater'],
    lists: ['losses', 'sires', 'dams', 'pairs'],
  },
  observations: {
    valid: () => ({ individualId: ids.individual, kind: 'note', observedOn: '2024', text: 'calls' }),
    texts: { text: 10_000 },
    dates: ['observedOn'],
    ids: ['individualId'],
    numbers: ['svlMm', 'massG'],
    choices: ['kind'],
  },
};

/** Every field of every resource with every value that it cannot take. */
function malformed(): [string, string, Body][] {
  const cases: [string, string, Body][] = [];
  const add = (resource: string, field: string, values: unknown[]): void => {
    for (const value of values) cases.push([resource, field, { [field]: value }]);
  };
  for (const [resource, fields] of Object.entries(resources)) {
    for (const [field, longest] of Object.entries(fields.texts))
      add(resource, field, [7, true, {}, ['x'], 'x'.repeat(longest + 1), '', '  ', 'a\0b', 'half \ud800 a pair']);
    for (const field of fields.dates ?? [])
      add(resource, field, [
        20210412,
        '2021-02-30',
        '12.04.2021',
        '2021-13',
        'spring',
        '2021-04-12T10:00',
        '1600',
        '9999',
        '2022/2021',
        'Y170000',
        '../..',
        '2021\0',
        {},
      ]);
    for (const field of fields.ids ?? [])
      add(resource, field, [
        '17',
        17,
        '',
        {},
        `${ids.species}0`,
        "' or 1=1 --",
        '00000000-0000-7000-8000-000000000000',
      ]);
    for (const field of fields.integers ?? []) add(resource, field, [-1, 10_001, 1.5, 'many', '1e3', 1e300, {}, true]);
    for (const field of fields.numbers ?? []) add(resource, field, [-1, 1e9, 'many', '0.5', {}, true]);
    for (const field of fields.choices ?? []) add(resource, field, ['nonsense', 7, '', {}, ['alive'], '__proto__']);
    for (const field of fields.lists ?? [])
      add(resource, field, ['x', 7, {}, [7], [null], [[]], Array.from({ length: 1001 }, () => ({})), null]);
    cases.push(
      [resource, 'colour', { colour: 'red' }],
      [resource, 'id', { id: ids.species }],
      [resource, 'version', { version: 3 }],
      [resource, 'tier', { tier: 9 }],
    );
  }
  return cases;
}

describe('every field refuses what it cannot take, and names itself', () => {
  it('when a record is entered', { timeout: 120_000 }, async () => {
    for (const [resource, field, wrong] of malformed()) {
      const answer = await api.http.post(`/api/v1/${resource}`).send({ ...resources[resource]?.valid(), ...wrong });
      const what = `${resource} ${JSON.stringify(wrong).slice(0, 120)} → ${answer.status} ${answer.text.slice(0, 300)}`;
      expect(answer.status, what).toBe(422);
      const { errors } = answer.body as { errors: { pointer: string; detail: string }[] };
      expect(
        errors.some((error) => error.pointer.startsWith(`/${field}`)),
        what,
      ).toBe(true);
      for (const error of errors) expect(error.detail, what).toMatch(/^[A-Z0-9'].*\.$/s);
    }
  });

  it('when a record is changed, and the record stays as it was', { timeout: 120_000 }, async () => {
    for (const [resource, fields] of Object.entries(resources)) {
      const { id } = await make.post<{ id: string }>(resource, fields.valid());
      const before = await api.http.get(`/api/v1/${resource}/${id}`);
      for (const [, field, wrong] of malformed().filter(([of]) => of === resource)) {
        const answer = await api.http.patch(`/api/v1/${resource}/${id}`).set('If-Match', '*').send(wrong);
        const what = `${resource} ${JSON.stringify(wrong).slice(0, 120)} → ${answer.status} ${answer.text.slice(0, 300)}`;
        expect(answer.status, what).toBe(422);
        expect(
          (answer.body as { errors: { pointer: string }[] }).errors.some((error) =>
            error.pointer.startsWith(`/${field}`),
          ),
          what,
        ).toBe(true);
      }
      expect((await api.http.get(`/api/v1/${resource}/${id}`)).body).toEqual(before.body);
    }
  });
});

describe('what must be there cannot be left out or be nothing', () => {
  it.each([
    ['species', 'scientificName'],
    ['lines', 'speciesId'],
    ['lines', 'name'],
    ['individuals', 'speciesId'],
    ['pairings', 'name'],
    ['observations', 'kind'],
    ['observations', 'observedOn'],
  ])('%s: %s', async (resource, field) => {
    for (const value of [undefined, null]) {
      const answer = await api.http
        .post(`/api/v1/${resource}`)
        .send({ ...resources[resource]?.valid(), [field]: value });
      expect(answer.status).toBe(422);
      expect(answer.body).toMatchObject({ errors: [{ pointer: `/${field}` }] });
    }
  });

  it.each([
    ['individuals', 'sex'],
    ['individuals', 'status'],
    ['lines', 'labelKind'],
    ['sources', 'kind'],
    ['sources', 'baseKinship'],
    ['sources', 'permitReferences'],
    ['species', 'nativeRange'],
  ])('%s: %s may be left out but is never null', async (resource, field) => {
    const answer = await api.http.post(`/api/v1/${resource}`).send({ ...resources[resource]?.valid(), [field]: null });
    expect(answer.status).toBe(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer: `/${field}` }] });
  });
});

describe('every list refuses a query that it cannot take', () => {
  it.each([
    ['individuals', 'number=10704-5'],
    ['individuals', 'sex=f'],
    ['individuals', 'status=dead'],
    ['individuals', 'sort=colour'],
    ['individuals', 'order=up'],
    ['individuals', 'hatchedFrom=abc'],
    ['individuals', 'hatchedTo=10000'],
    ['individuals', 'lineId=17'],
    ['individuals', `q=${'x'.repeat(101)}`],
    ['individuals', 'q=%00'],
    ['individuals', 'q=a+b+c+d+e+f+g+h+i+j+k'],
    ['individuals', 'line=%00'],
    ['individuals', 'colour=red'],
    ['individuals', 'limit=0'],
    ['individuals', 'after=WyJudW1iZXIgYXNjIiwiMTAwMSIsInkiXQ'],
    ['clutches', 'laidFrom=x'],
    ['clutches', 'parentId=x'],
    ['clutches', 'after=W10'],
    ['pairings', 'keeperId=1'],
    ['pairings', 'after=eA'],
    ['lines', 'speciesId=1'],
    ['lines', 'after=eA'],
    ['species', 'total=perhaps'],
    ['sources', 'kind=theft'],
    ['sources', 'after=eA'],
    ['observations', 'individualId=1'],
    ['observations', 'after=eA'],
    ['keepers', 'after=eA'],
    ['keepers', 'limit=x'],
  ])('%s?%s', async (resource, query) => {
    const answer = await api.http.get(`/api/v1/${resource}?${query}`);
    expect(answer.status, answer.text).toBe(422);
  });

  it('and a cursor whose values are of the wrong form', async () => {
    const cursor = (...values: unknown[]): string => Buffer.from(JSON.stringify(values)).toString('base64url');
    for (const [path, after] of [
      ['individuals', cursor('number asc', 'abc')],
      ['individuals', cursor('number asc', '1', '2')],
      ['individuals', cursor('number asc', { a: 1 })],
      ['individuals', cursor('number asc', '9'.repeat(40))],
      ['individuals?sort=hatched', cursor('hatched asc', '2021-02-30', '2021', 'x')],
      ['individuals?sort=line', cursor('line asc', 'x', 'y', 'z')],
      ['individuals?sort=code', cursor('number asc', '1')],
      ['clutches', cursor('laid', null, null, 'x')],
      ['species', cursor('name', 'x', 'y')],
      ['sources', cursor('date', 'x', 'y')],
    ] as const) {
      const answer = await api.http.get(`/api/v1/${path}${path.includes('?') ? '&' : '?'}after=${after}`);
      expect(answer.status, `${path} ${answer.text}`).toBe(422);
    }
  });
});

it('ranges of a species that cannot be are named', async () => {
  const range = { trait: 'maturity', source: 'common practice' };
  for (const [ranges, pointer] of [
    [[{ ...range, trait: 'wingspan' }], '/ranges/0/trait'],
    [[range, range], '/ranges/1/trait'],
    [[{ ...range, usualLeast: 10, usualMost: 8 }], '/ranges/0'],
    [[{ ...range, usualLeast: 10, extremeLeast: 12 }], '/ranges/0'],
    [[{ ...range, extremeLeast: 10, extremeMost: 8 }], '/ranges/0'],
    [[{ ...range, usualLeast: -1 }], '/ranges/0/usualLeast'],
    [[{ trait: 'maturity' }], '/ranges/0/source'],
  ] as const) {
    const answer = await api.http.post('/api/v1/species').send({ scientificName: 'Rangea prima', ranges }).expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer }] });
  }
});
