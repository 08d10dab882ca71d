import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { IndividualItemView } from '../../../api/register/individuals/individual.view.ts';
import type { Page } from '../../../api/platform/paging.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let all: IndividualItemView[];

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  const anthonyi = await make.species({ scientificName: 'Epipedobates anthonyi', commonName: 'Phantasmal frog' });
  const vittatus = await make.species({ scientificName: 'Phyllobates vittatus' });
  const honda = await make.line({ speciesId: anthonyi.id, name: 'Quebrada Honda' });
  const rosa = await make.line({ speciesId: anthonyi.id, name: 'santa rosa', labelKind: 'trade-name' });
  const source = await make.source({ code: 'S-1' });
  const [, ines] = await api.dataSource.query<{ id: string }[]>(
    `insert into keeper (name) values ('Ansgar Teichmann'), ('Ines Haldorf') returning id`,
  );
  const animals: Record<string, unknown>[] = [
    { code: 'EA-07', speciesId: anthonyi.id, lineId: honda.id, sex: 'female', hatched: '2021-04-12' },
    { code: 'ea-10', speciesId: anthonyi.id, lineId: honda.id, sex: 'male', hatched: '1994~' },
    { code: 'SR-1', speciesId: anthonyi.id, lineId: rosa.id, hatched: '2021', status: 'gone' },
    { code: null, speciesId: anthonyi.id, lineId: rosa.id, sourceId: source.id },
    { code: 'PV_1', speciesId: vittatus.id, hatched: '199X', died: '2004' },
    { code: 'PV%2', speciesId: vittatus.id, hatched: '../1993' },
    { code: null, speciesId: vittatus.id, hatched: '2021-04-12/..' },
    { code: 'ZZ-9', speciesId: vittatus.id, sex: 'male', hatched: '2021-04' },
  ];
  for (const animal of animals) await make.individual(animal);
  await api.dataSource.query(`update individual set keeper_id = $1 where code in ('SR-1', 'PV_1')`, [ines?.id]);
  all = (await list('')).items;
});

afterAll(() => api.close());

const list = async (query: string): Promise<Page<IndividualItemView>> =>
  (await api.http.get(`/api/v1/individuals?${query}`).expect(200)).body as Page<IndividualItemView>;

const codes = async (query: string): Promise<(string | null)[]> => (await list(query)).items.map((item) => item.code);

/** All items of a list, read page by page. */
async function walk(
  query: string,
  limit: number,
  between: () => Promise<void> = () => Promise.resolve(),
): Promise<IndividualItemView[]> {
  const items: IndividualItemView[] = [];
  let after = '';
  for (let page = 0; page < 100; page++) {
    const answer = await list(`${query}&limit=${limit}${after}`);
    expect(answer.items.length).toBeLessThanOrEqual(limit);
    items.push(...answer.items);
    if (answer.next === null) return items;
    after = `&after=${answer.next}`;
    await between();
  }
  throw new Error('the list has no end');
}

describe('animals are found', () => {
  it.each([
    ['code=ea-07', ['EA-07']],
    ['code=ea', []],
    ['line=quebrada%20honda', ['EA-07', 'ea-10']],
    ['line=nowhere', []],
    ['species=epipedobates%20anthonyi', ['EA-07', 'ea-10', 'SR-1', null]],
    ['species=phantasmal%20frog&sex=male', ['ea-10']],
    ['keeper=ines%20haldorf', ['SR-1', 'PV_1']],
    ['keeper=nobody', []],
    ['sex=male', ['ea-10', 'ZZ-9']],
    ['status=gone', ['SR-1']],
    ['status=died', ['PV_1']],
    ['hatchedFrom=2021', ['EA-07', 'SR-1', null, 'ZZ-9']],
    ['hatchedTo=1994', ['ea-10', 'PV_1', 'PV%252']],
    ['hatchedFrom=1995&hatchedTo=2000', ['PV_1']],
    ['q=ea-', ['EA-07', 'ea-10']],
    ['q=A-1', ['ea-10']],
    ['q=7', []],
    ['q=07', ['EA-07']],
    ['q=pv', ['PV_1', 'PV%252']],
    ['q=sr', ['SR-1']],
    ['q=-10', ['ea-10']],
    ['q=_', ['PV_1']],
    ['q=%25', ['PV%252']],
    ['q=HONDA%20female', []],
    ['q=honda%2007', ['EA-07']],
    ['q=rosa', ['SR-1', null]],
    ['q=haldorf%20vittatus', ['PV_1']],
    ["q='", []],
    ['q=%5C', []],
  ])('by %s', async (query, expected) => {
    expect(await codes(query)).toEqual(expected.map((code) => (code === null ? null : decodeURIComponent(code))));
  });

  it('by the whole registry number, with or without its dash, and by its beginning', async () => {
    const [first] = all;
    const number = first?.number ?? '';
    expect(await codes(`number=${number}`)).toEqual(['EA-07']);
    expect(await codes(`number=${number.replace('-', '')}`)).toEqual(['EA-07']);
    expect(await codes(`q=${number}`)).toEqual(['EA-07']);
    expect((await list(`q=${number.slice(0, 3)}`)).items).toHaveLength(8);
    expect(await codes(`q=${number.split('-')[0]}`)).toContain('EA-07');
  });

  it('by a search page after page, forwards and backwards, each once', async () => {
    for (const order of [
      'sort=number',
      'sort=number&order=desc',
      'sort=code',
      'sort=code&order=desc',
      'sort=hatched',
    ]) {
      const everybody = (await list(`${order}&limit=200`)).items.map(({ id }) => id);
      for (const q of ['anthonyi', '0', 'ea-', '0&status=alive']) {
        const whole = (await list(`q=${q}&${order}&limit=200`)).items.map(({ id }) => id);
        expect(whole).toEqual(everybody.filter((id) => whole.includes(id)));
        expect((await walk(`q=${q}&${order}`, 1)).map(({ id }) => id)).toEqual(whole);
      }
    }
    expect((await list('q=anthonyi')).items).toHaveLength(4);
  });

  it('by the ids of line, species, keeper and source', async () => {
    const animal = all.find((item) => item.code === 'SR-1');
    expect(await codes(`line=${animal?.lineId}`)).toEqual(['SR-1', null]);
    expect(await codes(`lineId=${animal?.lineId}&status=gone`)).toEqual(['SR-1']);
    expect(await codes(`species=${animal?.speciesId}`)).toHaveLength(4);
    expect(await codes(`keeper=${animal?.keeperId}`)).toEqual(['SR-1', 'PV_1']);
    const [source] = await api.dataSource.query<{ id: string }[]>('select id from source');
    expect(await codes(`sourceId=${source?.id}`)).toEqual([null]);
  });

  it('and counted where asked', async () => {
    expect(await list('sex=male&limit=1&total=true')).toMatchObject({ total: 2, items: [{}] });
    expect(await list('sex=male&limit=1')).not.toHaveProperty('total');
  });
});

describe('animals are listed in order, those without the value last in either direction', () => {
  const orders: [string, (string | null)[]][] = [
    ['sort=number', ['EA-07', 'ea-10', 'SR-1', null, 'PV_1', 'PV%2', null, 'ZZ-9']],
    ['sort=code', ['EA-07', 'ea-10', 'PV%2', 'PV_1', 'SR-1', 'ZZ-9', null, null]],
    ['sort=code&order=desc', ['ZZ-9', 'SR-1', 'PV_1', 'PV%2', 'ea-10', 'EA-07', null, null]],
    // earliest possible day first, then the latest: 199X begins in 1990, 1994~ in 1994; the whole of 2021 begins before April
    ['sort=hatched', ['PV%2', 'PV_1', 'ea-10', 'SR-1', 'ZZ-9', 'EA-07', null, null]],
    ['sort=line', ['EA-07', 'ea-10', 'SR-1', null, 'PV_1', 'PV%2', null, 'ZZ-9']],
    ['sort=species&order=desc', ['ZZ-9', null, 'PV%2', 'PV_1', null, 'SR-1', 'ea-10', 'EA-07']],
    ['sort=keeper', ['SR-1', 'PV_1', 'EA-07', 'ea-10', null, 'PV%2', null, 'ZZ-9']],
  ];

  it.each(orders)('%s', async (query, expected) => {
    expect(await codes(query)).toEqual(expected);
  });

  it.each(
    ['number', 'code', 'hatched', 'line', 'species', 'keeper'].flatMap((sort) => [
      `sort=${sort}&order=asc`,
      `sort=${sort}&order=desc`,
    ]),
  )('and the pages of %s join up, whatever their size', async (query) => {
    const whole = (await list(query)).items.map((item) => item.id);
    expect(new Set(whole).size).toBe(all.length);
    for (const limit of [1, 2, 3, 7, 8]) expect((await walk(query, limit)).map((item) => item.id)).toEqual(whole);
  });
});

it('a walk through the pages misses and repeats nobody, while animals come and go', async () => {
  const speciesId = (await make.species()).id;
  const stay = await make.individuals(
    ...Array.from({ length: 12 }, (_, index) => ({ speciesId, code: `walk-${index}` })),
  );
  let turn = 0;
  const seen = await walk(`species=${speciesId}&sort=code`, 3, async () => {
    await make.individual({ speciesId, code: `walk-0${++turn}` });
    const [leaver] = await make.individuals({ speciesId, code: `walk-9${turn}` });
    await api.http
      .post(`/api/v1/individuals/${leaver?.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'test' })
      .expect(201);
  });
  const ids = seen.map((item) => item.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(stay.every((animal) => ids.includes(animal.id))).toBe(true);
});
