import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DueClutchesView, TodayView } from '../../../api/today/today.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog, trio } from '../../support/factories.ts';

const on = '2026-11-26';

let api: TestApi;
let registrar: Factory;

beforeAll(async () => {
  api = await startApi();
  registrar = new Factory(api.http);
});

afterAll(() => api.close());

let keepers = 0;
/** A keeper with an empty holding, so that each story has a Today of its own. */
async function newKeeper(): Promise<TestKeeper & { make: Factory }> {
  const keeper = await api.addKeeper(`Tank keeper ${++keepers}`);
  return { ...keeper, make: new Factory(keeper.http, String.fromCharCode(97 + keepers)) };
}

async function todayOf(keeper: TestKeeper, query = ''): Promise<TodayView> {
  return (await keeper.http.get(`/api/v1/today?on=${on}${query}`).expect(200)).body as TodayView;
}

const idsOf = (due: DueClutchesView): string[] => due.items.map(({ id }) => id);

describe('eggs to hatch', () => {
  it('are due from the first usual day on, the most overdue first, and after sixty days late only counted', async () => {
    const keeper = await newKeeper();
    const { sire, dam } = await trio(keeper.make);
    const laid = async (day: string | null, fields: object = {}): Promise<string> =>
      (await keeper.make.clutchOf(sire.id, dam.id, { laid: day, eggs: 6, ...fields })).id;
    // ten to eighteen days in the egg
    const opensToday = await laid('2026-11-16');
    const closedYesterday = await laid('2026-11-07');
    const lateSixtyDays = await laid('2026-09-09');
    await laid('2026-09-08');
    await laid('2026-11-17');
    await laid('2026-11-30');
    await laid('2026-11-10', { hatched: 4 });
    await laid('2026-11-10', { losses: [{ cause: 'mould', count: 6 }] });
    await laid(null);
    const { hatching } = await todayOf(keeper);
    expect(idsOf(hatching)).toEqual([lateSixtyDays, closedYesterday, opensToday]);
    expect(hatching).toMatchObject({ total: 3, older: 2, coming: { count: 2, from: '2026-11-27' } });
    expect(hatching.items[2]).toMatchObject({ eggs: 6, expected: { from: '2026-11-26', to: '2026-12-04' } });
  });

  it('of a month are due while they may hatch, of a year on no day', async () => {
    const keeper = await newKeeper();
    const { sire, dam } = await trio(keeper.make);
    const { id } = await keeper.make.clutchOf(sire.id, dam.id, { laid: '2026-11' });
    await keeper.make.clutchOf(sire.id, dam.id, { laid: '2026' });
    expect(idsOf((await todayOf(keeper)).hatching)).toEqual([id]);
  });
});

describe('tadpoles to leave the water', () => {
  it('are due by their day of hatching, else by the laying', async () => {
    const keeper = await newKeeper();
    const { sire, dam } = await trio(keeper.make);
    const clutch = async (fields: object): Promise<string> =>
      (await keeper.make.clutchOf(sire.id, dam.id, { hatched: 5, ...fields })).id;
    // seventy days after 2026-09-17 it is 2026-11-26
    const byHatching = await clutch({ laid: '2026-09-05', hatchedOn: '2026-09-17' });
    await clutch({ laid: '2026-09-05', hatchedOn: '2026-09-18' });
    // eighty days at least after 2026-09-07 it is 2026-11-26
    const byLaying = await clutch({ laid: '2026-09-07' });
    await clutch({ laid: '2026-09-08' });
    const withoutLaying = await clutch({ laid: null, hatchedOn: '2026-08-01' });
    await clutch({ laid: '2026-07-01', outOfWater: 5 });
    const { leavingWater } = await todayOf(keeper);
    expect(idsOf(leavingWater)).toEqual([withoutLaying, byHatching, byLaying]);
    expect(leavingWater.coming).toEqual({ count: 2, from: '2026-11-27' });
  });
});

describe('animals old enough to sex', () => {
  it('are told by clutch, with their age and the place where they live', async () => {
    const keeper = await newKeeper();
    const { speciesId, sire, dam } = await trio(keeper.make);
    // ten months of 30.4375 days before 2026-11-26
    const clutch = await keeper.make.clutchOf(sire.id, dam.id, { laid: '2026-01-12' });
    const young = await keeper.make.offspring(clutch.id, {
      animals: [{ hatched: '2026-01-25' }, { hatched: '2026-01-25' }],
    });
    const [old, youngest] = await keeper.make.individuals(
      { speciesId, hatched: '2024-05-01', sex: 'unsexed' },
      { speciesId, hatched: '2026-01-27' },
      { speciesId, hatched: '2024-05-01', sex: 'male' },
      { speciesId, hatched: '2024-05-01', status: 'died' },
      { speciesId },
    );
    const pairing = await keeper.make.pairing({ name: 'Tank 14' });
    for (const { id } of young)
      await keeper.http
        .post(`/api/v1/pairings/${pairing.id}/members`)
        .set('If-Match', '*')
        .send({ individualId: id, joined: '2026-04' })
        .expect(201);
    const { sexing } = await todayOf(keeper);
    expect(sexing).toMatchObject({ shown: 3, total: 3 });
    expect(sexing.groups).toMatchObject([
      {
        clutchId: clutch.id,
        months: 10,
        hatched: '2026-01-25',
        pairing: { id: pairing.id, name: 'Tank 14' },
        animals: young.map(({ id, number }) => ({ id, number, keeperId: keeper.id, version: 1 })),
      },
      { clutchId: null, months: 30, pairing: null, animals: [{ id: old?.id }] },
    ]);
    expect(JSON.stringify(sexing)).not.toContain(youngest?.id);
  });

  it('are cut where they are many, and counted', async () => {
    const keeper = await newKeeper();
    const { speciesId } = await trio(keeper.make);
    await keeper.make.individuals(...Array.from({ length: 5 }, () => ({ speciesId, hatched: '2024-05-01' })));
    const { sexing } = await todayOf(keeper, '&limit=2');
    expect(sexing).toMatchObject({ shown: 2, total: 5 });
    expect(sexing.groups).toHaveLength(2);
  });
});

describe('a species whose profile does not say', () => {
  it('is told with what it lacks, once an animal of it is kept', async () => {
    const keeper = await newKeeper();
    const ranges = mediumPoisonFrog.filter(({ trait }) => trait !== 'sexable-by-looks');
    const [bare, half, whole] = [
      await keeper.make.species(),
      await keeper.make.species({ ranges }),
      await keeper.make.species({ ranges: mediumPoisonFrog }),
    ];
    expect(await todayOf(keeper)).toMatchObject({ profiles: [], keepsAnimals: false, keepsPairings: false });
    for (const { id: speciesId } of [bare, half, whole]) await keeper.make.individual({ speciesId });
    const { profiles, keepsAnimals } = await todayOf(keeper);
    expect(keepsAnimals).toBe(true);
    expect(profiles).toEqual([
      {
        speciesId: bare.id,
        species: bare.scientificName,
        missing: ['laying-to-hatching', 'hatching-to-leaving-water', 'sexable-by-looks'],
      },
      { speciesId: half.id, species: half.scientificName, missing: ['sexable-by-looks'] },
    ]);
  });
});

describe('what waits for an answer', () => {
  it('is what was offered to whoever asks, and evidence of others for who may review it', async () => {
    const [giver, receiver] = [await newKeeper(), await newKeeper()];
    const animal = await giver.make.individual({ visibility: 'private' });
    const offer = await giver.make.post<{ id: string }>('transfers', { to: receiver.id, animals: [animal.id] });
    expect((await todayOf(giver)).transfers.total).toBe(0);
    expect((await todayOf(receiver)).transfers).toMatchObject({
      total: 1,
      items: [{ id: offer.id, first: [{ id: animal.id }] }],
    });
    const line = await giver.make.line({ name: 'Quebrada Honda' });
    const claim = await giver.make.claim({ lineId: line.id, value: 'Honda' });
    const paper = await giver.make.evidence({ claimId: claim.id, kind: 'letter', reference: 'letter of May' });
    const own = await registrar.evidence();
    expect((await todayOf(giver)).reviews).toEqual({ items: [], total: 0 });
    const { reviews } = (await api.http.get(`/api/v1/today?on=${on}`).expect(200)).body as TodayView;
    expect(reviews.items.find(({ id }) => id === paper.id)).toMatchObject({
      kind: 'letter',
      reference: 'letter of May',
      claim: 'Honda',
      about: 'Quebrada Honda',
      keeper: giver.name,
    });
    expect(reviews.items.map(({ id }) => id)).not.toContain(own.id);
  });
});

describe('records with warnings', () => {
  it('are told until somebody accepts them', async () => {
    const keeper = await newKeeper();
    const { sire, dam, speciesId } = await trio(keeper.make);
    const clutch = await keeper.make.clutchOf(sire.id, dam.id, { laid: '2026-11-20', eggs: 40 });
    const odd = await keeper.make.individual({ speciesId, hatched: '1990-01-01', code: 'OLD-1' });
    const { warnings } = await todayOf(keeper);
    expect(warnings.total).toBe(2);
    expect(warnings.items).toMatchObject([
      { kind: 'animal', id: odd.id, title: 'OLD-1', warnings: [{ code: 'beyond-lifespan' }] },
      { kind: 'clutch', id: clutch.id, title: 'clutch of 2026-11-20', warnings: [{ code: 'many-eggs' }] },
    ]);
    const at = `/api/v1/clutches/${clutch.id}/warnings/many-eggs/confirmation`;
    await keeper.http.post(at).send({ reason: 'counted twice' }).expect(201);
    expect((await todayOf(keeper)).warnings.items.map(({ id }) => id)).toEqual([odd.id]);
  });
});

describe('whose things are due', () => {
  it('are one’s own, or those of the whole club as far as they may be seen', async () => {
    const [owner, other] = [await newKeeper(), await newKeeper()];
    const { sire, dam, speciesId } = await trio(owner.make);
    const { id } = await owner.make.clutchOf(sire.id, dam.id, { laid: '2026-11-12' });
    const secret = await owner.make.individual({ speciesId, hatched: '2024-05-01', visibility: 'private' });
    const shown = await owner.make.individual({ speciesId, hatched: '2024-05-01' });
    expect(idsOf((await todayOf(other)).hatching)).toEqual([]);
    const club = await todayOf(other, '&of=club&limit=200');
    expect(idsOf(club.hatching)).toContain(id);
    expect(JSON.stringify(club.sexing)).toContain(shown.id);
    expect(JSON.stringify(club)).not.toContain(secret.id);
    expect(JSON.stringify((await todayOf(owner)).sexing)).toContain(secret.id);
  });

  it('are refused for a day that is none, and to strangers', async () => {
    const keeper = await newKeeper();
    for (const day of ['2026-02-30', '2026-11', 'today']) await keeper.http.get(`/api/v1/today?on=${day}`).expect(422);
    await api.stranger.get('/api/v1/today').expect(401);
  });
});
