import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { bodyOf, textWith, type ProblemBody } from '../../support/answer.ts';
import { TransferWorld } from './transfer-world.ts';

let world: TransferWorld;

beforeAll(async () => {
  world = await TransferWorld.found();
});

beforeEach(() => world.api.dataSource.query('delete from rate_limit'));

afterAll(() => world.api.close());

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
    ['an animal twice', async () => twice(await world.make.individual()), 422, '/animals/1', 'stands twice'],
    [
      'a dead animal',
      async () => ({ animals: [(await world.make.individual({ died: '2020' })).id] }),
      422,
      '/animals/0',
      'recorded as died',
    ],
    [
      'to oneself',
      async () => ({ to: world.anna.id, animals: [(await world.make.individual()).id] }),
      422,
      '/to',
      'already',
    ],
    [
      'to nobody',
      async () => ({ to: (await world.make.species()).id, animals: [(await world.make.individual()).id] }),
      422,
      '/to',
      'no keeper',
    ],
    [
      'to a keeper and out of the club',
      async () => ({ leftTo: 'x', animals: [(await world.make.individual()).id] }),
      422,
      '/to',
      'either',
    ],
    [
      'animals and a clutch',
      async () => ({ clutch: (await world.make.clutch()).id, animals: [(await world.make.individual()).id] }),
      422,
      '/animals',
      'either',
    ],
    [
      'a clutch without young',
      async () => ({ clutch: (await world.make.clutch()).id }),
      422,
      '/clutch',
      'no living young',
    ],
  ])('%s', async (_, body, status, pointer, detail) => {
    const answer = await world.offer(await body());
    expect(answer.status, answer.text).toBe(status);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([{ pointer, detail: textWith(detail) }]);
  });

  const twice = ({ id, number }: IndividualView): object => ({ animals: [id, number] });

  it('an animal that is on offer already', async () => {
    const { id } = await world.make.individual();
    await world.offered({ animals: [id] });
    const answer = await world.offer({ animals: [id], to: world.clara.id });
    expect(answer.status).toBe(409);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/animals/0', detail: textWith('on offer already') },
    ]);
    const gone = await world.anna.http.post('/api/v1/transfers').send({ leftTo: null, animals: [id] });
    expect(gone.status).toBe(409);
    const withdrawn = await world.anna.http
      .post(`/api/v1/individuals/${id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'x' });
    expect(withdrawn.status).toBe(409);
    expect(withdrawn.body).toMatchObject({ dependants: [{ kind: 'transfer', name: 'transfer to Ben' }] });
  });

  it('an animal of another keeper, but a registrar may do it for the keeper', async () => {
    const { id } = await world.animalOf(world.ben);
    expect((await world.offer({ animals: [id], to: world.clara.id })).status).toBe(403);
    const answer = await world.offer({ animals: [id], to: world.clara.id }, world.api.http);
    expect(bodyOf<TransferView>(answer)).toMatchObject({ from: { name: 'Ben' }, to: { name: 'Clara' } });
    const both = await world.offer(
      {
        animals: [(await world.make.individual()).id, (await world.animalOf(world.ben)).id],
        to: world.clara.id,
      },
      world.api.http,
    );
    expect(bodyOf<ProblemBody>(both).errors).toMatchObject([
      { pointer: '/animals/0', detail: textWith('several keepers') },
    ]);
  });

  it('to somebody who left the club', async () => {
    const gone = await world.api.addKeeper('Gone');
    await world.api.dataSource.query('update keeper set left_at = now() where id = $1', [gone.id]);
    const answer = await world.offer({ to: gone.id, animals: [(await world.make.individual()).id] });
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/to', detail: textWith('has left the club') },
    ]);
  });

  it('more than 200 animals', async () => {
    const answer = await world.offer({ animals: Array.from({ length: 201 }, () => '10704-4') });
    expect(answer.status).toBe(422);
    expect(bodyOf<ProblemBody>(answer).errors).toMatchObject([
      { pointer: '/animals', detail: textWith('at most 200') },
    ]);
  });
});

describe('an offer meanwhile', () => {
  it.each<[string, (id: string) => Promise<unknown>, string]>([
    ['died', (id) => world.change(id, { died: '2025' }), 'recorded as died'],
    ['was merged', async (id) => merge(id), 'merged into another'],
  ])('of an animal that %s is not accepted, and says why', async (_, since, why) => {
    const speciesId = (await world.make.species()).id;
    const [one, other] = await world.make.individuals({ speciesId }, { speciesId });
    const transfer = await world.offered({ animals: [one?.id, other?.id] });
    await since(one?.id ?? '');
    const refused = await world.step(world.ben.http, transfer.id, 'acceptance');
    expect(refused.status, refused.text).toBe(409);
    expect(refused.body).toMatchObject({ detail: textWith(why), changed: [{ individualId: one?.id }] });
    expect(await world.animal(other?.id ?? '')).toMatchObject({ keeper: 'Anna' });
  });

  async function merge(id: string): Promise<void> {
    const { speciesId } = await world.animal(id);
    const kept = await world.make.individual({ speciesId });
    await world.api.http
      .post('/api/v1/merges')
      .send({ keptId: kept.id, duplicateId: id, reason: 'one animal', take: [] })
      .expect(201);
  }
});
