import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CommonAncestorsView } from '../../../api/lineage/common-ancestors.view.ts';
import type { InbreedingLoopsView, InbreedingLoopView } from '../../../api/lineage/inbreeding-loops.view.ts';
import { countView } from '../../../api/lineage/meeting-views.ts';
import { bodyOf, having, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const one = (individual: number) => [{ individual, probability: 1 }];

/** Founders G0, G1 of a source with base kinship; their young S3, D4 have X5; half of the fathers of H6 is G0; a group of three; an unknown sire. */
const sketch: RegisterSketch = {
  sources: [{ baseKinship: 0.1 }],
  individuals: [
    { source: 0, code: 'G0', sex: 'male' },
    { source: 0, code: 'G1', sex: 'female' },
    { code: 'U2', sex: 'male' },
    { clutch: 0, code: 'S3', sex: 'male' },
    { clutch: 0, code: 'D4', sex: 'female' },
    { clutch: 1, code: 'X5' },
    { clutch: 2, code: 'H6', sex: 'male' },
    { clutch: 3, code: 'Y7' },
    { clutch: 4, code: 'M8', sex: 'male' },
    { clutch: 4, code: 'N9', sex: 'female' },
    { clutch: 5, code: 'Z10' },
    { clutch: 6, code: 'T11' },
    { clutch: 6, code: 'T12' },
    { clutch: 7, code: 'W13' },
  ],
  clutches: [
    { sires: one(0), dams: one(1) },
    { sires: one(3), dams: one(4) },
    {
      sires: [
        { individual: 0, probability: 0.25 },
        { individual: 2, probability: 0.75 },
      ],
      dams: one(1),
    },
    { sires: one(6), dams: one(4) },
    { sires: one(-1), dams: one(4) },
    { sires: one(8), dams: one(9) },
    {
      pairs: [
        { a: 5, b: 7, probability: 0.5 },
        { a: 5, b: 10, probability: 0.3 },
        { a: 7, b: 10, probability: 0.2 },
      ],
    },
    { pairs: [{ a: 11, b: 12, probability: 1 }] },
  ],
};

let api: TestApi;
let ids: SketchIds;

beforeAll(async () => {
  api = await startApi();
  ids = await writeSketch(api.dataSource, sketch);
});
afterAll(() => api.close());

const pathOf = (animal: number, query = ''): string =>
  `/api/v1/individuals/${ids.individuals[animal] ?? ''}/lineage/loops${query}`;
const of = async (animal: number, query = ''): Promise<InbreedingLoopsView> =>
  bodyOf<InbreedingLoopsView>(await api.http.get(pathOf(animal, query)).expect(200));

/** A loop in short: "S3 G0 | D4 G0"; "?" is the parent nobody knows. */
function inShort({ animals }: InbreedingLoopsView, { first, second }: InbreedingLoopView): string {
  const codes = new Map(animals.map(({ id, code }) => [id, code ?? id]));
  return [first, second]
    .map((path) => path.map(({ animal }) => (animal === null ? '?' : codes.get(animal))).join(' '))
    .join(' | ');
}

function expectSum(view: InbreedingLoopsView): void {
  const listed = view.loops.reduce((sum, { part }) => sum + part, 0);
  const left = view.ancestors.reduce((sum, { leftOutPart }) => sum + leftOutPart, 0);
  expect(Math.abs(listed + left + view.othersPart - view.inbreeding)).toBeLessThanOrEqual(1e-12);
  for (const { part, probability, steps, kinship, first, second } of view.loops) {
    expect(part).toBeCloseTo(probability * 0.5 ** steps * kinship, 15);
    const odds = [
      ...first.map((step) => step.together ?? step.probability),
      ...second.map((step) => (step.together === null ? step.probability : 1)),
    ];
    expect(odds.reduce((product, each) => product * each, 1)).toBeCloseTo(probability, 12);
    if (first.length > 0) expect(first.length + second.length - 2).toBe(steps);
  }
}

describe('the loops through which an animal is inbred', () => {
  it('are told step by step: full siblings of two founders of one source', async () => {
    const view = await of(5);
    expect(view.inbreeding).toBeCloseTo(0.325, 12);
    expect(view.loops.map((loop) => inShort(view, loop)).sort()).toEqual([
      'S3 G0 | D4 G0',
      'S3 G0 | D4 G1',
      'S3 G1 | D4 G0',
      'S3 G1 | D4 G1',
    ]);
    // two loops of a quarter of 1/2(1+0.1), two of a quarter of 0.1 (Wright 1922)
    [0.1375, 0.1375, 0.025, 0.025].forEach((part, place) => expect(view.loops[place]?.part).toBeCloseTo(part, 12));
    expect(view.loops[0]?.first).toEqual([
      { animal: ids.individuals[3], clutch: ids.clutches[1], as: 'sire', probability: 1, together: 1 },
      having({ clutch: ids.clutches[0], probability: 1, together: 1 }),
    ]);
    expect(view.clutches.map(({ id }) => id).sort()).toEqual([ids.clutches[0], ids.clutches[1]].sort());
    for (const ancestor of view.ancestors) expect(ancestor).toMatchObject({ leftOut: 0, leftOutPart: 0 });
    for (const { commonAncestor, first, kinship } of view.loops) {
      const { ancestor, sources } = view.ancestors[commonAncestor] ?? {};
      if (sources) expect(kinship).toBe(0.1);
      else expect(first.at(-1)?.animal).toBe(ancestor?.id);
    }
    expectSum(view);
  });

  it('are weighed by the odds of uncertain parents, each with what it rests on', async () => {
    const view = await of(7);
    const through = view.loops.find((loop) => inShort(view, loop) === 'H6 G0 | D4 G0');
    expect(through).toMatchObject({ probability: 0.25, steps: 2 });
    expect(through?.part).toBeCloseTo(0.25 * 0.25 * 0.55, 12);
    expect(through?.first[1]).toMatchObject({ as: 'sire', probability: 0.25, together: null });
    // the dam of H6 is certain: one loop through her, whichever male it was
    const byDam = view.loops.filter((loop) => inShort(view, loop) === 'H6 G1 | D4 G1');
    expect(byDam).toEqual([having({ probability: 1 })]);
    expectSum(view);
  });

  it('name the parent nobody knows that clutch-mates share', async () => {
    const view = await of(10);
    const shown = view.loops.map((loop) => inShort(view, loop));
    expect(shown).toContain('M8 ? | N9 ?');
    const unknown = view.loops[shown.indexOf('M8 ? | N9 ?')];
    expect(unknown).toMatchObject({ part: 0.125, kinship: 0.5, steps: 2 });
    expect(unknown?.first[1]).toEqual({
      animal: null,
      clutch: ids.clutches[4],
      as: 'sire',
      probability: 1,
      together: 1,
    });
    expect(view.ancestors[unknown?.commonAncestor ?? -1]?.unknownParentOf?.id).toBe(ids.clutches[4]);
    expectSum(view);
  });

  it('take pairs of a group as they were recorded, together where clutch-mates share them', async () => {
    const view = await of(13, '?most=200');
    const roles = new Set(view.loops.flatMap(({ first, second }) => [first[1]?.as, second[1]?.as]));
    expect(roles).toEqual(new Set(['either']));
    // which of a pair comes first says nothing
    const shown = view.loops.map((loop) => inShort(view, loop).split(' | ').sort().join(' | '));
    const pair = view.loops[shown.indexOf('T11 X5 S3 G0 | T12 Z10 M8 D4 G0')];
    // the two are the pair with probability 0.3, however likely each is by itself
    const alone = [pair?.first[1], pair?.second[1]].map((step) => step?.probability ?? NaN).sort();
    expect(alone[0]).toBeCloseTo(0.5, 12);
    expect(alone[1]).toBeCloseTo(0.8, 12);
    expect([pair?.first[1], pair?.second[1]]).toEqual([having({ together: 0.3 }), having({ together: 0.3 })]);
    expect(pair).toMatchObject({ probability: 0.3, steps: 7 });
    const own = view.loops[shown.indexOf('T11 X5 | T12 X5')];
    expect(own?.probability).toBeCloseTo(0.8, 12);
    expectSum(view);
  });

  it('end where enough are listed; the rest is told by common ancestor', async () => {
    const all = await of(13, '?most=200');
    const view = await of(13, '?most=3&ancestors=2');
    expect(view.loops.map((loop) => inShort(view, loop))).toEqual(
      all.loops.slice(0, 3).map((loop) => inShort(all, loop)),
    );
    expect(view.ancestors.length + view.others).toBe(all.ancestors.length + all.others);
    expect(view.ancestors.reduce((sum, { listed }) => sum + listed, 0)).toBe(3);
    for (const { loops, listed, leftOut, part, leftOutPart } of view.ancestors) {
      expect((loops ?? NaN) - listed).toBe(leftOut);
      if (listed === 0) expect(leftOutPart).toBe(part);
    }
    expectSum(view);
    expectSum(all);
  });

  it('are those of one common ancestor where it is named: an animal, an unknown parent, or a source', async () => {
    const number = (await of(5)).ancestors.find(({ ancestor }) => ancestor?.code === 'G0')?.ancestor?.number ?? '';
    for (const name of [number, ids.individuals[0] ?? '']) {
      const view = await of(5, `?commonAncestor=${name}`);
      expect(view.loops.map((loop) => inShort(view, loop))).toEqual(['S3 G0 | D4 G0']);
      expectSum(view);
    }
    const bySource = await of(5, `?commonAncestor=${ids.sources[0]}`);
    expect(bySource.loops.map((loop) => inShort(bySource, loop)).sort()).toEqual(['S3 G0 | D4 G1', 'S3 G1 | D4 G0']);
    const pair = `${ids.sources[0]},${ids.sources[0]}`;
    expect((await of(5, `?commonAncestor=${pair}`)).loops).toHaveLength(2);
    const byClutch = await of(10, `?commonAncestor=${ids.clutches[4]}`);
    expect(byClutch.loops.map((loop) => inShort(byClutch, loop))).toEqual(['M8 ? | N9 ?']);
    expectSum(byClutch);
  });

  it('are none where nothing makes it inbred, and one without a step where a founder is', async () => {
    expect(await of(2)).toMatchObject({ inbreeding: 0, loops: [], ancestors: [], animals: [], clutches: [] });
    const founder = await of(0);
    expect(founder.loops).toEqual([
      { commonAncestor: 0, part: 0.1, probability: 1, steps: 0, kinship: 0.1, first: [], second: [] },
    ]);
    expectSum(founder);
  });

  it('refuse what cannot be asked, naming the place and the remedy', async () => {
    for (const query of ['?most=0', '?most=201', '?most=x', '?ancestors=0', '?commonAncestor=', '?all=1'])
      await api.http.get(pathOf(5, query)).expect(422);
    await api.http.get('/api/v1/individuals/999999-9/lineage/loops').expect(404);
    for (const name of ['nobody', ids.individuals[2], ids.clutches[1], `${ids.sources[0]},`, newSource]) {
      const problem = bodyOf<ProblemBody>(await api.http.get(pathOf(5, `?commonAncestor=${name}`)).expect(422));
      expect(problem.errors).toEqual([having({ pointer: '/commonAncestor' })]);
      expect(problem.detail).toContain('Name one of its `ancestors`');
    }
  });

  it('conceal private animals and clutches on the way, and tell the same figures', async () => {
    const stranger = await api.addKeeper('Other Keeper');
    const seen = await of(5);
    await api.dataSource.query(`update individual set visibility = 'private' where id = any($1)`, [
      [ids.individuals[3], ids.individuals[0]],
    ]);
    const view = bodyOf<InbreedingLoopsView>(await stranger.http.get(pathOf(5)).expect(200));
    expect(view.loops.map(({ part }) => part)).toEqual(seen.loops.map(({ part }) => part));
    const hidden = view.animals.filter(({ isPrivate }) => isPrivate);
    expect(hidden.map(({ id, number, code }) => [id, number, code]).sort()).toEqual([
      ['private-1', null, null],
      ['private-2', null, null],
    ]);
    const told = JSON.stringify(view);
    for (const id of [ids.individuals[3], ids.individuals[0]]) expect(told).not.toContain(id);
    // the ids on the ways are those of the list
    const known = new Set(view.animals.map(({ id }) => id));
    for (const { first, second } of view.loops)
      for (const { animal } of [...first, ...second]) expect(known.has(animal ?? '')).toBe(true);
    await stranger.http.get(pathOf(5, `?commonAncestor=${ids.individuals[0]}`)).expect(422);
    await stranger.http.get(pathOf(5, '?commonAncestor=private-1')).expect(422);
    await api.dataSource.query(`update individual set visibility = 'club'`);
  });

  it('agree with the common ancestors', async () => {
    for (const animal of [5, 7, 10, 13]) {
      const path = `/api/v1/individuals/${ids.individuals[animal]}/lineage/common-ancestors?most=200`;
      const { ancestors } = bodyOf<CommonAncestorsView>(await api.http.get(path).expect(200));
      const view = await of(animal, '?ancestors=200');
      expect(view.ancestors.map(({ part, loops, shortest, longest }) => ({ part, loops, shortest, longest }))).toEqual(
        ancestors.map(({ part, loops, shortest, longest }) => ({ part, loops, shortest, longest })),
      );
    }
  });
});

/** A source that does not exist. */
const newSource = '00000000-0000-4000-8000-000000000000';

describe('the loops of a line of brothers and sisters', () => {
  const GENERATIONS = 1200;
  let last: string;

  beforeAll(async () => {
    const made = await writeSketch(api.dataSource, {
      clutches: Array.from({ length: GENERATIONS }, (_, generation) => ({
        sires: one(2 * generation),
        dams: one(2 * generation + 1),
      })),
      individuals: Array.from({ length: 2 + 2 * GENERATIONS }, (_, place) => ({
        ...(place < 2 ? {} : { clutch: (place >> 1) - 1 }),
        sex: place % 2 === 0 ? ('male' as const) : ('female' as const),
      })),
    });
    last = made.individuals.at(-1) ?? '';
  });

  it('are listed though there are more than a number can tell, in a thread', async () => {
    const answer = await api.http.get(`/api/v1/individuals/${last}/lineage/loops?most=200`).expect(200);
    const view = bodyOf<InbreedingLoopsView>(answer);
    expect(view.loops).toHaveLength(200);
    expect(view.inbreeding).toBeCloseTo(1, 12);
    expect(view.ancestors.length).toBeGreaterThanOrEqual(50);
    expect(view.others).toBeGreaterThan(2000);
    expectSum(view);
  });

  it('are counted as far as a number can tell them, and as nothing beyond', async () => {
    const far = await api.http.get(`/api/v1/individuals/${last}/lineage/common-ancestors?most=200`).expect(200);
    const counts = bodyOf<CommonAncestorsView>(far).ancestors.map(({ loops }) => loops);
    // each generation back has twice as many loops as the one before
    expect(counts.slice(0, 6)).toEqual([1, 1, 2, 2, 4, 4]);
    expect(counts.at(-1)).toBe(2 ** 99);
    expect([2 ** 60, Infinity].map(countView)).toEqual([2 ** 60, null]);
  });
});
