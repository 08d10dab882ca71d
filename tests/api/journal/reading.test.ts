import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type TestAgent from 'supertest/lib/agent.js';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let owner: TestKeeper;
let member: TestKeeper;
let administrator: TestKeeper;
let owned: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  owner = await api.addKeeper('Owner');
  member = await api.addKeeper('Member');
  administrator = await api.addKeeper('Administrator', ['administrator']);
  owned = new Factory(owner.http);
});

afterAll(() => api.close());

interface Page {
  readonly items: JournalEntryView[];
  readonly next: string | null;
  readonly total?: number;
}

async function list(query: string, http: TestAgent = api.http): Promise<Page> {
  return bodyOf<Page>(await http.get(`/api/v1/journal?${query}`).expect(200));
}

async function change(http: TestAgent, path: string, body: object): Promise<string> {
  const answer = await http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200);
  return answer.headers['journal-entry'] ?? '';
}

let serial = 0;
const species = (): Promise<{ id: string }> => make.species({ scientificName: `Inventus lectus ${++serial}` });

/** An animal of the owner, in words of its own. */
const animal = async (fields: object = {}): Promise<{ id: string; number: string }> =>
  owned.individual({ speciesId: (await species()).id, ...fields });

describe('an entry tells what changed in words that a keeper reads', () => {
  it('with dates, names of lines and animals, and lists one a line', async () => {
    const { id: speciesId } = await species();
    const [one, two] = [
      await make.line({ speciesId, name: 'Inventa alba' }),
      await make.line({ speciesId, name: 'Inventa nigra' }),
    ];
    const { id } = await make.individual({ speciesId, lineId: one.id, hatched: '2018-03' });
    await change(api.http, `individuals/${id}`, { lineId: two.id, hatched: '2018~', notes: 'calls at night' });
    const [entry] = (await list(`record=${id}`)).items;
    expect(entry).toMatchObject({
      action: 'changed',
      keeper: { name: 'Keeper' },
      via: 'token',
      record: { kind: 'individual', id },
      reason: null,
      isUndoable: true,
      reverses: null,
      reversedBy: null,
    });
    expect(entry?.changes).toEqual([
      { field: 'line', before: 'Inventa alba', after: 'Inventa nigra' },
      { field: 'hatched', before: '2018-03', after: 'about 2018' },
      { field: 'notes', before: null, after: 'calls at night' },
    ]);
  });

  it('with the parents of a clutch and the animals of a pairing', async () => {
    const { sire, dam, other } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    await change(api.http, `clutches/${clutch.id}`, {
      sires: [
        { individualId: other.id, reason: 'seen' },
        { individualId: null, weight: 3 },
      ],
    });
    expect((await list(`record=${clutch.id}`)).items[0]?.changes).toEqual([
      {
        field: 'parents',
        before: [`dam ${dam.number} ${dam.code}, 100 %`, `sire ${sire.number} ${sire.code}, 100 %`].join('\n'),
        after: [
          `dam ${dam.number} ${dam.code}, 100 %`,
          `sire ${other.number} ${other.code}, 25 % (seen)`,
          'sire unknown, 75 %',
        ].join('\n'),
      },
    ]);
    const pairing = await make.pairing({ members: [{ individualId: sire.id, joined: '2020' }] });
    expect((await list(`record=${pairing.id}`)).items[0]?.changes).toContainEqual({
      field: 'members',
      before: null,
      after: `${sire.number} ${sire.code}, from 2020 to now`,
    });
  });

  it('and gives why, and its place in the chain', async () => {
    const { id } = await make.source();
    const answer = await api.http
      .post(`/api/v1/sources/${id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'entered twice' })
      .expect(201);
    const entryId = answer.headers['journal-entry'] ?? '';
    for (let tries = 0; tries < 60; tries++) {
      const entry = bodyOf<JournalEntryView>(await api.http.get(`/api/v1/journal/${entryId}`).expect(200));
      expect(entry).toMatchObject({ id: entryId, action: 'withdrawn', reason: 'entered twice' });
      if (entry.seal) {
        expect(entry.seal.hash).toMatch(/^[0-9a-f]{64}$/);
        return;
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    throw new Error('the entry was not sealed within three seconds');
  });
});

describe('the list', () => {
  it('goes on page by page, newest first, through every entry once', async () => {
    const { id } = await make.source({ notes: '0' });
    for (let step = 1; step <= 6; step++) await change(api.http, `sources/${id}`, { notes: String(step) });
    const seen: string[] = [];
    let after = '';
    for (;;) {
      const page = await list(`record=${id}&limit=2&total=true${after}`);
      expect(page.total).toBe(7);
      seen.push(...page.items.map((entry) => entry.changes.find(({ field }) => field === 'notes')?.after ?? ''));
      if (page.next === null) break;
      after = `&after=${page.next}`;
    }
    expect(seen).toEqual(['6', '5', '4', '3', '2', '1', '0']);
  });

  it('can be narrowed to a kind, a keeper, a kind of change and days', async () => {
    await animal();
    const all = await list('limit=200&total=true');
    const today = new Date().toISOString().slice(0, 10);
    const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
    expect((await list(`from=${today}&to=${tomorrow}&total=true`)).total).toBe(all.total);
    expect(await list(`from=${tomorrow}&total=true`)).toEqual({ items: [], next: null, total: 0 });
    expect((await list('to=2020-02-29')).items).toEqual([]);
    for (const [query, fits] of [
      [`keeper=${owner.id}`, (entry: JournalEntryView): boolean => entry.keeper?.id === owner.id],
      ['kind=source', (entry: JournalEntryView): boolean => entry.record?.kind === 'source'],
      ['action=withdrawn', (entry: JournalEntryView): boolean => entry.action === 'withdrawn'],
    ] as const) {
      const { items } = await list(`limit=200&${query}`);
      expect(items.length, query).toBeGreaterThan(0);
      expect(
        items.map(({ id }) => id),
        query,
      ).toEqual(all.items.filter(fits).map(({ id }) => id));
    }
  });

  it.each([
    ['a day that is not in the calendar', 'from=2023-02-30', '/from'],
    ['something that is no day', 'to=yesterday', '/to'],
    ['a kind of change that there is not', 'action=destroyed', '/action'],
    ['something that is no id', 'record=1001-5', '/record'],
    ['the place of another list', 'after=bm90aGluZw', '/after'],
  ])('refuses %s, and says where', async (_, query, pointer) => {
    const answer = await api.http.get(`/api/v1/journal?${query}`).expect(422);
    expect(answer.body).toMatchObject({ errors: [{ pointer }] });
  });

  it('is for members, and its single entries are found by id only', async () => {
    await api.stranger.get('/api/v1/journal').expect(401);
    await api.stranger.get('/api/v1/journal/head').expect(401);
    for (const id of ['00000000-0000-7000-8000-000000000000', 'seventeen'])
      await api.http.get(`/api/v1/journal/${id}`).expect(404);
  });
});

describe('an entry is read by', () => {
  const reads = async (http: TestAgent, id: string, entry: string): Promise<boolean> => {
    const { items } = await list(`record=${id}`, http);
    const { status } = await http.get(`/api/v1/journal/${entry}`);
    const isListed = items.some((item) => item.id === entry);
    expect(status).toBe(isListed ? 200 : 404);
    return isListed;
  };

  it('whoever may see the record', async () => {
    const { id } = await animal();
    const entry = await change(owner.http, `individuals/${id}`, { notes: 'open to all' });
    for (const http of [owner.http, member.http, api.http]) expect(await reads(http, id, entry)).toBe(true);
  });

  it('the keeper and registrars alone, once the record is private', async () => {
    const { id } = await animal();
    const entry = await change(owner.http, `individuals/${id}`, { notes: 'open at first' });
    await change(owner.http, `individuals/${id}`, { visibility: 'private' });
    expect(await reads(owner.http, id, entry)).toBe(true);
    expect(await reads(api.http, id, entry)).toBe(true);
    expect(await reads(member.http, id, entry)).toBe(false);
    expect((await list(`record=${id}&total=true`, member.http)).total).toBe(0);
  });

  it('the keeper and registrars alone, where the record was private then, even if it no longer is', async () => {
    const { id } = await animal({ visibility: 'private', notes: 'a secret of its own' });
    const secret = await change(owner.http, `individuals/${id}`, { notes: 'another secret' });
    const opening = await change(owner.http, `individuals/${id}`, { visibility: 'club', notes: 'nothing to hide' });
    const open = await change(owner.http, `individuals/${id}`, { notes: 'still nothing' });
    expect(await reads(member.http, id, secret)).toBe(false);
    // it tells what was there before
    expect(await reads(member.http, id, opening)).toBe(false);
    expect(await reads(member.http, id, open)).toBe(true);
    expect(JSON.stringify(await list('limit=200', member.http))).not.toContain('secret');
    for (const http of [owner.http, api.http]) expect(await reads(http, id, secret)).toBe(true);
  });

  it('nobody but its keeper, where it is a private remark', async () => {
    const { id } = await animal();
    const remark = await owned.observation({ individualId: id, text: 'whispered', visibility: 'private' });
    const [entry] = (await list(`record=${remark.id}`, owner.http)).items;
    expect(entry?.action).toBe('added');
    for (const http of [member.http, api.http]) expect(await reads(http, remark.id, entry?.id ?? '')).toBe(false);
  });

  it('members without the names of animals that they may not see', async () => {
    const { id: speciesId } = await species();
    const hidden = await owned.individual({ speciesId, sex: 'male', code: 'hidden-sire', visibility: 'private' });
    const dam = await owned.individual({ speciesId, sex: 'female' });
    const clutch = await owned.clutchOf(hidden.id, dam.id);
    const [entry] = (await list(`record=${clutch.id}`, member.http)).items;
    const told = entry?.changes.find(({ field }) => field === 'parents')?.after;
    expect(told).toBe(`dam ${dam.number} ${dam.code}, 100 %\nsire a private animal, 100 %`);
    expect((await list(`record=${clutch.id}`, owner.http)).items[0]?.changes).toContainEqual({
      field: 'parents',
      before: null,
      after: `dam ${dam.number} ${dam.code}, 100 %\nsire ${hidden.number} hidden-sire, 100 %`,
    });
    expect(JSON.stringify(await list('limit=200', member.http))).not.toContain('hidden-sire');
  });

  it('members not even as the young of a clutch whose entry they may read, where the young is private', async () => {
    const { id: speciesId } = await species();
    const [sire, dam] = await owned.individuals({ speciesId, sex: 'male' }, { speciesId, sex: 'female' });
    const clutch = await owned.clutchOf(sire?.id ?? '', dam?.id ?? '');
    const [open, closed] = await owned.offspring(clutch.id, { count: 2 });
    await change(owner.http, `individuals/${closed?.id}`, { visibility: 'private' });
    const raised = (await list(`record=${open?.id}`, member.http)).items.find(({ action }) => action === 'raised');
    expect(raised?.changes).toEqual([
      { field: 'young', before: null, after: `a private animal\n${open?.number}`.split('\n').sort().join('\n') },
    ]);
    expect(await list(`record=${closed?.id}&total=true`, member.http)).toEqual({ items: [], next: null, total: 0 });
    expect((await list(`record=${closed?.id}`, owner.http)).items.map(({ action }) => action)).toEqual([
      'changed',
      'raised',
    ]);
  });

  it('administrators and whom it concerns, where it is about a person', async () => {
    const answer = await administrator.http
      .patch(`/api/v1/keepers/${member.id}`)
      .set('If-Match', '*')
      .send({ roles: [] })
      .expect(200);
    const entry = answer.headers['journal-entry'] ?? '';
    for (const http of [administrator.http, member.http]) expect(await reads(http, member.id, entry)).toBe(true);
    expect(await reads(owner.http, member.id, entry)).toBe(false);
  });
});

it('the history of a young begins with its raising, and that of a clutch tells of every young', async () => {
  const { sire, dam } = await trio(make);
  const clutch = await make.clutchOf(sire.id, dam.id);
  const [one, two] = await make.offspring(clutch.id, { count: 2 });
  for (const id of [one?.id, two?.id, clutch.id]) {
    const [entry] = (await list(`record=${id}`)).items;
    expect(entry).toMatchObject({
      action: 'raised',
      record: { kind: 'clutch', id: clutch.id },
      changes: [{ field: 'young', before: null, after: `${one?.number}\n${two?.number}` }],
    });
  }
});
