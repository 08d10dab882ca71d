import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { GroupView } from '../../../api/match/groups/groups.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/** Four founders; a son and a daughter of two, a daughter of the others, and an animal of another line. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Inventada' }, { name: 'Rio Ajeno' }],
  clutches: [
    { sires: certain(0), dams: certain(1) },
    { sires: certain(2), dams: certain(3) },
  ],
  individuals: [
    { code: 'a', sex: 'male', line: 0, status: 'died' },
    { code: 'b', sex: 'female', line: 0, status: 'died' },
    { code: 'c', sex: 'male', line: 0 },
    { code: 'd', sex: 'female', line: 0 },
    { code: 'son', clutch: 0, sex: 'male', line: 0 },
    { code: 'sister', clutch: 0, sex: 'female', line: 0 },
    { code: 'other', clutch: 1, sex: 'female', line: 0 },
    { code: 'unsexed', clutch: 1, line: 0 },
    { code: 'stranger', sex: 'female', line: 1 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');

let api: TestApi;
let ids: SketchIds;
const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
const ask = (of: readonly string[], more: object = {}) =>
  api.http.post('/api/v1/match/group').send({ individuals: of.map(idOf), ...more });
const group = async (of: readonly string[], more: object = {}): Promise<GroupView> =>
  bodyOf<GroupView>(await ask(of, more).expect(200));
const told = (refs: readonly { code: string | null }[]): (string | null)[] => refs.map(({ code }) => code);

beforeAll(async () => {
  api = await startApi();
  ids = await writeSketch(api.dataSource, sketch);
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('a group of animals', () => {
  it('is scored over all its pairs, as if each were as likely as any other', async () => {
    const view = await group(['son', 'sister', 'other', 'unsexed']);
    expect([told(view.males), told(view.females), told(view.unsexed)]).toEqual([
      ['son'],
      ['sister', 'other'],
      ['unsexed'],
    ]);
    // brother and sister ¼, unrelated 0 (Wright 1922)
    expect(view.score?.inbreeding).toEqual({ expected: 0.125, least: 0, greatest: 0.25 });
    expect(view.score).toMatchObject({ pairs: 2, nothingKnown: 0 });
    expect(view.score?.cost).toBeCloseTo((view.score?.youngMeanKinship ?? NaN) + 0.125, 12);
    expect(view.warnings).toEqual([textWith('closer related than half-sibs')]);
  });

  it('says whom to take out and whom to add, and a change scores as the changed group does', async () => {
    const view = await group(['son', 'sister', 'other']);
    expect(told(view.takeOut.map(({ animal }) => animal))).toEqual(['sister', 'other']);
    expect(view.takeOut[0]?.gain).toBeGreaterThan(0);
    expect(view.takeOut[0]?.after).toEqual((await group(['son', 'other'])).score);
    // c is the father of other
    expect(told(view.add.map(({ animal }) => animal))).toEqual(['d']);
    for (const { animal, after, gain } of view.add) {
      expect((await group(['son', 'sister', 'other', animal.code ?? ''])).score).toEqual(after);
      expect(gain).toBeCloseTo((view.score?.cost ?? NaN) - after.cost, 12);
    }
  });

  it('chooses the best of a size, and nothing where a side is too small', async () => {
    const view = await group(['son', 'c', 'sister', 'other', 'd'], { males: 1, females: 2 });
    expect(told(view.best?.males ?? [])).toEqual(['son']);
    expect(told(view.best?.females ?? [])).toEqual(['other', 'd']);
    expect(view.best?.score).toEqual((await group(['son', 'other', 'd'])).score);
    const few = await group(['son', 'sister', 'other'], { males: 2, females: 1 });
    expect([few.best, few.noBest]).toEqual([null, textWith('Only 1 male of 2')]);
    expect((await group(['sister', 'other'])).score).toBeNull();
  });

  it('shows every sire with every dam, and what stands beside each animal', async () => {
    const view = await group(['son', 'c', 'sister', 'other']);
    const young = (value: number, fullDepth: number, nothingKnown = false) => ({
      ...{ expected: value, least: value, greatest: value },
      ...{ depth: 2, fullDepth, nothingKnown },
    });
    // of c nothing is recorded: a 0 with it says nothing, the ¼ with its daughter does
    expect(view.rows.map(({ inbreeding }) => inbreeding)).toEqual([
      [young(0.25, 2), young(0, 2)],
      [young(0, 1, true), young(0.25, 1)],
    ]);
    expect(view.score?.nothingKnown).toBe(1);
    expect(view.warnings).toContainEqual(textWith('Neither a source nor a parent is recorded of c ('));
    expect(view.males[0]).toMatchObject({ line: { name: 'Quebrada Inventada' }, excluded: null });
    const [c, other] = [view.males[1]?.meanKinship ?? NaN, view.females[1]?.meanKinship ?? NaN];
    // c lives beside two young of c and d: with itself ½, with each of them ¼
    expect(c).toBeGreaterThan(0);
    expect(view.score?.youngMeanKinship).toBeCloseTo(
      ((view.males[0]?.meanKinship ?? NaN) + c + (view.females[0]?.meanKinship ?? NaN) + other) / 4,
      12,
    );
  });

  it('never proposes a pair above the limit, unless that is raised, and then it warns', async () => {
    const strict = await group(['son', 'sister'], { males: 1, females: 1 });
    expect([strict.best, strict.noBest]).toEqual([null, textWith('above the limit of 12.5 %')]);
    const raised = await group(['son', 'sister'], { males: 1, females: 1, inbreedingTo: 0.25 });
    expect(told(raised.best?.females ?? [])).toEqual(['sister']);
    expect(raised.best?.warnings).toEqual([textWith('closer related than half-sibs')]);
    // c is the father of other: added only where the limit allows it
    expect(told((await group(['son', 'other'])).add.map(({ animal }) => animal)).sort()).toEqual(['d']);
    expect(
      told((await group(['son', 'other'], { inbreedingTo: 0.25 })).add.map(({ animal }) => animal)).sort(),
    ).toEqual(['c', 'd', 'sister']);
  });

  it('chooses nobody who may not breed, and names who that is', async () => {
    const view = await group(['a', 'b', 'son', 'other'], { males: 2, females: 1 });
    expect([view.best, view.noBest]).toEqual([null, textWith('Only 1 male of 2')]);
    expect(view.males.map(({ excluded }) => excluded)).toEqual(['not-living', null]);
    expect(view.warnings).toContainEqual(textWith('a ('));
    expect(view.warnings).toContainEqual(textWith('nobody knows whether they live'));
  });

  it('takes animals of several lines only where that is asked for, and says what it makes', async () => {
    const refused = await ask(['son', 'stranger']).expect(422);
    expect(bodyOf<ProblemBody>(refused).errors).toEqual([
      having({ pointer: '/individuals/1', detail: textWith('another line') }),
    ]);
    const { warnings } = await group(['son', 'stranger'], { crossLines: true });
    expect(warnings.slice(0, 1)).toEqual([textWith('crosses of Quebrada Inventada and Rio Ajeno')]);
  });

  it('names what it cannot take', async () => {
    const half = await ask(['son', 'sister'], { males: 1 }).expect(422);
    expect(bodyOf<ProblemBody>(half).errors).toEqual([having({ pointer: '/females' })]);
    const unknown = await api.http
      .post('/api/v1/match/group')
      .send({ individuals: [idOf('son'), newId()] })
      .expect(422);
    expect(bodyOf<ProblemBody>(unknown).errors).toEqual([having({ pointer: '/individuals/1' })]);
    await ask(['son']).expect(422);
    await ask(['son', 'sister'], { weight: -1 }).expect(422);
    await ask(['son', 'sister'], { males: 7, females: 1 }).expect(422);
    const { warnings } = await group(['a', 'b']);
    expect(warnings).toContainEqual(textWith('died'));
  });
});
