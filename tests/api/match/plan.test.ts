import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { PlanView } from '../../../api/match/plan/plan.view.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { AnimalsByCode } from '../../support/animals-by-code.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let other: TestKeeper;
let make: Factory;
let speciesId: string;
let lineId: string;
let otherLine: string;
const animals = new AnimalsByCode();
const { idOf, codeOf } = animals;

type Asked = Record<string, unknown>;
const plan = async (asked: Asked, line = lineId, http = api.http): Promise<PlanView> =>
  bodyOf<PlanView>(await http.post(`/api/v1/lines/${line}/plan`).send(asked).expect(200));
const refused = async (asked: Asked): Promise<ProblemBody> =>
  bodyOf<ProblemBody>(await api.http.post(`/api/v1/lines/${lineId}/plan`).send(asked).expect(422));
const pairsOf = ({ pairs }: PlanView): string[] =>
  pairs.map(({ male, female }) => `${codeOf(male.animal.id)} × ${codeOf(female.animal.id)}`).sort();
const pair = (male: string, female: string): Asked => ({ male: idOf(male), female: idOf(female) });

async function add(code: string, fields: Asked, by = make): Promise<void> {
  await animals.add(by, { code, speciesId, lineId, hatched: '2018-03-01', ...fields });
}

async function young(sire: string, dam: string, year: number, ...codes: string[]): Promise<void> {
  const { id } = await make.clutchOf(idOf(sire), idOf(dam), { laid: `${year}-02-10`, hatched: codes.length });
  const raised = codes.map((code) => ({
    code,
    sex: code.endsWith('m') ? 'male' : 'female',
    hatched: `${year}-03-01`,
  }));
  await animals.raise(make, id, raised);
}

/**
 * Two families bred brother with sister for two generations, 1 and 2, in the line; a third one in another line; a pair of the other keeper
 * that nobody bred from.
 */
beforeAll(async () => {
  api = await startApi();
  other = await api.addKeeper('Other keeper');
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species({ ranges: mediumPoisonFrog }));
  ({ id: lineId } = await make.line({ speciesId, name: 'Quebrada Inventada' }));
  ({ id: otherLine } = await make.line({ speciesId, name: 'Rio Ajeno' }));
  for (const family of ['1', '2', '3']) {
    const fields = family === '3' ? { lineId: otherLine } : {};
    await add(`${family}0m`, { sex: 'male', status: 'died', ...fields });
    await add(`${family}0f`, { sex: 'female', status: 'died', ...fields });
    await young(`${family}0m`, `${family}0f`, 2019, `${family}1m`, `${family}1f`);
    await young(`${family}1m`, `${family}1f`, 2020, `${family}2m`, `${family}2f`);
    for (const code of [`${family}1m`, `${family}1f`])
      await api.http
        .patch(`/api/v1/individuals/${idOf(code)}`)
        .set('If-Match', '*')
        .send({ status: 'died' })
        .expect(200);
  }
  await add('old m', { sex: 'male' }, new Factory(other.http));
  await add('old f', { sex: 'female' }, new Factory(other.http));
  await add('infant', { sex: 'female', hatched: new Date().toISOString().slice(0, 10) });
  await add('secret', { sex: 'female', visibility: 'private' }, new Factory(other.http));
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('a plan for a line', () => {
  it('of brothers and sisters avoids what full-sib mating would cost: F 0 instead of 3/8 (Wright 1921; Falconer & Mackay 1996, table 5.1)', async () => {
    const names = { individuals: ['12m', '12f', '22m', '22f'].map(idOf) };
    const sibs = await plan({
      pairings: 2,
      inbreedingTo: 1,
      fixed: [pair('12m', '12f'), pair('22m', '22f')],
      ...names,
    });
    expect(sibs.pairs.map(({ inbreeding }) => inbreeding.expected)).toEqual([0.375, 0.375]);
    const best = await plan({ pairings: 2, inbreedingTo: 1, ...names });
    expect(pairsOf(best)).toEqual(['12m × 22f', '22m × 12f']);
    const zero = { expected: 0, least: 0, greatest: 0, nothingKnown: false, depth: 3, fullDepth: 3 };
    expect(best.pairs.map(({ inbreeding }) => inbreeding)).toEqual([zero, zero]);
    expect(sibs.objective.sum - best.objective.sum).toBeCloseTo(0.75, 12);
    expect(best.objective).toMatchObject({ isOptimal: true, gap: 0, weight: 1 });
    // one family alone has no better than its sibs; the other line gives it F 0
    const alone = await plan({ pairings: 1, inbreedingTo: 1, individuals: [idOf('12m'), idOf('12f')] });
    const helped = await plan({
      pairings: 1,
      individuals: [idOf('12m'), idOf('12f')],
      also: [idOf('32m'), idOf('32f')],
      allow: ['cross-lines'],
    });
    expect(alone.pairs[0]?.inbreeding.expected).toBe(0.375);
    expect(helped.pairs[0]?.inbreeding.expected).toBe(0);
    expect(helped.pairs[0]?.warnings).toContain(
      'The young would be a cross of Quebrada Inventada and Rio Ajeno, and belong to neither.',
    );
  });

  it('tells the figures, keepers and reasons of each pair, who is left out and who may not breed', async () => {
    const view = await plan({ pairings: 2 }, lineId, other.http);
    expect(view.line).toEqual({ id: lineId, name: 'Quebrada Inventada' });
    expect(view.pairs).toHaveLength(2);
    const [first] = view.pairs;
    expect(first?.forMale.of).toBeGreaterThan(1);
    expect(first?.why.join(' ')).toContain(`for ${first?.male.animal.code} (${first?.male.animal.number})`);
    expect(first?.meanKinship).toBeCloseTo(((first?.male.meanKinship ?? 0) + (first?.female.meanKinship ?? 0)) / 2, 12);
    expect(view.objective.sum).toBeCloseTo(
      view.pairs.reduce((sum, { cost }) => sum + cost, 0),
      12,
    );
    expect(view.pairs.length + view.leftOut.length).toBeGreaterThan(3);
    for (const { why } of view.leftOut) expect(why).not.toBe('');
    expect(view.excluded.map(({ reason, animals }) => [reason, animals.map(({ id }) => codeOf(id))])).toEqual([
      ['too-young', ['infant']],
    ]);
    expect(view.tradeOff.map(({ weight }) => weight)).toEqual([0, 0.25, 0.5, 1, 2, 4, 8]);
    expect(view.asOf.revision).toBeGreaterThan(0);
    expect(view.cautions.at(-1)).toContain('Figures advise');
  });

  it('says what each figure is: moves, old animals, and how much a pair would be missed', async () => {
    const view = await plan({
      pairings: 3,
      reserve: 2,
      individuals: ['12m', '12f', '22m', '22f', 'old m', 'old f'].map(idOf),
    });
    expect(view.pairs.flatMap(({ male, female }) => [male, female]).filter(({ isReserve }) => isReserve)).toHaveLength(
      6,
    );
    expect(view.moves).toBe(view.pairs.filter(({ male, female }) => male.keeperId !== female.keeperId).length);
    const without = { individuals: ['12m', '12f', '22f', 'old m', 'old f'].map(idOf), pairings: 2, weight: 100 };
    const free = await plan(without);
    const still = await plan({ ...without, movesMost: 0 });
    expect([free.moves, still.moves]).toEqual([expect.any(Number), 0]);
    expect(pairsOf(still)).toEqual(['12m × 22f', 'old m × old f']);
    expect(still.objective.sum).toBeGreaterThanOrEqual(free.objective.sum);
    expect(pairsOf(await plan({ ...without, keptTogether: [other.id] }))).toEqual(pairsOf(still));
    const once = await plan({
      pairings: 2,
      forbidden: [pair('12m', '22f')],
      uses: [{ individual: idOf('old m'), most: 0 }],
    });
    expect(pairsOf(once).join()).not.toMatch(/12m × 22f|old m/);
    expect(once.leftOut.find(({ animal }) => animal.animal.id === idOf('old m'))?.reason).toBe('unused');
  });

  it('does not know of animals that whoever asks may not see', async () => {
    expect(JSON.stringify(await plan({ pairings: 1 }, lineId, other.http))).toContain(idOf('secret'));
    const stranger = await api.addKeeper('Third keeper');
    const theirs = bodyOf<PlanView>(
      await stranger.http.post(`/api/v1/lines/${lineId}/plan`).send({ pairings: 3 }).expect(200),
    );
    expect(JSON.stringify(theirs)).not.toContain(idOf('secret'));
    const problem = bodyOf<ProblemBody>(
      await stranger.http
        .post(`/api/v1/lines/${lineId}/plan`)
        .send({ pairings: 1, fixed: [pair('12m', 'secret')] })
        .expect(422),
    );
    expect(problem.errors[0]).toMatchObject({ pointer: '/fixed/0/female' });
    expect(problem.errors[0]?.detail).toContain('There is no animal');
  });

  it.each<[string, () => Asked, string, string]>([
    ['an animal of another line', () => ({ pairings: 1, also: [idOf('32f')] }), '/also/0', 'allow other lines'],
    [
      'a fixed pair above the limit',
      () => ({ pairings: 1, fixed: [pair('12m', '12f')] }),
      '/fixed/0',
      'allow fixed pairs above the limit',
    ],
    [
      'a fixed animal that is too young',
      () => ({ pairings: 1, fixed: [pair('12m', 'infant')] }),
      '/fixed/0/female',
      'younger',
    ],
    ['a male as a female', () => ({ pairings: 1, fixed: [pair('12m', '22m')] }), '/fixed/0/female', 'recorded as male'],
    ['an animal that there is not', () => ({ pairings: 1, individuals: ['10704-4'] }), '/individuals/0', 'no animal'],
    ['a keeper without animals', () => ({ pairings: 1, keptTogether: [speciesId] }), '/keptTogether/0', 'this keeper'],
    ['more pairs than there are males', () => ({ pairings: 4 }), '/pairings', 'Ask for 3 pairs'],
    [
      'more pairs than the limit leaves',
      () => ({ pairings: 2, individuals: ['12m', '12f', '22m'].map(idOf), inbreedingTo: 0.01 }),
      '/pairings',
      '1 females',
    ],
    [
      'a limit that leaves none',
      () => ({ pairings: 1, individuals: ['12m', '12f'].map(idOf), inbreedingTo: 0.01 }),
      '/inbreedingTo',
      'leaves none',
    ],
    ['too many old animals', () => ({ pairings: 1, reserve: 3 }), '/reserve', 'at most 2 can be'],
  ])('refuses %s, and says what to do', async (_, asked, pointer, words) => {
    const problem = await refused(asked());
    expect(problem.errors.map((error) => error.pointer)).toEqual([pointer]);
    expect(problem.errors[0]?.detail).toContain(words);
  });

  it('takes a fixed pair above the limit where that is asked for, with a plain warning', async () => {
    const view = await plan({ pairings: 1, fixed: [pair('12m', '12f')], allow: ['above-limit'] });
    expect(view.pairs[0]).toMatchObject({ isFixed: true, why: ['The request fixed it.'] });
    expect(view.pairs[0]?.warnings).toEqual([
      'F of the young would be above the limit of 12.5 %; the request fixed it.',
    ]);
  });

  it('is not made for a line that there is not, nor for strangers', async () => {
    await api.http.post(`/api/v1/lines/${speciesId}/plan`).send({ pairings: 1 }).expect(404);
    await api.stranger.post(`/api/v1/lines/${lineId}/plan`).send({ pairings: 1 }).expect(401);
  });
});
