import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { bodyOf, textWith } from '../../support/answer.ts';
import { trio } from '../../support/factories.ts';
import { TransferWorld } from './transfer-world.ts';

let world: TransferWorld;

beforeAll(async () => {
  world = await TransferWorld.found();
});

beforeEach(() => world.api.dataSource.query('delete from rate_limit'));

afterAll(() => world.api.close());

const statusOf = async (http: TestAgent, path: string): Promise<number> => (await http.get(`/api/v1/${path}`)).status;

describe('a private animal on offer', () => {
  it('is seen by whom it is offered to, with what is known of it, until the offer ends', async () => {
    const { id } = await world.make.individual({ visibility: 'private', code: 'SECRET-1' });
    const { id: photograph } = await world.make.photograph({ individualId: id });
    await world.make.observation({ individualId: id, text: 'eats well' });
    const pairing = await world.make.pairing({ name: 'Behind the door', members: [{ individualId: id }] });
    const paths = [`individuals/${id}`, `individuals/${id}/lineage`, `photographs/${photograph}/file`];
    const ask = (http: TestAgent): Promise<number[]> => Promise.all(paths.map((path) => statusOf(http, path)));
    expect(await ask(world.ben.http)).toEqual([404, 404, 404]);
    const transfer = await world.offered({ animals: [id] });
    expect(await ask(world.ben.http)).toEqual([200, 200, 200]);
    expect(await ask(world.clara.http)).toEqual([404, 404, 404]);
    const seen = await world.animal(id, world.ben.http);
    expect(seen).toMatchObject({ code: 'SECRET-1', observations: [{ text: 'eats well' }], pairings: [] });
    expect(await statusOf(world.ben.http, `pairings/${pairing.id}`)).toBe(404);
    await world.step(world.ben.http, transfer.id, 'refusal');
    expect(await ask(world.ben.http)).toEqual([404, 404, 404]);
    const after = bodyOf<TransferView>(await world.ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200));
    expect(after.animals).toMatchObject([
      { id: 'private-1', number: null, code: null, species: null, givenCode: null },
    ]);
  });

  it('can be looked at, not changed', async () => {
    const { id } = await world.make.individual({ visibility: 'private' });
    await world.offered({ animals: [id] });
    await world.ben.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ notes: 'x' }).expect(403);
    const offer = await world.offer({ animals: [id], to: world.clara.id }, world.ben.http);
    expect(offer.status).toBe(403);
  });

  it('is found and counted by its receiver like any other', async () => {
    const found = async (http: TestAgent): Promise<unknown> =>
      (await http.get('/api/v1/individuals?code=SECRET-2&total=true').expect(200)).body as unknown;
    const { id } = await world.make.individual({ visibility: 'private', code: 'SECRET-2' });
    await world.offered({ animals: [id] });
    expect(await found(world.ben.http)).toMatchObject({ items: [{ id }], total: 1 });
    expect(await found(world.clara.http)).toEqual({ items: [], next: null, total: 0 });
  });
});

describe('whoever gave an animal', () => {
  it('keeps sight of it where the new keeper makes it private, but not of where it lives now', async () => {
    const { sire, dam } = await trio(world.make);
    const clutch = await world.make.clutchOf(sire.id, dam.id);
    const [young] = await world.make.offspring(clutch.id);
    const id = young?.id ?? '';
    await world.make.observation({ individualId: id, text: 'mine alone', visibility: 'private' });
    await world.accepted((await world.offered({ animals: [id] })).id);
    await world.change(id, { visibility: 'private' }, world.ben.http);
    await world.of(world.ben).pairing({ name: 'Ben 7', members: [{ individualId: id }] });
    const seen = await world.animal(id);
    expect(seen).toMatchObject({ keeper: 'Ben', pairings: [], observations: [{ text: 'mine alone' }] });
    const { young: brood } = bodyOf<ClutchView>(await world.anna.http.get(`/api/v1/clutches/${clutch.id}`).expect(200));
    expect(brood).toMatchObject([{ id }]);
    expect(await statusOf(world.clara.http, `individuals/${id}`)).toBe(404);
    const list = await world.anna.http.get(`/api/v1/transfers?side=given&individualId=${id}`).expect(200);
    expect(list.body).toMatchObject({ items: [{ first: [{ id, isPrivate: false }] }] });
  });

  it('and every one of them where it passed on', async () => {
    const { id } = await world.make.individual();
    await world.accepted((await world.offered({ animals: [id] })).id);
    const next = await world.offer({ animals: [id], to: world.clara.id }, world.ben.http);
    await world.step(world.clara.http, bodyOf<TransferView>(next).id, 'acceptance', {});
    await world.change(id, { visibility: 'private' }, world.clara.http);
    for (const { http } of [world.anna, world.ben, world.clara])
      expect(await world.animal(id, http)).toMatchObject({ keeper: 'Clara' });
  });

  it('sees it no more, if it is private, once the acceptance was undone and it was never the other’s', async () => {
    const { id } = await world.make.individual({ visibility: 'private' });
    const transfer = await world.offered({ animals: [id] });
    const answer = await world.step(world.ben.http, transfer.id, 'acceptance');
    await world.undo(answer, world.ben.http);
    await world.step(world.anna.http, transfer.id, 'withdrawal');
    expect(await statusOf(world.ben.http, `individuals/${id}`)).toBe(404);
  });
});

describe('the history of an animal', () => {
  const historyOf = async (id: string, http: TestAgent): Promise<JournalEntryView[]> =>
    bodyOf<{ items: JournalEntryView[] }>(await http.get(`/api/v1/journal?record=${id}`).expect(200)).items;

  it('tells every member who may see it that it changed hands, but not what passed between the two', async () => {
    const { id, number } = await world.make.individual({ code: null });
    const transfer = await world.offered({ animals: [id], note: 'for half the price' });
    expect((await historyOf(id, world.clara.http)).map(({ action }) => action)).toEqual(['added']);
    await world.accepted(transfer.id, { date: '2024-05-01' });
    const [passed, offered] = await historyOf(id, world.clara.http);
    expect(offered).toMatchObject({
      action: 'offered',
      record: { kind: 'transfer', title: 'transfer of 1 animal to Ben' },
    });
    expect(passed?.changes).toEqual([
      { field: 'state', before: 'offered', after: 'accepted' },
      { field: 'animals', before: `${number}: with Anna`, after: `${number}: with Ben` },
      { field: 'date', before: null, after: '2024-05-01' },
    ]);
    const told = JSON.stringify(await historyOf(id, world.clara.http));
    expect(told).toContain('told to the two of them');
    expect(told).not.toContain('half the price');
  });

  it('tells nobody to whom it left the club', async () => {
    const { id } = await world.make.individual();
    await world.left({ leftTo: 'Mrs. Neighbour', animals: [id], date: '2024-05' });
    const [entry] = await historyOf(id, world.ben.http);
    expect(entry).toMatchObject({ action: 'departed', record: { title: 'departure of 1 animal' } });
    expect(JSON.stringify(entry)).toContain(', gone');
    expect(JSON.stringify(entry)).not.toContain('Neighbour');
  });

  it('of a private one is told to the two alone, and a pairing tells that it left', async () => {
    const [hidden, open] = await world.make.individuals({ visibility: 'private' }, {});
    const members = [
      { individualId: hidden?.id, joined: '2022-02-02' },
      { individualId: open?.id, joined: '2022' },
    ];
    const pairing = await world.make.pairing({ members });
    const transfer = await world.offered({ animals: [hidden?.id, open?.id] });
    await world.accepted(transfer.id, { date: '2024-05-01' });
    const [told] = await historyOf(pairing.id, world.clara.http);
    expect(told).toMatchObject({ action: 'accepted', record: { id: transfer.id } });
    const stays = told?.changes.find(({ field }) => field === 'stays')?.after ?? '';
    expect(stays.split('\n')).toEqual([textWith('until 2024-05-01'), 'a private animal']);
    expect(JSON.stringify(told)).not.toContain(hidden?.number);
    expect((await historyOf(hidden?.id ?? '', world.anna.http)).map(({ action }) => action)).toContain('accepted');
  });
});

it('an import cannot be undone while its animals are with somebody else', async () => {
  const species = await world.make.species();
  const sheet = `code,species\nSHEET-1,${species.scientificName}\n`;
  const made = await world.anna.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet).expect(201);
  const { id } = bodyOf<{ id: string }>(made);
  const found = await world.anna.http.get('/api/v1/individuals?code=SHEET-1').expect(200);
  const [one] = bodyOf<{ items: { id: string }[] }>(found).items;
  await world.accepted((await world.offered({ animals: [one?.id] })).id);
  const refused = await world.anna.http.post(`/api/v1/imports/${id}/withdrawal`).send({ reason: 'x' });
  expect(refused.status).toBe(409);
  expect(refused.body).toMatchObject({ dependants: [{ kind: 'transfer', name: 'transfer to Ben' }] });
});
