import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf, textWith } from '../../support/answer.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
let owner: TestKeeper;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  owner = await api.addKeeper('Owner');
});

afterAll(() => api.close());

const entryOf = (answer: Response): string => answer.headers['journal-entry'] ?? '';
const undo = async (entry: string, http: TestAgent = api.http): Promise<Response> =>
  http.post(`/api/v1/journal/${entry}/reversal`);

async function change(path: string, body: object): Promise<string> {
  return entryOf(await api.http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body).expect(200));
}

async function read(path: string): Promise<Record<string, unknown>> {
  return bodyOf<Record<string, unknown>>(await api.http.get(`/api/v1/${path}`).expect(200));
}

describe('undoing is refused', () => {
  it('where the record was changed since, naming the later entries, newest first', async () => {
    const { id } = await make.individual();
    const first = await change(`individuals/${id}`, { notes: 'one' });
    const [second, third] = [
      await change(`individuals/${id}`, { notes: 'two' }),
      await change(`individuals/${id}`, { code: 'three' }),
    ];
    const refused = await undo(first);
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({
      detail: textWith('Undo the later changes first'),
      since: [{ id: third }, { id: second }],
    });
    expect(await read(`individuals/${id}`)).toMatchObject({ notes: 'two', code: 'three' });
    expect((await undo(third)).status).toBe(201);
    expect(await read(`individuals/${id}`)).toMatchObject({ notes: 'two' });
  });

  it('a second time: the entry that undid it is named', async () => {
    const { id } = await make.individual();
    const entry = await change(`individuals/${id}`, { notes: 'one' });
    const undone = await undo(entry);
    expect((await undo(entry)).body).toMatchObject({ status: 409, since: [{ id: entryOf(undone) }] });
  });

  it('to a keeper to whom the record does not belong, as the change would be', async () => {
    const { id } = await make.individual();
    const entry = await change(`individuals/${id}`, { notes: 'one' });
    expect((await undo(entry, owner.http)).status).toBe(403);
    expect(await read(`individuals/${id}`)).toMatchObject({ notes: 'one' });
  });

  it('to strangers, and to tokens for reading', async () => {
    const { id } = await make.individual();
    const entry = await change(`individuals/${id}`, { notes: 'one' });
    expect((await undo(entry, api.stranger)).status).toBe(401);
    const reader = await api.addKeeper('Reader', ['registrar'], 'read');
    expect((await undo(entry, reader.http)).status).toBe(403);
  });

  it('of what whoever asks may not read, as of what is not there', async () => {
    const { id } = await make.individual({ visibility: 'private' });
    const entry = await change(`individuals/${id}`, { notes: 'one' });
    expect((await undo(entry, owner.http)).status).toBe(404);
    expect((await undo('00000000-0000-7000-8000-000000000000')).status).toBe(404);
    expect((await undo('seventeen')).status).toBe(404);
  });

  it('where the state before names what was withdrawn since', async () => {
    const line = await make.line();
    const { id } = await make.individual({ speciesId: line.speciesId, lineId: line.id });
    const entry = await change(`individuals/${id}`, { lineId: null });
    await api.http.post(`/api/v1/lines/${line.id}/withdrawal`).set('If-Match', '*').send({ reason: 'x' }).expect(201);
    expect((await undo(entry)).body).toMatchObject({ status: 409, detail: textWith('This line was withdrawn') });
  });

  it('where it would close a loop by now', async () => {
    const { speciesId, sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id);
    const [young] = await make.offspring(clutch.id);
    const other = await make.individual({ speciesId, sex: 'male' });
    const entry = await change(`clutches/${clutch.id}`, { sires: [{ individualId: other.id }] });
    const second = await make.clutch({ dams: [{ individualId: dam.id }], sires: [{ individualId: other.id }] });
    // the sire that was taken out becomes a descendant of the clutch
    await change(`individuals/${young?.id}`, { sex: 'male' });
    await change(`clutches/${second.id}`, { sires: [{ individualId: young?.id }], dams: [] });
    await change(`individuals/${sire.id}`, { clutchId: second.id, hatched: null });
    const refused = await undo(entry);
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({ type: '/api/problems/loop', detail: textWith('close a loop') });
  });

  it('where the code is in use again', async () => {
    const [one, two] = await make.individuals({ code: 'once' }, {});
    const entry = await change(`individuals/${one?.id}`, { code: 'twice' });
    await change(`individuals/${two?.id}`, { code: 'once' });
    expect((await undo(entry)).body).toMatchObject({ status: 409, detail: textWith('code') });
  });
});
