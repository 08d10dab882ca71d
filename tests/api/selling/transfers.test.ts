import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import type { TransferItemView, TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf, textWith, type ProblemBody } from '../../support/answer.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let anna: TestKeeper;
let ben: TestKeeper;
let clara: TestKeeper;
let make: Factory;
let ofBen: Factory;

beforeAll(async () => {
  api = await startApi();
  anna = await api.addKeeper('Anna');
  ben = await api.addKeeper('Ben');
  clara = await api.addKeeper('Clara');
  make = new Factory(anna.http);
  ofBen = new Factory(ben.http);
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));

afterAll(() => api.close());

const offer = (body: object, http: TestAgent = anna.http): Promise<Response> =>
  http.post('/api/v1/transfers').send({ to: ben.id, ...body });
const offered = async (body: object): Promise<TransferView> => {
  const answer = await offer(body);
  expect(answer.status, answer.text).toBe(201);
  return bodyOf<TransferView>(answer);
};
const left = async (body: object): Promise<TransferView> => {
  const answer = await anna.http.post('/api/v1/transfers').send({ leftTo: null, ...body });
  expect(answer.status, answer.text).toBe(201);
  return bodyOf<TransferView>(answer);
};
const step = (http: TestAgent, id: string, what: string, body: object = {}, match = '*'): Promise<Response> =>
  http.post(`/api/v1/transfers/${id}/${what}`).set('If-Match', match).send(body);
const accepted = async (id: string, body: object = {}): Promise<TransferView> => {
  const answer = await step(ben.http, id, 'acceptance', body);
  expect(answer.status, answer.text).toBe(201);
  return bodyOf<TransferView>(answer);
};
const animal = async (id: string, http: TestAgent = anna.http): Promise<IndividualView> =>
  bodyOf<IndividualView>(await http.get(`/api/v1/individuals/${id}`).expect(200));
const undo = (answer: Response, http: TestAgent): Promise<Response> =>
  http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`);

describe('an offer to another keeper', () => {
  it('waits for an answer, and changes nothing until then', async () => {
    const { id, number, code } = await make.individual({ code: 'EA-07' });
    const transfer = await offered({ animals: [id], date: '2026-05', note: 'eats well' });
    expect(transfer).toMatchObject({
      kind: 'handover',
      state: 'offered',
      from: { name: 'Anna' },
      to: { name: 'Ben' },
      date: '2026-05',
      note: 'eats well',
      count: 1,
      settledBy: null,
      steps: ['withdraw'],
      animals: [{ id, number, code, givenCode: 'EA-07', isPrivate: false }],
    });
    expect(await animal(id)).toMatchObject({ keeper: 'Anna', version: 1 });
    const seen = await ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200);
    expect(seen.headers['etag']).toBe('"1"');
    expect(bodyOf<TransferView>(seen).steps).toEqual(['accept', 'decline']);
    await clara.http.get(`/api/v1/transfers/${transfer.id}`).expect(404);
  });

  it('hands over the record itself, with everything that is known of it', async () => {
    const [one] = await make.individuals({ code: 'A-1', notes: 'a scar on the back' });
    if (!one) throw new Error('one animal was asked for');
    await make.observation({ individualId: one.id, text: 'calls at dawn' });
    const { id } = await offered({ animals: [one.number], date: '2024-05-01' });
    const transfer = await accepted(id, { date: '2024-05-03' });
    expect(transfer).toMatchObject({ state: 'accepted', settledBy: 'Ben', date: '2024-05-03', steps: [], version: 2 });
    const now = await animal(one.id);
    expect(now).toMatchObject({
      id: one.id,
      number: one.number,
      keeper: 'Ben',
      code: 'A-1',
      notes: 'a scar on the back',
    });
    expect(now.observations).toMatchObject([{ text: 'calls at dawn' }]);
    await anna.http.patch(`/api/v1/individuals/${one.id}`).set('If-Match', '*').send({ notes: 'x' }).expect(403);
    await ben.http.patch(`/api/v1/individuals/${one.id}`).set('If-Match', '*').send({ notes: 'x' }).expect(200);
  });

  it('takes the date of the offer if that has come, else today', async () => {
    const today = new Date().toISOString().slice(0, 10);
    const [past, later] = await make.individuals({}, {});
    const one = await offered({ animals: [past?.id], date: '2023-08' });
    expect((await accepted(one.id)).date).toBe('2023-08');
    const other = await offered({ animals: [later?.id], date: '2199' });
    expect((await accepted(other.id)).date).toBe(today);
    const third = await offered({ animals: [(await make.individual()).id] });
    const refused = await step(ben.http, third.id, 'acceptance', { date: '2199-01' });
    expect(refused.status).toBe(422);
    expect(bodyOf<ProblemBody>(refused).errors).toMatchObject([
      { pointer: '/date', detail: textWith('has not come yet') },
    ]);
  });

  it('is declined or withdrawn with a reason, and leaves everything as it was', async () => {
    const { id } = await make.individual();
    const before = await animal(id);
    for (const [what, state, http, who] of [
      ['refusal', 'declined', ben.http, 'Ben'],
      ['withdrawal', 'withdrawn', anna.http, 'Anna'],
    ] as const) {
      const transfer = await offered({ animals: [id] });
      const answer = await step(http, transfer.id, what, { reason: 'no room' });
      expect(answer.status, answer.text).toBe(201);
      expect(bodyOf<TransferView>(answer)).toMatchObject({ state, reason: 'no room', settledBy: who, steps: [] });
      expect(await animal(id)).toEqual(before);
    }
  });

  it('tells whoever comes too late what happened meanwhile', async () => {
    const { id } = await offered({ animals: [(await make.individual()).id] });
    await step(anna.http, id, 'withdrawal');
    const late = await step(ben.http, id, 'acceptance', {}, '"1"');
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({
      detail: textWith('Anna withdrew this offer on '),
      current: { state: 'withdrawn' },
    });
    const again = await step(anna.http, id, 'withdrawal');
    expect([again.status, bodyOf<ProblemBody>(again).detail]).toEqual([409, textWith('Nothing more can be done')]);
    const declined = await offered({ animals: [(await make.individual()).id] });
    await step(ben.http, declined.id, 'refusal');
    expect(bodyOf<ProblemBody>(await step(ben.http, declined.id, 'acceptance')).detail).toContain(
      'Ben declined this offer',
    );
  });

  it('wants the version that was read', async () => {
    const { id } = await offered({ animals: [(await make.individual()).id] });
    await ben.http.post(`/api/v1/transfers/${id}/acceptance`).send({}).expect(428);
    expect((await step(ben.http, id, 'acceptance', {}, '"7"')).status).toBe(412);
    expect((await step(ben.http, id, 'acceptance', {}, '"1"')).status).toBe(201);
  });

  it('is answered by its receiver or a registrar, never by who made it', async () => {
    const { id } = await offered({ animals: [(await make.individual()).id] });
    expect((await step(anna.http, id, 'acceptance')).status).toBe(403);
    expect((await step(ben.http, id, 'withdrawal')).status).toBe(403);
    expect((await step(clara.http, id, 'acceptance')).status).toBe(404);
    expect((await step(api.http, id, 'acceptance')).status).toBe(201);
    const registrar = await api.addKeeper('Rosa', ['registrar']);
    const { id: speciesId } = await make.species();
    const own = await new Factory(registrar.http).individual({ speciesId });
    const mine = await registrar.http
      .post('/api/v1/transfers')
      .send({ to: ben.id, animals: [own.id] })
      .expect(201);
    expect((await step(registrar.http, bodyOf<TransferView>(mine).id, 'acceptance')).status).toBe(403);
  });
});

describe('what cannot be offered', () => {
  it.each<[string, () => Promise<object>, number, string, string]>([
    ['nothing', async () => Promise.resolve({ animals: [] }), 422, '/animals', 'at least one'],
    [
      'an animal that is not there',
      async () => Promise.resolve({ animals: ['10704-4'] }),
      422,
      '/animals/0',
      'no animal',
    ],
    ['an animal twice', async () => twice(await make.individual()), 422, '/animals/1', 'stands twice'],
    [
      'a dead animal',
      async () => ({ animals: [(await make.individual({ died: '2020' })).id] }),
      422,
      '/animals/0',
      'recorded as died',
    ],
    ['to oneself', async () => ({ to: anna.id, animals: [(await make.individual()).id] }), 422, '/to', 'already'],
    [
      'to nobody',
      async () => ({ to: (await make.species()).id, animals: [(await make.individual()).id] }),
      422,
      '/to',
      'no keeper',
    ],
    [
      'to a keeper and out of the club',
      async () => ({ leftTo: 'x', animals: [(await make.individual()).id] }),
      422,
      '/to',
      'either',
    ],
    [
      'animals and a clutch',
      async () => ({ clutch: (await make.clutch()).id, animals: [(await make.individual()).id] }),
      422,
      '/animals',
      'either',
    ],
    ['a clutch without young', async () => ({ clutch: (await make.clutch()).id }), 422, '/clutch', 'no living young'],
  ])('%s', async (_, body, status, pointer, detail) => {
    const answer = await offer(await body());
    expect(answer.status, answer.text).toBe(status);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([{ pointer, detail: textWith(detail) }]);
  });

  const twice = ({ id, number }: IndividualView): object => ({ animals: [id, number] });

  it('an animal that is on offer already', async () => {
    const { id } = await make.individual();
    await offered({ animals: [id] });
    const answer = await offer({ animals: [id], to: clara.id });
    expect(answer.status).toBe(409);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/animals/0', detail: textWith('on offer already') },
    ]);
    const gone = await anna.http.post('/api/v1/transfers').send({ leftTo: null, animals: [id] });
    expect(gone.status).toBe(409);
    const withdrawn = await anna.http
      .post(`/api/v1/individuals/${id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'x' });
    expect(withdrawn.status).toBe(409);
    expect(withdrawn.body).toMatchObject({ dependants: [{ kind: 'transfer', name: 'transfer to Ben' }] });
  });

  it('an animal of another keeper, but a registrar may do it for the keeper', async () => {
    const { id } = await ofBen.individual({ speciesId: (await make.species()).id });
    expect((await offer({ animals: [id], to: clara.id })).status).toBe(403);
    const answer = await offer({ animals: [id], to: clara.id }, api.http);
    expect(bodyOf<TransferView>(answer)).toMatchObject({ from: { name: 'Ben' }, to: { name: 'Clara' } });
    const both = await offer(
      {
        animals: [(await make.individual()).id, (await ofBen.individual({ speciesId: (await make.species()).id })).id],
        to: clara.id,
      },
      api.http,
    );
    expect(bodyOf<ProblemBody>(both).errors).toMatchObject([
      { pointer: '/animals/0', detail: textWith('several keepers') },
    ]);
  });

  it('to somebody who left the club', async () => {
    const gone = await api.addKeeper('Gone');
    await api.dataSource.query('update keeper set left_at = now() where id = $1', [gone.id]);
    const answer = await offer({ to: gone.id, animals: [(await make.individual()).id] });
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/to', detail: textWith('has left the club') },
    ]);
  });

  it('more than 200 animals', async () => {
    const answer = await offer({ animals: Array.from({ length: 201 }, () => '10704-4') });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/animals', detail: textWith('at most 200') },
    ]);
  });
});

describe('a batch of froglets', () => {
  it('of one clutch passes in one go: the living ones of the giver that are not on offer', async () => {
    const { sire, dam } = await trio(make);
    const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2024-01-05' });
    const young = await make.offspring(clutch.id, { count: 6 });
    const [dead, elsewhere, ...rest] = young.map(({ id }) => id);
    await anna.http.patch(`/api/v1/individuals/${dead}`).set('If-Match', '*').send({ died: '2024-06' }).expect(200);
    await offered({ animals: [elsewhere] });
    const transfer = await offered({ clutch: clutch.id });
    expect(transfer.animals.map(({ id }) => id)).toEqual(rest);
    expect(transfer.first).toHaveLength(3);
    expect(transfer.warnings).toHaveLength(4);
    expect(transfer.warnings[0]).toMatchObject({ code: 'in-water', detail: textWith('Is it still a tadpole?') });
    await accepted(transfer.id);
    for (const id of rest) expect(await animal(id)).toMatchObject({ keeper: 'Ben', clutch: { id: clutch.id } });
    expect(await animal(elsewhere ?? '')).toMatchObject({ keeper: 'Anna' });
  });
});

describe('the codes of the receiver', () => {
  it('may be chosen with the acceptance, and the code that was given stays on record', async () => {
    const [one, other] = await make.individuals({ code: 'K-1' }, { code: 'K-2' });
    const { id } = await offered({ animals: [one?.id, other?.id] });
    const codes = [
      { individualId: one?.number, code: 'B-1' },
      { individualId: other?.id, code: null },
    ];
    const transfer = await accepted(id, { codes });
    expect(transfer.animals).toMatchObject([
      { code: 'B-1', givenCode: 'K-1' },
      { code: null, givenCode: 'K-2' },
    ]);
    const known = bodyOf<TransferView>(await clara.http.get(`/api/v1/transfers/${id}`).expect(200));
    expect(known.animals).toMatchObject([{ code: 'B-1', givenCode: null }, {}]);
  });

  it('that are in use are told, each with what to do, and nothing passes', async () => {
    await ofBen.individual({ code: 'EA-11', speciesId: (await make.species()).id });
    const [one, other, third] = await make.individuals({ code: 'ea-11' }, { code: 'EA-12' }, { code: 'EA-13' });
    const { id } = await offered({ animals: [one?.id, other?.id, third?.id] });
    const answer = await step(ben.http, id, 'acceptance', { codes: [{ individualId: other?.id, code: 'EA-13' }] });
    expect(answer.status).toBe(409);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/codes', detail: textWith('The code ea-11 is in use') },
      { pointer: '/codes', detail: textWith('The code EA-13 is in use') },
    ]);
    expect(await animal(other?.id ?? '')).toMatchObject({ keeper: 'Anna', code: 'EA-12' });
    await accepted(id, { codes: [{ individualId: one?.id, code: 'EA-14' }] });
    expect(await animal(one?.id ?? '')).toMatchObject({ keeper: 'Ben', code: 'EA-14' });
  });

  it('are for the animals that are offered, each once', async () => {
    const { id: own } = await make.individual();
    const { id } = await offered({ animals: [own] });
    const stranger = await make.individual();
    const answer = await step(ben.http, id, 'acceptance', {
      codes: [
        { individualId: own, code: 'C-1' },
        { individualId: own, code: 'C-2' },
        { individualId: stranger.id, code: 'C-3' },
      ],
    });
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/codes/1/individualId', detail: textWith('stands twice') },
      { pointer: '/codes/2/individualId', detail: textWith('not among those') },
    ]);
  });
});

describe('where the animals live', () => {
  const stays = async (id: string): Promise<PairingView['members']> =>
    bodyOf<PairingView>(await anna.http.get(`/api/v1/pairings/${id}`).expect(200)).members;

  it('their stays with the giver end on the day, and go on after an undo', async () => {
    const { sire, dam } = await trio(make);
    const members = [{ individualId: sire.id, joined: '2020' }, { individualId: dam.id }];
    const pairing = await make.pairing({ name: 'Tank 3', members });
    const transfer = await offered({ animals: [sire.id] });
    expect(transfer.warnings).toMatchObject([{ code: 'stay-ends', detail: textWith('lives in Tank 3') }]);
    const answer = await step(ben.http, transfer.id, 'acceptance', { date: '2024-06-01' });
    expect(await stays(pairing.id)).toMatchObject([
      { left: null },
      { individual: { id: sire.id }, left: '2024-06-01' },
    ]);
    expect((await undo(answer, ben.http)).status).toBe(201);
    expect((await stays(pairing.id)).map(({ left: day }) => day)).toEqual([null, null]);
    expect(await animal(sire.id)).toMatchObject({ keeper: 'Anna' });
  });

  it('a stay that began after the day is told', async () => {
    const { id } = await make.individual();
    await make.pairing({ name: 'Tank 4', members: [{ individualId: id, joined: '2024-07' }] });
    const transfer = await offered({ animals: [id] });
    const answer = await step(ben.http, transfer.id, 'acceptance', { date: '2024-06-30' });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/date', detail: textWith('joined Tank 4 on 2024-07') },
    ]);
  });

  it('a stay with the receiver goes on', async () => {
    const { id } = await make.individual();
    const pairing = await ofBen.pairing({ members: [{ individualId: id, joined: '2023' }] });
    await accepted((await offered({ animals: [id] })).id);
    expect(await stays(pairing.id)).toMatchObject([{ left: null }]);
  });
});

describe('an acceptance that is undone', () => {
  it('gives the animals back under their codes, and the offer stands again', async () => {
    const { id } = await make.individual({ code: 'U-1' });
    const transfer = await offered({ animals: [id] });
    const answer = await step(ben.http, transfer.id, 'acceptance', {
      codes: [{ individualId: id, code: 'U-9' }],
      date: '2024',
    });
    expect((await undo(answer, anna.http)).status).toBe(403);
    const undone = await undo(answer, ben.http);
    expect(undone.status, undone.text).toBe(201);
    expect(await animal(id)).toMatchObject({ keeper: 'Anna', code: 'U-1' });
    const again = bodyOf<TransferView>(await ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200));
    expect(again).toMatchObject({ state: 'offered', settledBy: null, steps: ['accept', 'decline'] });
    const redone = await undo(undone, ben.http);
    expect(redone.status, redone.text).toBe(201);
    expect(await animal(id)).toMatchObject({ keeper: 'Ben', code: 'U-9' });
  });

  it.each<[string, (id: string) => Promise<unknown>, string]>([
    [
      'it passed on',
      (id) =>
        ben.http
          .post('/api/v1/transfers')
          .send({ to: clara.id, animals: [id] })
          .expect(201),
      'on offer, or was passed on',
    ],
    [
      'it lives with the receiver',
      (id) => ofBen.pairing({ name: 'Ben 1', members: [{ individualId: id }] }),
      'lives or lived in Ben 1',
    ],
    [
      'it bred there',
      (id) => ofBen.clutch({ code: `C-${id}`, sires: [{ individualId: id }] }),
      'names it as a possible parent',
    ],
    [
      'it died',
      (id) => ben.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ died: '2025' }).expect(200),
      'recorded as died',
    ],
  ])('is refused where %s, and says so', async (_, since, why) => {
    const { id, number } = await make.individual();
    const transfer = await offered({ animals: [id] });
    const answer = await step(ben.http, transfer.id, 'acceptance', { date: '2024' });
    await since(id);
    const refused = await undo(answer, ben.http);
    expect(refused.status, refused.text).toBe(409);
    expect(refused.body).toMatchObject({ changed: [{ individualId: id, number, detail: textWith(why) }] });
    expect(await animal(id)).toMatchObject({ keeper: 'Ben' });
  });

  it('is refused where the giver has given the code to another meanwhile', async () => {
    const { id } = await make.individual({ code: 'UC-1' });
    const answer = await step(ben.http, (await offered({ animals: [id] })).id, 'acceptance');
    await make.individual({ code: 'UC-1' });
    const refused = await undo(answer, ben.http);
    expect([refused.status, bodyOf<ProblemBody>(refused).detail]).toEqual([409, textWith('given the code UC-1')]);
  });
});

describe('an offer that was withdrawn or declined', () => {
  it('stands again after an undo by whoever did it', async () => {
    const { id } = await make.individual();
    const transfer = await offered({ animals: [id] });
    const withdrawn = await step(anna.http, transfer.id, 'withdrawal');
    const other = await offered({ animals: [id], to: clara.id });
    expect((await undo(withdrawn, anna.http)).status).toBe(409);
    await step(clara.http, other.id, 'refusal').then(({ status }) => expect(status).toBe(201));
    expect((await undo(withdrawn, anna.http)).status).toBe(201);
    const declined = await step(ben.http, transfer.id, 'refusal');
    expect((await undo(declined, ben.http)).status).toBe(201);
    expect((await accepted(transfer.id)).state).toBe('accepted');
  });
});

describe('an offer meanwhile', () => {
  it.each<[string, (id: string) => Promise<unknown>, string]>([
    [
      'died',
      (id) => anna.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ died: '2025' }).expect(200),
      'recorded as died',
    ],
    ['was merged', async (id) => merge(id), 'merged into another'],
  ])('of an animal that %s is not accepted, and says why', async (_, since, why) => {
    const speciesId = (await make.species()).id;
    const [one, other] = await make.individuals({ speciesId }, { speciesId });
    const transfer = await offered({ animals: [one?.id, other?.id] });
    await since(one?.id ?? '');
    const refused = await step(ben.http, transfer.id, 'acceptance');
    expect(refused.status, refused.text).toBe(409);
    expect(refused.body).toMatchObject({ detail: textWith(why), changed: [{ individualId: one?.id }] });
    expect(await animal(other?.id ?? '')).toMatchObject({ keeper: 'Anna' });
  });

  async function merge(id: string): Promise<void> {
    const { speciesId } = await animal(id);
    const kept = await make.individual({ speciesId });
    await api.http
      .post('/api/v1/merges')
      .send({ keptId: kept.id, duplicateId: id, reason: 'one animal', take: [] })
      .expect(201);
  }
});

describe('animals that left the club', () => {
  it('are gone from the day on, their record stays, and their stays end', async () => {
    const { id } = await make.individual();
    const pairing = await make.pairing({ members: [{ individualId: id, joined: '2022' }] });
    const transfer = await left({
      leftTo: 'Mrs. Neighbour',
      animals: [id],
      date: '2024-09-01',
      note: 'for her daughter',
    });
    expect(transfer).toMatchObject({
      kind: 'departure',
      state: 'accepted',
      to: null,
      leftTo: 'Mrs. Neighbour',
      steps: ['withdraw', 'return'],
    });
    expect(await animal(id)).toMatchObject({
      keeper: 'Anna',
      status: 'gone',
      pairings: [{ id: pairing.id, left: '2024-09-01' }],
    });
    const known = bodyOf<TransferView>(await ben.http.get(`/api/v1/transfers/${transfer.id}`).expect(200));
    expect(known).toMatchObject({ leftTo: null, note: null, date: '2024-09-01', steps: [] });
  });

  it('come back exactly as they were when the departure is withdrawn; what was corrected since stays', async () => {
    const { id } = await make.individual();
    const pairing = await make.pairing({ members: [{ individualId: id, joined: '2022' }] });
    const transfer = await left({ animals: [id], date: '2024-09-01' });
    await anna.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ sex: 'female' }).expect(200);
    const answer = await step(anna.http, transfer.id, 'withdrawal');
    expect(answer.status, answer.text).toBe(201);
    expect(await animal(id)).toMatchObject({
      status: 'alive',
      sex: 'female',
      pairings: [{ id: pairing.id, left: null }],
    });
    expect((await undo(answer, anna.http)).status).toBe(201);
    expect(await animal(id)).toMatchObject({ status: 'gone', pairings: [{ id: pairing.id, left: '2024-09-01' }] });
  });

  it('are not put back where one died or its stay was changed, and the answer says so', async () => {
    const { id } = await make.individual();
    const pairing = await make.pairing({ name: 'Tank 9', members: [{ individualId: id, joined: '2022' }] });
    const transfer = await left({ animals: [id], date: '2024-09-01' });
    const [stay] = pairing.members;
    await anna.http
      .patch(`/api/v1/pairings/${pairing.id}/members/${stay?.id}`)
      .set('If-Match', '*')
      .send({ left: '2024-08' })
      .expect(200);
    await anna.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ status: 'died' }).expect(200);
    const refused = await step(anna.http, transfer.id, 'withdrawal');
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({
      changed: [{ detail: textWith('recorded as died') }, { detail: textWith('stay in Tank 9 was changed') }],
    });
  });

  it('may come back later, which stays on record', async () => {
    const [one, other] = await make.individuals({}, {});
    const transfer = await left({ animals: [one?.id, other?.id], date: '2024-01' });
    const early = await step(anna.http, transfer.id, 'returns', { animals: [one?.id], date: '2023' });
    expect(bodyOf<ProblemBody>(early).errors).toMatchObject([{ pointer: '/date', detail: textWith('lies before it') }]);
    const answer = await step(anna.http, transfer.id, 'returns', { animals: [one?.id], date: '2025-02' });
    expect(answer.status, answer.text).toBe(201);
    expect(bodyOf<TransferView>(answer)).toMatchObject({ state: 'accepted', steps: ['return'] });
    expect(await animal(one?.id ?? '')).toMatchObject({ status: 'alive' });
    expect(await animal(other?.id ?? '')).toMatchObject({ status: 'gone' });
    expect((await step(anna.http, transfer.id, 'withdrawal')).status).toBe(409);
    expect((await step(anna.http, transfer.id, 'returns', { animals: [one?.id] })).status).toBe(409);
    const undone = await undo(answer, anna.http);
    expect(undone.status, undone.text).toBe(201);
    expect(await animal(one?.id ?? '')).toMatchObject({ status: 'gone' });
    expect((await undo(undone, anna.http)).status).toBe(201);
    const all = await step(anna.http, transfer.id, 'returns');
    expect(bodyOf<TransferView>(all)).toMatchObject({ animals: [{ returned: '2025-02' }, {}], steps: [] });
  });
});

describe('the list', () => {
  it('shows what I gave, what I was offered, and the transfers of an animal, newest first', async () => {
    const club = await startApi();
    const [dora, emil] = [await club.addKeeper('Dora'), await club.addKeeper('Emil')];
    const own = await new Factory(dora.http).individuals({}, {}, {});
    const ids: string[] = [];
    for (const { id } of own) {
      const sent = await dora.http
        .post('/api/v1/transfers')
        .send({ to: emil.id, animals: [id] })
        .expect(201);
      ids.unshift(bodyOf<TransferView>(sent).id);
    }
    await step(emil.http, ids[0] ?? '', 'acceptance');
    const list = async (http: TestAgent, query: string): Promise<string[]> =>
      bodyOf<{ items: TransferItemView[] }>(await http.get(`/api/v1/transfers?${query}`).expect(200)).items.map(
        ({ id }) => id,
      );
    expect(await list(dora.http, 'side=given')).toEqual(ids);
    expect(await list(emil.http, 'side=received&state=offered')).toEqual(ids.slice(1));
    expect(await list(dora.http, 'side=received')).toEqual([]);
    expect(await list(dora.http, `individualId=${own[1]?.id}`)).toEqual([ids[1]]);
    expect(await list(dora.http, 'kind=departure')).toEqual([]);
    const first = await dora.http.get('/api/v1/transfers?limit=2&total=true').expect(200);
    const { next, total } = bodyOf<{ next: string; total: number }>(first);
    expect([total, await list(dora.http, `limit=2&after=${next}`)]).toEqual([3, [ids[2]]]);
    await club.close();
  });
});

it('a repeated offer with the same key is made once', async () => {
  const { id } = await make.individual();
  const send = (): Promise<Response> =>
    anna.http
      .post('/api/v1/transfers')
      .set('Idempotency-Key', `offer-${id}`)
      .send({ to: ben.id, animals: [id] });
  const [first, second] = [await send(), await send()];
  expect([first.status, second.status]).toEqual([201, 201]);
  expect(bodyOf<TransferView>(second).id).toBe(bodyOf<TransferView>(first).id);
});
