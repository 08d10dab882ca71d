import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ForecastView } from '../../../api/lineage/forecast.view.ts';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { ForecastCourseView, PlanForecastView } from '../../../api/match/forecast/plan-forecast.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { allEventsOf, eventsOf, openStream } from '../../support/event-stream.ts';
import { Factory } from '../../support/factories.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const parent = (individual: number) => [{ individual, probability: 1 }];

/** Two sources, one of them of kin; four founders; three clutches, one of them of two possible sires; one animal of another line. */
const sketch: RegisterSketch = {
  sources: [{ label: 'Quebrada Inventada', baseKinship: 0.1 }, { label: 'Rio Ajeno' }],
  lines: [{ name: 'Quebrada Inventada' }, { name: 'Rio Ajeno' }],
  individuals: [
    { code: 'A', sex: 'male', source: 0, line: 0 },
    { code: 'B', sex: 'female', source: 0, line: 0 },
    { code: 'C', sex: 'male', line: 0 },
    { code: 'D', sex: 'female', source: 1, line: 0 },
    ...(['son', 'other son'] as const).map((code) => ({ code, sex: 'male' as const, line: 0, clutch: 0 })),
    ...(['daughter', 'other daughter'] as const).map((code) => ({ code, sex: 'female' as const, line: 0, clutch: 1 })),
    { code: 'sister', sex: 'female', line: 0, clutch: 0 },
    { code: 'froglet', line: 0, clutch: 1 },
    { code: 'of somebody', sex: 'female', line: 0, clutch: 2 },
    { code: 'dead', sex: 'female', line: 0, status: 'died' },
    { code: 'stranger', sex: 'female', line: 1 },
  ],
  clutches: [
    { sires: parent(0), dams: parent(1) },
    { sires: parent(2), dams: parent(3) },
    {
      sires: [
        { individual: 0, probability: 0.5 },
        { individual: -1, probability: 0.5 },
      ],
      dams: parent(3),
    },
  ],
};

let api: TestApi;
let other: TestKeeper;
let ids: SketchIds;
let lineId: string;
const idOf = (code: string): string =>
  ids.individuals[sketch.individuals.findIndex((one) => one.code === code)] ?? code;
const pair = (sire: string, dam: string) => ({ sire: idOf(sire), dam: idOf(dam) });
const pairs = () => [pair('son', 'daughter'), pair('other son', 'other daughter')];

async function forecast(body: object, at = api): Promise<PlanForecastView> {
  return bodyOf<PlanForecastView>(await at.http.post(`/api/v1/lines/${lineId}/plan-forecast`).send(body).expect(200));
}

function courseOf(view: PlanForecastView, course: string): ForecastCourseView {
  const found = view.courses.find((one) => one.course === course);
  if (!found) throw new Error(`no course ${course}`);
  return found;
}

beforeAll(async () => {
  api = await startApi();
  other = await api.addKeeper('Other keeper');
  ids = await writeSketch(api.dataSource, sketch);
  lineId = ids.lines[0] ?? '';
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('the forecast of a plan', () => {
  it('begins with what the register says of the breeders, and goes on with what it says of young of the pairs', async () => {
    const view = await forecast({ pairs: pairs(), courses: ['plan'], generations: 2, replicates: 2000 });
    expect(view).toMatchObject({ missing: [], replicates: 2000, loci: 32, youngKept: 4, seed: 1, current: true });
    const { generations, sires, dams, clutches } = courseOf(view, 'plan');
    expect([sires, dams, clutches]).toEqual([2, 2, 2]);
    expect(generations.map(({ generation, animals }) => [generation, animals])).toEqual([
      [0, 4],
      [1, 8],
      [2, 8],
    ]);
    const breeders = pairs().flatMap(({ sire, dam }) => [sire, dam]);
    const set = await api.http.post('/api/v1/lineage/set').send({ individuals: breeders }).expect(200);
    const { geneDiversity } = bodyOf<LineageSetView>(set);
    expect(generations[0]?.diversity.expected).toBeCloseTo(geneDiversity ?? NaN, 11);
    const asked = { sires: [idOf('son')], dams: [idOf('daughter')] };
    const young = bodyOf<ForecastView>(await api.http.post('/api/v1/lineage/forecast').send(asked).expect(200));
    expect(generations[1]?.inbreeding.expected).toBeCloseTo(young.inbreeding.expected, 11);
    for (const { diversity, inbreeding } of generations)
      for (const { mean, standardError, expected, from, to } of [diversity, inbreeding]) {
        expect(Math.abs(mean - (expected ?? NaN))).toBeLessThanOrEqual(4 * standardError + 1e-12);
        expect(from <= mean && mean <= to).toBe(true);
      }
  });

  it('names where the genes begin, and their shares in every generation', async () => {
    const view = await forecast({ pairs: [pair('son', 'of somebody')], generations: 3, replicates: 500 });
    expect(
      view.origins.map(({ source, founder, unknownParentOf }) => source?.title ?? founder?.code ?? unknownParentOf?.id),
    ).toEqual(
      // A and B give the son, half of somebody’s is D, a quarter A’s or nobody’s with ½ each
      [textWith('Import'), textWith('Import'), ids.clutches[2]],
    );
    const exact = [0.5 + 0.125, 0.25, 0.125];
    for (const course of ['plan', 'random'])
      for (const { shares, otherShare } of courseOf(view, course).generations) {
        expect(shares.reduce((sum, { mean }) => sum + mean, otherShare.mean)).toBeCloseTo(1, 12);
        shares.forEach(({ mean, standardError }, place) =>
          expect(Math.abs(mean - (exact[place] ?? NaN))).toBeLessThanOrEqual(4.5 * standardError + 1e-12),
        );
      }
    expect(view.cautions).toContainEqual(textWith('13 % of the genes'));
  });

  it('compares with the groups that stand in the register, as far as whoever asks may see them', async () => {
    expect((await forecast({ courses: ['today'] })).missing).toEqual([
      { course: 'today', detail: textWith('Enter your pairings') },
    ]);
    const make = new Factory(api.http);
    const house = (name: string, codes: readonly string[]) =>
      make.pairing({ name, members: codes.map((code) => ({ individualId: idOf(code), joined: '2024-01-01' })) });
    await house('One', ['A', 'D', 'B', 'froglet', 'dead', 'stranger']);
    await house(
      'Two',
      ['son', 'froglet of nobody', 'daughter'].filter((code) => code !== 'froglet of nobody'),
    );
    await house('Three', ['sister', 'other daughter']);
    const view = await forecast({ pairs: pairs(), generations: 2, replicates: 300 });
    // 1.2 and 1.1: an unsexed animal beside both sexes has no part, nor have the dead and those of other lines
    const today = courseOf(view, 'today');
    expect([today.sires, today.dams, today.clutches]).toEqual([2, 3, 3]);
    expect(today.generations.map(({ animals }) => animals)).toEqual([5, 12, 12]);
    expect(today.generations[0]?.diversity.expected).not.toBeNull();
    expect(today.generations[1]?.diversity.expected).toBeNull();
    expect(view.cautions).toContainEqual(textWith('hold one sex only: 1.'));
    expect(view.courses.map(({ course }) => course)).toEqual(['plan', 'today', 'random']);
    await api.dataSource.query(`update individual set visibility = 'private' where id = $1`, [idOf('son')]);
    const seen = await other.http
      .post(`/api/v1/lines/${lineId}/plan-forecast`)
      .send({ courses: ['today'] })
      .expect(200);
    expect(courseOf(bodyOf<PlanForecastView>(seen), 'today')).toMatchObject({ sires: 1, dams: 2 });
    await api.dataSource.query(`update individual set visibility = 'club' where id = $1`, [idOf('son')]);
  });

  it('is the same to the last digit for the same seed, also from a copy of the service that read the register later', async () => {
    const body = { pairs: pairs(), generations: 3, replicates: 200, seed: 4294967295 };
    const one = await forecast(body);
    expect(await forecast(body)).toEqual(one);
    const copy = await startApiOn(api.databaseUrl);
    expect(await forecast(body, copy)).toEqual(one);
    await copy.close();
    expect((await forecast({ ...body, seed: 2 })).courses).not.toEqual(one.courses);
  });

  it('takes registry numbers, an animal in several pairs, and with leave animals of another line, of which it warns', async () => {
    const number = async (code: string): Promise<string> =>
      bodyOf<{ number: string }>(await api.http.get(`/api/v1/individuals/${idOf(code)}`).expect(200)).number;
    const asked = [{ sire: await number('son'), dam: await number('daughter') }, pair('son', 'stranger')];
    const refused = await api.http.post(`/api/v1/lines/${lineId}/plan-forecast`).send({ pairs: asked }).expect(422);
    expect(bodyOf<ProblemBody>(refused).errors).toEqual([{ pointer: '/pairs/1/dam', detail: textWith('a cross') }]);
    const view = await forecast({ pairs: asked, crossLines: true, courses: ['plan'], replicates: 100 });
    expect(courseOf(view, 'plan')).toMatchObject({ sires: 1, dams: 2, clutches: 2 });
    expect(view.cautions).toContainEqual(textWith('would be a cross: 1.'));
  });

  it.each([
    [() => ({ pairs: [pair('nobody', 'daughter')] }), '/pairs/0/sire', 'no animal with'],
    [() => ({ pairs: [pair('daughter', 'D')] }), '/pairs/0/sire', 'recorded as female'],
    [() => ({ pairs: [pair('son', 'A')] }), '/pairs/0/dam', 'recorded as male'],
    [() => ({ pairs: [pair('son', 'froglet')] }), '/pairs/0/dam', 'not sexed'],
    [() => ({ pairs: [pair('son', 'dead')] }), '/pairs/0/dam', 'died'],
    [() => ({ pairs: [pair('son', 'D'), pair('son', 'D')] }), '/pairs/1', 'Name each pair once'],
    [() => ({ pairs: [] }), '/pairs', 'at least one pair'],
    [() => ({ pairs: pairs(), courses: [] }), '/courses', 'at least one course'],
    [() => ({ pairs: pairs(), courses: ['fate'] }), '/courses', 'plan, today, random'],
    [() => ({ pairs: pairs(), generations: 11 }), '/generations', 'at most 10'],
    [() => ({ pairs: pairs(), youngKept: 1 }), '/youngKept', 'at least 2'],
    [() => ({ pairs: pairs(), replicates: 99 }), '/replicates', 'at least 100'],
    [() => ({ pairs: pairs(), loci: 65 }), '/loci', 'at most 64'],
    [() => ({ pairs: pairs(), seed: -1 }), '/seed', 'at least 0'],
    [() => ({ pairs: [{ sire: 'x' }] }), '/pairs/0/dam', 'must be a text'],
  ])('refuses what cannot be taken: case %#', async (body, pointer, words) => {
    const answer = await api.http.post(`/api/v1/lines/${lineId}/plan-forecast`).send(body()).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toContainEqual({ pointer, detail: textWith(words) });
  });

  it('is there for members, of lines that are there', async () => {
    await api.http.post(`/api/v1/lines/${newId()}/plan-forecast`).send({ pairs: pairs() }).expect(404);
    await api.http.post('/api/v1/lines/nonsense/plan-forecast').send({ pairs: pairs() }).expect(404);
    await api.stranger.post(`/api/v1/lines/${lineId}/plan-forecast`).send({ pairs: pairs() }).expect(401);
  });

  it('takes no private animal of somebody else, and says no more of it than of one that is not there', async () => {
    await api.dataSource.query(`update individual set visibility = 'private' where id = $1`, [idOf('son')]);
    const ask = (sire: string) =>
      other.http.post(`/api/v1/lines/${lineId}/plan-forecast`).send({ pairs: [{ sire, dam: idOf('daughter') }] });
    const [hidden, none] = [await ask(idOf('son')).expect(422), await ask(newId()).expect(422)];
    const detail = (answer: typeof hidden) =>
      bodyOf<ProblemBody>(answer).errors[0]?.detail.replace(/[0-9a-f-]{36}/, '');
    expect(detail(hidden)).toBe(detail(none));
    await api.dataSource.query(`update individual set visibility = 'club' where id = $1`, [idOf('son')]);
  });
});

describe('a forecast that takes long', () => {
  const path = (): string => `/api/v1/lines/${lineId}/plan-forecast`;
  const brief = () => ({ pairs: pairs(), generations: 3, replicates: 1000 });
  /** Some fifteen seconds of drawing on a machine that does nothing else. */
  const long = () => ({
    ...brief(),
    pairs: [...pairs(), pair('son', 'other daughter'), pair('other son', 'daughter')],
    generations: 10,
    youngKept: 20,
    loci: 64,
    replicates: 10_000,
    courses: ['plan', 'random'],
  });

  it('tells its progress in a stream, then the result, which is what one JSON answer says', async () => {
    const answer = await openStream(api, path(), other.token, undefined, brief());
    expect(answer.status).toBe(200);
    const events = await allEventsOf(answer);
    const progress = events.filter(({ event }) => event === 'progress').map(({ data }) => data as { total: number });
    expect(progress.length).toBeGreaterThan(10);
    expect(progress.every(({ total }) => total === 1000)).toBe(true);
    expect(events.at(-1)).toEqual({ event: 'result', data: await forecast(brief()) });
  });

  it('is refused by its own status before a stream opens, or says how many replicates fit', async () => {
    const refused = await openStream(api, path(), other.token, undefined, { pairs: [pair('son', 'dead')] });
    expect(refused.status).toBe(422);
    const rows = Array.from({ length: 40 }, (_, place) => ({
      code: `m${place}`,
      sex: place % 2 === 0 ? ('male' as const) : ('female' as const),
    }));
    const many = await writeSketch(api.dataSource, { individuals: rows, clutches: [] });
    const all = Array.from({ length: 20 }, (_, place) => ({
      sire: many.individuals[2 * place],
      dam: many.individuals[2 * place + 1],
    }));
    const body = { ...long(), pairs: all, crossLines: true };
    const answer = await api.http.post(path()).send(body).expect(422);
    const [error] = bodyOf<ProblemBody>(answer).errors;
    expect(error?.pointer).toBe('/replicates');
    expect(Number(/Ask for (\d+) at most/.exec(error?.detail ?? '')?.[1])).toBeGreaterThan(1000);
  });

  it('ends when whoever follows it leaves, and the next one begins at once', async () => {
    const leaving = new AbortController();
    const events = eventsOf(await openStream(api, path(), other.token, leaving.signal, long()));
    expect((await events.next()).value).toEqual({ event: 'progress', data: having({ total: 10_000 }) });
    leaving.abort();
    const started = performance.now();
    await forecast({ ...brief(), replicates: 100 });
    // with one thread for questions it would have waited for the other to end
    expect(performance.now() - started).toBeLessThan(8000);
  });

  it('ends when whoever asked for JSON leaves', async () => {
    const leaving = new AbortController();
    const asked = fetch(`${api.url}${path()}`, {
      method: 'POST',
      headers: { Authorization: `Bearer ${other.token}`, 'Content-Type': 'application/json' },
      body: JSON.stringify(long()),
      signal: leaving.signal,
    });
    setTimeout(() => leaving.abort(), 500);
    await expect(asked).rejects.toMatchObject({ name: 'AbortError' });
    const started = performance.now();
    await forecast({ ...brief(), replicates: 100 });
    expect(performance.now() - started).toBeLessThan(8000);
  });
});
