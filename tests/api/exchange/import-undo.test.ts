import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ImportView, PastImportView, WholeImportView } from '../../../api/exchange/import.view.ts';
import type { IndividualItemView } from '../../../api/register/individuals/individual.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { containing } from '../../unit/exchange/matchers.ts';
import { importSheet } from './sheet-requests.ts';

let api: TestApi;
let factory: Factory;
let keeper: TestKeeper;
let neighbour: TestKeeper;
beforeAll(async () => {
  api = await startApi();
  factory = new Factory(api.http);
  keeper = await api.addKeeper('Own sheets');
  neighbour = await api.addKeeper('Neighbour');
});
afterAll(() => api.close());

/** Two founders of one source, and a young of theirs. */
const sheet = (name: string): string =>
  [
    'code,species,line,sex,sire,dam,source,clutch,hatched',
    `${name}-1,Inventus ${name},Line ${name},m,,,S-${name},,`,
    `${name}-2,Inventus ${name},Line ${name},f,,,S-${name},,`,
    `${name}-3,Inventus ${name},Line ${name},,${name}-1,${name}-2,,C-${name},2021-04-12`,
  ].join('\n');

/** What a sheet made, by the code of the animal. */
interface Taken {
  readonly id: string;
  readonly text: string;
  readonly animals: ReadonlyMap<string, IndividualItemView>;
}

async function take(name: string, by: { readonly http: TestApi['http'] } = api): Promise<Taken> {
  const text = sheet(name);
  const answer = await by.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(text);
  expect(answer.status, answer.text).toBe(201);
  const found = await api.http.get(`/api/v1/individuals?line=Line ${name}`).expect(200);
  const items = (found.body as { items: IndividualItemView[] }).items;
  return {
    id: (answer.body as ImportView).id ?? '',
    text,
    animals: new Map(items.map((item) => [item.code?.slice(name.length + 1) ?? '', item])),
  };
}

const undo = (id: string, by: { readonly http: TestApi['http'] } = api) =>
  by.http.post(`/api/v1/imports/${id}/withdrawal`).send({ reason: 'the wrong file' });
const restore = (id: string, by: { readonly http: TestApi['http'] } = api) =>
  by.http.delete(`/api/v1/imports/${id}/withdrawal`);

/** Everything that an import made, as the database has it; versions and times of change aside. */
async function rowsOf(id: string): Promise<unknown[]> {
  const rows: unknown[] = [];
  for (const table of ['species', 'line', 'source', 'clutch', 'individual'])
    rows.push(
      await api.dataSource.query(
        `select to_jsonb(r) - 'version' - 'updated_at' as row from ${table} r where import_id = $1 order by id`,
        [id],
      ),
    );
  return rows;
}

test('every record that a sheet makes remembers it, and the import remembers the sheet', async () => {
  const { id, text } = await take('alba');
  for (const [table, count] of Object.entries({ species: 1, line: 1, source: 1, clutch: 1, individual: 3 }))
    expect(
      await api.dataSource.query(`select count(*)::integer as made from ${table} where import_id = $1`, [id]),
      table,
    ).toEqual([{ made: count }]);
  const whole = (await api.http.get(`/api/v1/imports/${id}`).expect(200)).body as WholeImportView;
  expect(whole).toMatchObject({
    id,
    rows: 3,
    withdrawn: null,
    warnings: [],
    sheetSha256: createHash('sha256').update(text).digest('hex'),
    standing: { individuals: 3, clutches: 1, sources: 1, lines: 1, species: 1 },
  });
  await api.http.get(`/api/v1/imports/${crypto.randomUUID()}`).expect(404);
  await api.http.get('/api/v1/imports/none').expect(404);
});

describe('an import that nothing depends on', () => {
  test('is undone whole, restored whole, and everything is as it was before', async () => {
    const { id, animals } = await take('bruna');
    const before = await rowsOf(id);
    const undone = (await undo(id).expect(201)).body as WholeImportView;
    expect(undone).toMatchObject({
      withdrawn: { reason: 'the wrong file' },
      standing: { individuals: 0, clutches: 0, sources: 0, lines: 0, species: 0 },
      created: { individuals: 3 },
    });
    expect((await api.http.get('/api/v1/individuals?line=Line bruna')).body).toMatchObject({ items: [] });
    const young = await api.http.get(`/api/v1/individuals/${animals.get('3')?.id}`).expect(200);
    expect(young.body).toMatchObject({ withdrawn: { reason: 'the wrong file' }, version: 2 });
    const list = (await api.http.get('/api/v1/imports').expect(200)).body as { items: PastImportView[] };
    expect(list.items.find((item) => item.id === id)?.withdrawn?.reason).toBe('the wrong file');

    const again = await undo(id).expect(409);
    expect(again.body).toMatchObject({ detail: 'This import was undone already.' });
    const restored = (await restore(id).expect(200)).body as WholeImportView;
    expect(restored).toMatchObject({ withdrawn: null, standing: { individuals: 3, clutches: 1 } });
    expect(await rowsOf(id)).toEqual(before);
    await restore(id).expect(409);
  });

  test('leaves withdrawn what its keeper had withdrawn before', async () => {
    const { id, animals } = await take('cana');
    await api.http
      .post(`/api/v1/individuals/${animals.get('3')?.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'never hatched' })
      .expect(201);
    await undo(id).expect(201);
    expect((await restore(id).expect(200)).body).toMatchObject({ standing: { individuals: 2 } });
    const young = await api.http.get(`/api/v1/individuals/${animals.get('3')?.id}`);
    expect(young.body).toMatchObject({ withdrawn: { reason: 'never hatched' } });
  });

  test('can be taken again from the same sheet, under the same names and codes, and each undone in turn', async () => {
    const first = await take('dura');
    await undo(first.id).expect(201);
    const second = await importSheet(api, first.text);
    expect(second.body).toMatchObject({ created: { species: 1, lines: 1, individuals: 3 } });
    const taken = await restore(first.id).expect(409);
    expect(taken.body).toMatchObject({
      detail: containing('in use again'),
      total: 6,
      privateCount: 0,
    });
    expect((taken.body as { taken: unknown[] }).taken).toContainEqual({
      kind: 'species',
      id: expect.any(String) as string,
      name: 'Inventus dura',
      isPrivate: false,
    });
    await undo((second.body as ImportView).id ?? '').expect(201);
    await restore(first.id).expect(200);
    await restore((second.body as ImportView).id ?? '').expect(409);
  });

  test('a young that was restored on its own meanwhile does not stand in the way of the rest', async () => {
    const { id, animals } = await take('ebena');
    await undo(id).expect(201);
    const speciesId = animals.get('1')?.speciesId ?? '';
    await api.http.delete(`/api/v1/species/${speciesId}/withdrawal`).set('If-Match', '*').expect(200);
    await restore(id).expect(200);
    expect((await api.http.get(`/api/v1/imports/${id}`)).body).toMatchObject({
      standing: { species: 1, individuals: 3 },
    });
  });
});

describe('what depends on an import stands in the way of its undo, and is named', () => {
  const refused = async (taken: Taken, kind: string, name: string): Promise<void> => {
    const answer = await undo(taken.id).expect(409);
    expect(answer.body).toMatchObject({ total: 1, privateCount: 0 });
    expect((answer.body as { dependants: unknown[] }).dependants).toMatchObject([{ kind, name: containing(name) }]);
    expect((await api.http.get(`/api/v1/imports/${taken.id}`)).body).toMatchObject({
      withdrawn: null,
      standing: { individuals: 3, clutches: 1, sources: 1, lines: 1, species: 1 },
    });
  };

  test('a line of its species', async () => {
    const taken = await take('fusca');
    await factory.line({ speciesId: taken.animals.get('1')?.speciesId, name: 'By hand' });
    await refused(taken, 'line', 'By hand');
  });

  test('an animal of its line, from its source or its clutch', async () => {
    const taken = await take('grisea');
    const { speciesId, lineId } = taken.animals.get('1') ?? {};
    const made = await factory.individual({ speciesId, lineId, code: 'BY-HAND' });
    await refused(taken, 'individual', 'BY-HAND');
    await api.http
      .post(`/api/v1/individuals/${made.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'test' })
      .expect(201);
    await undo(taken.id).expect(201);
    // what was withdrawn before cannot come back without what it needs
    await api.http.delete(`/api/v1/individuals/${made.id}/withdrawal`).set('If-Match', '*').expect(409);
  });

  test('young raised from its clutch', async () => {
    const taken = await take('helva');
    const clutch = await api.http.get(`/api/v1/individuals/${taken.animals.get('3')?.id}`);
    await factory.offspring((clutch.body as { clutch: { id: string } }).clutch.id, { count: 1 });
    await refused(taken, 'individual', '');
  });

  test('a clutch with one of its animals as a candidate, in a list or in a pair', async () => {
    const listed = await take('incana');
    await factory.clutch({ sires: [{ individualId: listed.animals.get('1')?.id }], code: 'LISTED' });
    await refused(listed, 'clutch', 'LISTED');
    const paired = await take('jubata');
    await factory.clutch({
      pairs: [{ a: paired.animals.get('1')?.id, b: paired.animals.get('2')?.id }],
      code: 'PAIRED',
    });
    await refused(paired, 'clutch', 'PAIRED');
  });

  test('a stay in a pairing, and a remark', async () => {
    const housed = await take('kaki');
    await factory.pairing({ name: 'Tank kaki', members: [{ individualId: housed.animals.get('1')?.id }] });
    await refused(housed, 'pairing', 'Tank kaki');
    const remarked = await take('lutea');
    const remark = await factory.observation({ individualId: remarked.animals.get('2')?.id, observedOn: '2024-05-01' });
    await refused(remarked, 'observation', 'note of 2024-05-01');
    await api.http
      .post(`/api/v1/observations/${remark.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'test' })
      .expect(201);
    await undo(remarked.id).expect(201);
  });

  test('an animal of a later sheet, which may be undone first', async () => {
    const first = await take('mira');
    const second = await importSheet(api, 'code,species,line,sire,dam\nM-9,Inventus mira,Line mira,mira-1,mira-2\n');
    const answer = await undo(first.id).expect(409);
    expect(answer.body).toMatchObject({
      total: 2,
      dependants: [{ kind: 'clutch' }, { kind: 'individual', name: containing('M-9') }],
    });
    await undo((second.body as ImportView).id ?? '').expect(201);
    await undo(first.id).expect(201);
    // the later sheet needs what the first one brought
    const early = await restore((second.body as ImportView).id ?? '').expect(409);
    expect(early.body).toMatchObject({ detail: containing('Restore them first'), total: 4 });
    await restore(first.id).expect(200);
    await restore((second.body as ImportView).id ?? '').expect(200);
  });

  test('twenty are named, all are counted', async () => {
    const taken = await take('nivea');
    const { speciesId } = taken.animals.get('1') ?? {};
    for (let count = 0; count < 23; count++) await factory.individual({ speciesId });
    const { dependants, total } = (await undo(taken.id).expect(409)).body as { dependants: unknown[]; total: number };
    expect([dependants.length, total]).toEqual([20, 23]);
  });
});

describe('who may undo an import', () => {
  test('its keeper and registrars, nobody else', async () => {
    const own = await take('ovata', keeper);
    await undo(own.id, neighbour).expect(403);
    await undo(own.id, { http: api.stranger }).expect(401);
    await undo(own.id, keeper).expect(201);
    await restore(own.id, neighbour).expect(403);
    await restore(own.id, keeper).expect(200);
    await undo(own.id).expect(201);
  });

  test('is told of private records of others only that they are there', async () => {
    const own = await take('picta', keeper);
    const { speciesId } = own.animals.get('1') ?? {};
    const theirs = await new Factory(neighbour.http).individual({ speciesId, code: 'SECRET-1' });
    await api.dataSource.query(`update individual set visibility = 'private' where id = $1`, [theirs.id]);
    const answer = await undo(own.id, keeper).expect(409);
    expect(answer.body).toMatchObject({ dependants: [], total: 1, privateCount: 1 });
    expect(answer.text).not.toMatch(new RegExp(`SECRET|${theirs.id}|${theirs.number}`));
    expect((await undo(own.id).expect(409)).body).toMatchObject({
      dependants: [{ kind: 'individual', name: containing('SECRET-1') }],
      total: 1,
      privateCount: 0,
    });
  });
});

test('the journal tells of an import, of its undo and of its restoration, and can undo each', async () => {
  const { id } = await take('tincta');
  const actions = async (): Promise<string[]> => {
    const page = await api.http.get(`/api/v1/journal?record=${id}`).expect(200);
    return (page.body as { items: { action: string }[] }).items.map(({ action }) => action);
  };
  const history = await api.http.get(`/api/v1/journal?record=${id}`).expect(200);
  let entry = (history.body as { items: { id: string }[] }).items[0]?.id ?? '';
  for (const [action, individuals] of [
    ['import-undone', 0],
    ['import-restored', 3],
    ['import-undone', 0],
  ] as const) {
    const answer = await api.http.post(`/api/v1/journal/${entry}/reversal`).expect(201);
    expect(answer.body).toMatchObject({ action, reverses: entry });
    expect((await api.http.get(`/api/v1/imports/${id}`)).body).toMatchObject({ standing: { individuals } });
    entry = (answer.body as { id: string }).id;
  }
  expect((await restore(id)).headers['journal-entry']).toBeDefined();
  expect(await actions()).toEqual(['import-restored', 'import-undone', 'import-restored', 'import-undone', 'imported']);
});

test('an undo without a reason is refused at its field, one of an import before sheets were remembered says so', async () => {
  const { id } = await take('rosea');
  const answer = await api.http.post(`/api/v1/imports/${id}/withdrawal`).send({}).expect(422);
  expect(answer.body).toMatchObject({ errors: [{ pointer: '/reason' }] });
  await api.dataSource.query('update register_import set sheet_sha256 = null where id = $1', [id]);
  expect((await undo(id).expect(409)).body).toMatchObject({ detail: containing('one by one') });
});

test('of an undo and a clutch, a stay or a remark written at the same moment, one is told', async () => {
  for (let round = 0; round < 8; round++) {
    const taken = await take(`simul${'abcdefgh'[round] ?? ''}`);
    const individualId = taken.animals.get('1')?.id;
    const other = [
      () => api.http.post('/api/v1/clutches').send({ sires: [{ individualId }] }),
      () => api.http.post('/api/v1/pairings').send({ name: 'At once', members: [{ individualId }] }),
      () => api.http.post('/api/v1/observations').send({ individualId, kind: 'note', observedOn: '2024', text: 'x' }),
    ][round % 3];
    if (!other) throw new Error('there are three');
    const [undone, written] = await Promise.all([undo(taken.id), other()]);
    expect([
      [201, 422],
      [409, 201],
    ]).toContainEqual([undone.status, written.status]);
  }
});
