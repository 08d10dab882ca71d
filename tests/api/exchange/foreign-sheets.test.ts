import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ForeignSheetView } from '../../../api/exchange/foreign/foreign-sheet.view.ts';
import { SigningKeys } from '../../../api/selling/signing-keys/signing-keys.service.ts';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { formatRegistryNumber as no } from '../../../shared/registry-number.ts';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { madeAnimal, madeKey, madeSheet, type MadeKey } from '../../support/made-sheet.ts';

let api: TestApi;
let key: MadeKey;
let registerId: string;

const keysOf = (...keys: MadeKey[]): string => JSON.stringify(publishedKeys(keys));

async function send(file: string, more: object = {}, query = '', http = api.http) {
  const answer = await http.post(`/api/v1/foreign-sheets${query}`).send({ file, prefix: 'CF', ...more });
  return {
    status: answer.status,
    body: answer.body as ForeignSheetView & { detail: string; errors?: { pointer: string; detail: string }[] },
  };
}

async function taken(sheet: SheetDocument, more: object = {}): Promise<ForeignSheetView> {
  const answer = await send(await signSheet(sheet, key), more);
  expect([answer.status, answer.body.errors ?? []]).toEqual([201, []]);
  return answer.body;
}

async function read<T>(path: string): Promise<T> {
  const answer = await api.http.get(`/api/v1/${path}`).expect(200);
  return answer.body as T;
}

const hereOf = (view: ForeignSheetView, ref: string) => view.animals.find((animal) => animal.ref === ref)?.here ?? null;

beforeAll(async () => {
  api = await startApi();
  key = await madeKey();
  const answer = await api.http
    .post('/api/v1/other-registers')
    .send({ name: 'Circle of Frogs', address: 'https://register.example.org', keys: keysOf(key) })
    .expect(201);
  registerId = (answer.body as { id: string }).id;
});
afterAll(() => api.close());

describe('a sheet of a register that is believed', () => {
  let first: ForeignSheetView;

  it('is only checked, if that was asked for', async () => {
    const { status, body } = await send(await signSheet(madeSheet(), key), {}, '?dryRun=true');
    expect(status).toBe(200);
    expect(body).toMatchObject({
      id: null,
      register: { id: registerId, name: 'Circle of Frogs' },
      sheetNumber: 'PS-1001-2',
      created: { individuals: 3, clutches: 1, sources: 1, lines: 1, species: 1 },
      claims: 1,
    });
    expect(body.animals.map(({ number, code, here, isOnSheet }) => [number, code, here, isOnSheet])).toEqual([
      [no(1002), `CF ${no(1002)}`, null, true],
      ['1001-5', 'CF 1001-5', null, false],
      [null, 'CF PS-1001-2 a3', null, false],
    ]);
    expect((await read<{ items: unknown[] }>('individuals')).items).toEqual([]);
  });

  it('brings its animals with their ancestors, each saying whence it came', async () => {
    first = await taken(madeSheet());
    const froglet = await read<Record<string, unknown>>(`individuals/${hereOf(first, 'a1')?.id ?? ''}`);
    expect(froglet).toMatchObject({
      code: 'CF 1002-3',
      species: 'Epipedobates anthonyi',
      line: 'Quebrada Sonora',
      sex: 'unsexed',
      status: 'alive',
      hatched: '2024-03-01',
      outOfWater: '2024-04-20',
    });
    expect(froglet['notes']).toBe(
      'Taken in from the provenance sheet PS-1001-2 of Circle of Frogs, issued 2024-05-01, where its number is 1002-3 and its code EA-7. ' +
        'What the sheet says was signed there, and was not reviewed here.',
    );
    const pedigree = await read<{ edges: { probability?: number }[] }>(
      `individuals/${hereOf(first, 'a1')?.id ?? ''}/pedigree`,
    );
    expect(pedigree.edges.map(({ probability }) => probability).filter(Boolean)).toEqual(expect.arrayContaining([0.7]));
    const sire = await read<Record<string, unknown>>(`individuals/${hereOf(first, 'a2')?.id ?? ''}`);
    expect(sire).toMatchObject({ sex: 'male', hatched: '1994~', status: 'unknown' });
  });

  it('makes nothing documented here because it was there', async () => {
    const lineage = await read<{ label: { shares: { standing: string; share: number }[] } }>(
      `individuals/${hereOf(first, 'a2')?.id ?? ''}/lineage`,
    );
    expect(lineage.label.shares).toEqual([expect.objectContaining({ standing: 'stated', share: 1 })]);
    const { items } = await read<{ items: Record<string, unknown>[] }>('claims');
    expect(items).toEqual([
      expect.objectContaining({ value: 'Quebrada Sonora', statedBy: 'Circle of Frogs', statedOn: '2024-05-01' }),
    ]);
    const papers = await read<{ items: Record<string, unknown>[] }>('evidence');
    expect(papers.items).toEqual([
      expect.objectContaining({
        review: 'pending',
        reference: 'provenance sheet PS-1001-2',
        issuedBy: 'Circle of Frogs',
      }),
    ]);
  });

  it('brings nothing twice', async () => {
    const again = await send(await signSheet(madeSheet(), key));
    expect([again.status, again.body.detail]).toEqual([
      409,
      'Every animal of this sheet is in the register already; nothing is to be taken in.',
    ]);
  });

  it('of a sibling puts it into the clutch that is here, beside the parents that are here', async () => {
    const sibling = madeAnimal({ number: no(1003), code: 'EA-8' });
    const second = await taken(madeSheet({ number: 'PS-1002-1', animals: [sibling] }));
    // the private dam has no number by which it could be known again, so the clutch of the two is another one here
    expect(second.animals.map(({ ref, wasKnown }) => [ref, wasKnown])).toEqual([
      ['a1', false],
      ['a2', true],
      ['a3', false],
    ]);
    const [known, unknown] = madeSheet().ancestors;
    if (!known || !unknown) throw new Error('the made sheet has two ancestors');
    const dam = {
      ...unknown,
      isPrivate: false,
      number: no(1000),
      sex: 'female' as const,
      species: 'Epipedobates anthonyi',
    };
    const open = { ancestors: [known, dam], number: 'PS-1003-X' };
    const third = await taken(madeSheet({ ...open, animals: [madeAnimal({ number: no(1004) })] }));
    const fourth = await taken(
      madeSheet({ ...open, number: 'PS-1004-8', animals: [madeAnimal({ number: no(1005) })] }),
    );
    expect(fourth.created).toEqual({ individuals: 1, clutches: 0, sources: 0, lines: 0, species: 0 });
    const clutchOf = async (view: ForeignSheetView) =>
      (await read<{ clutch: { id: string } }>(`individuals/${hereOf(view, 'a1')?.id ?? ''}`)).clutch.id;
    expect(await clutchOf(fourth)).toBe(await clutchOf(third));
  });

  it('is undone as a whole, and comes again as if it had never been', async () => {
    const dated = madeSheet({
      number: 'PS-1010-2',
      animals: [madeAnimal({ number: no(2001) })],
      ancestors: madeSheet().ancestors,
    });
    const view = await taken(dated);
    const undone = await api.http.post(`/api/v1/imports/${view.id ?? ''}/withdrawal`).send({ reason: 'A trial.' });
    expect(undone.status).toBe(201);
    const again = await taken(dated);
    expect(again.animals.find(({ ref }) => ref === 'a1')?.wasKnown).toBe(false);
  });

  it('recognises an animal that the keeper names, from then on', async () => {
    const own = await api.http.post('/api/v1/individuals').send({
      code: 'went-there',
      speciesId: (await read<{ items: { id: string }[] }>('species')).items[0]?.id,
      sex: 'male',
    });
    const [, dam] = madeSheet().ancestors;
    const [father] = madeSheet().ancestors;
    if (!father || !dam) throw new Error('the made sheet has two ancestors');
    const sheet = madeSheet({
      number: 'PS-1020-X',
      animals: [madeAnimal({ number: no(3001) })],
      ancestors: [{ ...father, number: no(3000) }, dam],
    });
    const ownId = (own.body as { id: string }).id;
    const view = await taken(sheet, { known: [{ ref: 'a2', individual: ownId }] });
    expect(hereOf(view, 'a2')?.id).toBe(ownId);
    const next = await taken({ ...sheet, number: 'PS-1021-8', animals: [madeAnimal({ number: no(3002) })] });
    expect(hereOf(next, 'a2')?.id).toBe(ownId);
    const wrong = await send(await signSheet(sheet, key), { known: [{ ref: 'a9', individual: ownId }] });
    expect([wrong.status, wrong.body.errors?.[0]?.pointer]).toEqual([422, '/known/0/ref']);
  });

  it('taken in by two keepers at once comes in once', async () => {
    const other = await api.addKeeper('Second');
    const file = await signSheet(madeSheet({ number: 'PS-1030-7', animals: [madeAnimal({ number: no(4001) })] }), key);
    const answers = await Promise.all([send(file), send(file, { prefix: 'CF' }, '', other.http)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    const { items } = await read<{ items: { code: string }[] }>(`individuals?q=${no(4001)}`);
    expect(items).toHaveLength(1);
  });
});

describe('a sheet that is not believed', () => {
  const refused = async (file: string): Promise<string> => {
    const { status, body } = await send(file);
    expect(status).toBe(422);
    return body.errors?.[0]?.detail ?? '';
  };

  it('is one that was changed, or that another key signed', async () => {
    const file = await signSheet(madeSheet({ number: 'PS-1040-4' }), key);
    expect(await refused(file.replace('"hatched":"2024-03-01"', '"hatched":"2024-03-02"'))).toContain('was changed');
    expect(await refused(`${file} `)).toContain('not written as it was handed out');
    expect(await refused('{}')).toContain('no provenance sheet');
    const stranger = await madeKey();
    expect(await refused(await signSheet(madeSheet(), stranger))).toContain('A registrar can add the register');
  });

  it('is one of this register itself', async () => {
    await api.app.get(SigningKeys).ready();
    const published = await api.stranger.get('/.well-known/jwks.json');
    const [own] = (published.body as { keys: { kid: string }[] }).keys;
    const file = await signSheet(madeSheet(), { kid: own?.kid ?? '', privateKey: (await madeKey()).privateKey });
    expect(await refused(file)).toBe('This register issued the sheet itself: its animals are here already.');
  });

  it('is one with odds that no register sheet can say, told by its place', async () => {
    const [clutch] = madeSheet().clutches;
    if (!clutch) throw new Error('the made sheet has a clutch');
    const [sire, dam] = madeSheet().ancestors;
    if (!sire || !dam) throw new Error('the made sheet has two ancestors');
    const third = { ...dam, ref: 'a4' };
    const pairs = [
      { a: 'a2', b: 'a3', probability: 0.5 },
      { a: 'a2', b: 'a4', probability: 0.3 },
      { a: 'a3', b: 'a4', probability: 0.2 },
    ];
    const parents = ['a2', 'a3', 'a4'].map((animal) => ({ animal, as: 'either' as const, probability: 1 / 3 }));
    const sheet = madeSheet({
      number: 'PS-1050-1',
      animals: [madeAnimal({ number: no(5001) })],
      ancestors: [sire, dam, third],
      clutches: [{ ...clutch, parents, pairs, unknownDam: 0 }],
    });
    expect(await refused(await signSheet(sheet, key))).toContain('The clutch c1 has joint odds that differ');
  });
});

describe('registers of other clubs', () => {
  let plain: TestKeeper;
  beforeAll(async () => void (plain = await api.addKeeper('Plain')));

  it('are vouched for by registrars, with keys that can be read and are nobody else’s', async () => {
    const add = async (body: object, http = api.http) => (await http.post('/api/v1/other-registers').send(body)).status;
    const other = await madeKey();
    expect(await add({ name: 'Ring', keys: keysOf(other) }, plain.http)).toBe(403);
    expect(await add({ name: 'Ring', keys: 'no json' })).toBe(422);
    expect(await add({ name: 'Ring', keys: '{"keys":[]}' })).toBe(422);
    expect(await add({ name: 'Ring', keys: keysOf(other).replace(other.x, key.x) })).toBe(422);
    expect(await add({ name: 'circle of frogs', keys: keysOf(other) })).toBe(409);
    expect(await add({ name: 'Ring', keys: keysOf(key) })).toBe(409);
    expect(await add({ name: 'Ring', keys: keysOf(other) })).toBe(201);
  });

  it('take up new keys, while the old ones go on being believed', async () => {
    const rotated = await madeKey();
    const more = await api.http.post(`/api/v1/other-registers/${registerId}/keys`).send({
      keys: keysOf(
        { ...key, usedUntil: '2025-01-01T00:00:00.000Z' },
        { ...rotated, usedFrom: '2025-01-01T00:00:00.000Z' },
      ),
    });
    expect(more.status).toBe(201);
    const old = await send(
      await signSheet(madeSheet({ number: 'PS-1060-9', animals: [madeAnimal({ number: no(6001) })] }), key),
    );
    expect(old.status).toBe(201);
    const late = madeSheet({
      number: 'PS-1061-7',
      issued: '2025-06-01T10:00:00.000Z',
      animals: [madeAnimal({ number: no(6002) })],
    });
    expect((await send(await signSheet(late, key))).body.errors?.[0]?.detail).toContain('when its key was not in use');
    expect((await send(await signSheet(late, rotated))).status).toBe(201);
  });

  it('are believed no more once a registrar says so, and again', async () => {
    const at = `/api/v1/other-registers/${registerId}`;
    const file = await signSheet(madeSheet({ number: 'PS-1070-6', animals: [madeAnimal({ number: no(7001) })] }), key);
    expect((await api.http.post(`${at}/withdrawal`).send({ reason: 'Their key was stolen.' })).status).toBe(201);
    expect((await send(file)).status).toBe(422);
    expect((await api.http.delete(`${at}/withdrawal`)).status).toBe(200);
    expect((await send(file)).status).toBe(201);
  });
});
