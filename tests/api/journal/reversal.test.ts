import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { bodyOf, textWith } from '../../support/answer.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

type Fields = Record<string, unknown>;

const entryOf = (answer: Response): string => answer.headers['journal-entry'] ?? '';
const undo = async (entry: string, http: TestAgent = api.http): Promise<Response> =>
  http.post(`/api/v1/journal/${entry}/reversal`);

async function change(path: string, body: object, http: TestAgent = api.http): Promise<string> {
  return entryOf(await http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200));
}

/** A record as it goes out, without what every change raises, and without the ids of what is found anew. */
async function read(path: string): Promise<Fields> {
  const record = bodyOf<Fields>(await api.http.get(`/api/v1/${path}`).expect(200));
  return Object.fromEntries(Object.entries(record).filter(([name]) => !['version', 'updatedAt'].includes(name)));
}

interface Case {
  readonly path: string;
  readonly body: Fields;
}

const cases: Record<string, () => Promise<Case>> = {
  'an animal: its dates, sex, line and words': async () => {
    const line = await make.line();
    const { id } = await make.individual({
      speciesId: line.speciesId,
      lineId: line.id,
      sex: 'male',
      hatched: '2018~',
      outOfWater: '2018',
    });
    return {
      path: `individuals/${id}`,
      body: {
        lineId: null,
        sex: 'unsexed',
        hatched: '2019-02-03',
        outOfWater: null,
        died: '2021',
        notes: 'x',
        code: null,
        visibility: 'private',
      },
    };
  },
  'an animal: the clutch that it came from': async () => {
    const { speciesId, sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    const { id } = await make.individual({ speciesId });
    return { path: `individuals/${id}`, body: { clutchId: clutch.id } };
  },
  'a clutch: who may be its parents, and its losses': async () => {
    const { sire, dam, other } = await trio(make);
    const { id } = await make.clutch({
      laid: '2021-04',
      eggs: 7,
      sires: [
        { individualId: sire.id, weight: 1 },
        { individualId: other.id, weight: 2, reason: 'seen' },
        { individualId: null, weight: 4 },
      ],
      dams: [{ individualId: dam.id }],
      losses: [{ cause: 'mould', count: 2 }],
    });
    return {
      path: `clutches/${id}`,
      body: { sires: [], dams: [], losses: [{ cause: 'eaten', count: 1 }], laid: null, eggs: null },
    };
  },
  'a clutch: candidate pairs in place of parents': async () => {
    const { sire, dam, other } = await trio(make);
    const { id } = await make.clutchOf(sire.id, dam.id);
    return {
      path: `clutches/${id}`,
      body: {
        pairs: [
          { a: dam.id, b: other.id },
          { a: sire.id, b: dam.id, weight: 3 },
        ],
      },
    };
  },
  'a clutch: parents in place of candidate pairs': async () => {
    const { sire, dam, other } = await trio(make);
    const { id } = await make.clutch({
      pairs: [
        { a: dam.id, b: other.id, weight: 2 },
        { a: sire.id, b: dam.id, weight: 5, reason: 'size' },
      ],
    });
    return { path: `clutches/${id}`, body: { sires: [{ individualId: sire.id }], dams: [{ individualId: dam.id }] } };
  },
  'a pairing: its name and notes': async () => {
    const { id } = await make.pairing({ notes: 'one' });
    return { path: `pairings/${id}`, body: { name: 'Another name', notes: null } };
  },
  'a species: its ranges and where it lives': async () => {
    const { id } = await make.species({ ranges: mediumPoisonFrog, nativeRange: ['EC', 'PE'] });
    return { path: `species/${id}`, body: { ranges: [], nativeRange: ['CO'], commonName: 'x', citesAppendix: 'II' } };
  },
  'a line: its name and kind of label': async () => {
    const { id } = await make.line();
    return { path: `lines/${id}`, body: { name: 'Renamed', labelKind: 'cross', policy: 'none' } };
  },
  'a source: all that it says': async () => {
    const { id } = await make.source({ permitReferences: ['A-1', 'B-2'], baseKinship: 0.1 });
    return {
      path: `sources/${id}`,
      body: { date: '199X', permitReferences: [], baseKinship: 0.25, kind: 'purchase', visibility: 'public' },
    };
  },
  'a remark: its figures': async () => {
    const { id } = await make.observation({
      individualId: (await make.individual()).id,
      kind: 'measurement',
      svlMm: 31.7,
      massG: 1.1,
    });
    return { path: `observations/${id}`, body: { svlMm: null, massG: 2.3, observedOn: '2023', text: 'heavier' } };
  },
};

describe.each(Object.entries(cases))('a change of %s', (_, prepare) => {
  it('is undone to the last digit, and made again by undoing that', async () => {
    const { path, body } = await prepare();
    const before = await read(path);
    const entry = await change(path, body);
    const changed = await read(path);
    expect(changed).not.toEqual(before);

    const undone = await undo(entry);
    expect(undone.status).toBe(201);
    expect(undone.body).toMatchObject({ id: entryOf(undone), reverses: entry, action: 'changed', isUndoable: true });
    expect(await read(path)).toEqual(before);
    expect((await api.http.get(`/api/v1/journal/${entry}`)).body).toMatchObject({ reversedBy: entryOf(undone) });

    const again = await undo(entryOf(undone));
    expect(again.status).toBe(201);
    expect(await read(path)).toEqual(changed);
  });
});

describe('the stays of a pairing', () => {
  it.each<[string, (pairing: string, member: string, animal: string) => Promise<Response>]>([
    [
      'that were changed',
      (pairing, member) =>
        api.http
          .patch(`/api/v1/pairings/${pairing}/members/${member}`)
          .set('If-Match', '*')
          .send({ joined: '2019', left: '2021' })
          .then((answer) => answer),
    ],
    [
      'that were removed',
      (pairing, member) =>
        api.http
          .delete(`/api/v1/pairings/${pairing}/members/${member}`)
          .set('If-Match', '*')
          .then((answer) => answer),
    ],
    [
      'that were added',
      (pairing, _, animal) =>
        api.http
          .post(`/api/v1/pairings/${pairing}/members`)
          .set('If-Match', '*')
          .send({ individualId: animal, joined: '2022' })
          .then((answer) => answer),
    ],
  ])('%s are as before, under their own ids', async (_, act) => {
    const [one, two] = await make.individuals({}, {});
    const pairing = await make.pairing({ members: [{ individualId: one?.id, joined: '2020-05', left: '2021~' }] });
    const before = await read(`pairings/${pairing.id}`);
    const entry = entryOf(await act(pairing.id, pairing.members[0]?.id ?? '', two?.id ?? ''));
    expect(await read(`pairings/${pairing.id}`)).not.toEqual(before);
    expect((await undo(entry)).status).toBe(201);
    expect(await read(`pairings/${pairing.id}`)).toEqual(before);
  });

  it('do not come back where the animal lives elsewhere by now', async () => {
    const { id } = await make.individual();
    const pairing = await make.pairing({ members: [{ individualId: id }] });
    const removed = await api.http
      .delete(`/api/v1/pairings/${pairing.id}/members/${pairing.members[0]?.id}`)
      .set('If-Match', '*')
      .expect(200);
    await make.pairing({ members: [{ individualId: id }] });
    const answer = await undo(entryOf(removed));
    expect(answer.status).toBe(409);
    expect(answer.body).toMatchObject({ detail: textWith('lives in another pairing') });
  });
});

describe('a record that was', () => {
  it('added is withdrawn, and stands again', async () => {
    const answer = await api.http.post('/api/v1/species').send({ scientificName: 'Inventus falsus' }).expect(201);
    const path = `species/${bodyOf<{ id: string }>(answer).id}`;
    const undone = await undo(entryOf(answer));
    expect(undone.body).toMatchObject({ action: 'withdrawn', reverses: entryOf(answer) });
    expect(await read(path)).toMatchObject({ withdrawn: { reason: 'Its entry was undone' } });
    const again = await undo(entryOf(undone));
    expect(again.body).toMatchObject({ action: 'restored', reverses: entryOf(undone) });
    expect(await read(path)).toMatchObject({ withdrawn: null });
  });

  it('withdrawn is restored, and withdrawn again for the reason that it had', async () => {
    const { id } = await make.source();
    const answer = await api.http
      .post(`/api/v1/sources/${id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'twice' })
      .expect(201);
    const undone = await undo(entryOf(answer));
    expect(undone.body).toMatchObject({ action: 'restored' });
    expect((await undo(entryOf(undone))).body).toMatchObject({ action: 'withdrawn' });
    expect(await read(`sources/${id}`)).toMatchObject({ withdrawn: { reason: 'twice' } });
  });

  it('added stays where others need it by now; they are named', async () => {
    const answer = await api.http.post('/api/v1/species').send({ scientificName: 'Inventus necessarius' }).expect(201);
    const animal = await make.individual({ speciesId: bodyOf<{ id: string }>(answer).id });
    const refused = await undo(entryOf(answer));
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({ dependants: [{ kind: 'individual', id: animal.id }] });
  });
});

describe('young that were raised', () => {
  it('go together and come back together, in one entry', async () => {
    const { sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    const raised = await api.http.post(`/api/v1/clutches/${clutch.id}/offspring`).send({ count: 3 }).expect(201);
    const ids = bodyOf<{ items: { id: string }[] }>(raised).items.map(({ id }) => id);
    const undone = await undo(entryOf(raised));
    expect(undone.body).toMatchObject({ action: 'raising-undone', record: { kind: 'clutch', id: clutch.id } });
    for (const id of ids) expect((await read(`individuals/${id}`))['withdrawn']).not.toBeNull();
    const again = await undo(entryOf(undone));
    expect(again.body).toMatchObject({ action: 'raising-restored' });
    for (const id of ids) expect((await read(`individuals/${id}`))['withdrawn']).toBeNull();
    const history = bodyOf<{ items: JournalEntryView[] }>(await api.http.get(`/api/v1/journal?record=${ids[0]}`));
    expect(history.items.map(({ action }) => action)).toEqual(['raising-restored', 'raising-undone', 'raised']);
    expect((await undo(entryOf(again))).status).toBe(201);
  });

  it('stay, all of them, where one was changed since; the change is named', async () => {
    const { sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    const raised = await api.http.post(`/api/v1/clutches/${clutch.id}/offspring`).send({ count: 2 }).expect(201);
    const [one, two] = bodyOf<{ items: { id: string }[] }>(raised).items;
    const later = await change(`individuals/${two?.id}`, { notes: 'grows well' });
    const refused = await undo(entryOf(raised));
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({ since: [{ id: later }] });
    expect(await read(`individuals/${one?.id}`)).toMatchObject({ withdrawn: null });
  });
});

describe('an accepted warning', () => {
  const hasty = async (): Promise<{ path: string; entry: string }> => {
    const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
    const animal = await make.individual({ speciesId, hatched: '2020-03-01', outOfWater: '2020-03-02' });
    const path = `individuals/${animal.id}`;
    const confirm = `/api/v1/${path}/warnings/${animal.warnings[0]?.code}/confirmation`;
    return { path, entry: entryOf(await api.http.post(confirm).send({ reason: 'seen it' }).expect(201)) };
  };

  it('stands again, and is accepted again in the same words', async () => {
    const { path, entry } = await hasty();
    const accepted = await read(path);
    const undone = await undo(entry);
    expect(undone.body).toMatchObject({ action: 'unconfirmed', reverses: entry });
    expect(await read(path)).toMatchObject({ warnings: [{ confirmed: null }] });
    expect((await undo(entryOf(undone))).body).toMatchObject({ action: 'confirmed' });
    expect(await read(path)).toEqual(accepted);
  });

  it('stays accepted while another change of the record is undone', async () => {
    const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
    const animal = await make.individual({ speciesId, hatched: '2020-03-01', outOfWater: '2020-03-02' });
    const entry = await change(`individuals/${animal.id}`, { notes: 'x' });
    const confirm = `/api/v1/individuals/${animal.id}/warnings/${animal.warnings[0]?.code}/confirmation`;
    await api.http.post(confirm).send({ reason: 'seen it' }).expect(201);
    expect((await undo(entry)).status).toBe(201);
    expect(await read(`individuals/${animal.id}`)).toMatchObject({
      notes: null,
      warnings: [{ confirmed: { reason: 'seen it' } }],
    });
  });

  it('is not undone twice', async () => {
    const { entry } = await hasty();
    await undo(entry);
    const refused = await undo(entry);
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({ since: [{ action: 'unconfirmed' }] });
  });
});

it('an undo that is sent twice under one key is made once', async () => {
  const { id } = await make.individual();
  const entry = await change(`individuals/${id}`, { notes: 'one' });
  const send = async (): Promise<Response> =>
    api.http.post(`/api/v1/journal/${entry}/reversal`).set('Idempotency-Key', 'undo-1');
  const [first, second] = [await send(), await send()];
  expect(second.body).toEqual(first.body);
  expect(second.headers['journal-entry']).toBe(entryOf(first));
  expect(first.body).toMatchObject({ id: entryOf(first), reverses: entry });
});
