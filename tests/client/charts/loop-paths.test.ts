import { describe, expect, it } from 'vitest';
import type { InbreedingLoops, LoopAncestor, LoopStep } from '../../../client/src/lib/api/types.ts';
import { pathsOfLoops, topOfLoop } from '../../../client/src/lib/charts/ancestors/loop-paths.ts';
import {
  ancestorName,
  chosenInWords,
  litShare,
  loopArithmetic,
  loopCount,
  wayInWords,
} from '../../../client/src/lib/charts/ancestors/loop-words.ts';
import { readPedigree } from '../../../client/src/lib/charts/ancestors/pedigree-graph.ts';
import type { IndividualNode, PedigreeView } from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';
import { ancestorsInChart, type ShownLoops } from '../../../client/src/lib/charts/ancestors/shown-loops.ts';

const animal = (id: string): IndividualNode => ({
  kind: 'individual',
  id,
  number: id.startsWith('private') ? null : id,
  isPrivate: id.startsWith('private'),
  sex: 'unsexed',
  status: 'alive',
  unknownOrigin: false,
  hasMoreAncestors: false,
  standings: [],
});

type Role = 'sire' | 'dam' | 'either';

/** A chart of clutches: young, then parents with role and probability. */
function chart(
  root: string,
  clutches: Record<string, [young: string[], parents: [string, Role, number][]]>,
): PedigreeView {
  const names = new Set(
    Object.values(clutches).flatMap(([young, parents]) => [...young, ...parents.map(([id]) => id)]),
  );
  return {
    root,
    truncated: false,
    nodes: [
      ...[...names].map(animal),
      ...Object.keys(clutches).map((id) => ({ kind: 'clutch' as const, id, title: id })),
    ],
    edges: Object.entries(clutches).flatMap(([clutch, [young, parents]]) => [
      ...young.map((to) => ({ from: clutch, to, kind: 'young' as const })),
      ...parents.map(([from, role, probability]) => ({ from, to: clutch, kind: 'parent' as const, role, probability })),
    ]),
  };
}

const step = (id: string | null, clutch: string, as: Role, probability = 1): LoopStep => ({
  animal: id,
  clutch,
  as,
  probability,
  together: null,
});
const figures = { loops: 1, shortest: 2, longest: 2, listed: 1, leftOut: 0, leftOutPart: 0 };
const ref = (id: string) => ({
  id,
  number: id.startsWith('private') ? null : id,
  code: null,
  sex: 'unsexed' as const,
  isPrivate: id.startsWith('private'),
});
const through = (id: string, part = 0.125): LoopAncestor => ({ ...figures, part, ancestor: ref(id) });

/** An answer with one loop. */
function answer(first: LoopStep[], second: LoopStep[], ancestor: LoopAncestor): InbreedingLoops {
  const ids = new Set([...first, ...second].flatMap(({ animal: id }) => id ?? []));
  const steps = first.length + second.length - 2;
  return {
    inbreeding: ancestor.part,
    isTakenApart: true,
    loops: [{ commonAncestor: 0, part: ancestor.part, probability: 1, steps, kinship: 0.5, first, second }],
    ancestors: [ancestor],
    others: 0,
    othersPart: 0,
    animals: [...ids].map(ref),
    clutches: [],
    current: true,
    asOf: { revision: 1, at: '2026-01-01T00:00:00Z' },
  };
}

/** x of s and d; s of a or b with m, d of a or b with n. */
const halfSiblings = chart('x', {
  cx: [
    ['x'],
    [
      ['s', 'sire', 1],
      ['d', 'dam', 1],
    ],
  ],
  cs: [
    ['s'],
    [
      ['a', 'sire', 0.5],
      ['b', 'sire', 0.5],
      ['m', 'dam', 1],
    ],
  ],
  cd: [
    ['d'],
    [
      ['a', 'sire', 0.5],
      ['b', 'sire', 0.5],
      ['n', 'dam', 1],
    ],
  ],
});

describe('a loop in the chart', () => {
  it('lights its own animals, clutches and streams and no others', () => {
    const graph = readPedigree(halfSiblings);
    const told = answer(
      [step('s', 'cx', 'sire'), step('a', 'cs', 'sire', 0.5)],
      [step('d', 'cx', 'dam'), step('a', 'cd', 'sire', 0.5)],
      through('a'),
    );
    const { nodes, streams, isWhole } = pathsOfLoops(graph, told, told.loops);
    expect([...nodes].sort()).toEqual(['a', 'cd', 'cs', 'cx', 'd', 's', 'x']);
    expect([...streams].sort()).toEqual(['a cd', 'a cs', 'cd d', 'cs s', 'cx x', 'd cx', 's cx']);
    expect(isWhole).toBe(true);
    expect(topOfLoop(graph, told, told.loops[0] ?? expect.fail())).toBe('a');
  });

  it('through clutch-mates who share a parent nobody knows ends in their clutch', () => {
    const graph = readPedigree(
      chart('x', {
        cx: [
          ['x'],
          [
            ['s', 'sire', 1],
            ['d', 'dam', 1],
          ],
        ],
        c: [['s', 'd'], [['m', 'dam', 1]]],
      }),
    );
    const unknown = {
      ...figures,
      part: 0.125,
      unknownParentOf: { id: 'c', title: 'clutch of 2020', isPrivate: false },
    };
    const told = answer(
      [step('s', 'cx', 'sire'), step(null, 'c', 'sire')],
      [step('d', 'cx', 'dam'), step(null, 'c', 'sire')],
      unknown,
    );
    const { nodes, streams, isWhole } = pathsOfLoops(graph, told, told.loops);
    expect([...nodes].sort()).toEqual(['c', 'cx', 'd', 's', 'x']);
    expect([...streams].sort()).toEqual(['c d', 'c s', 'cx x', 'd cx', 's cx']);
    expect(isWhole).toBe(true);
    expect(ancestorName(unknown)).toBe('an unknown parent of the clutch of 2020');
    expect(wayInWords(told, told.loops[0]?.first ?? [])).toEqual(['s', 'an unknown sire']);
  });

  it('finds private animals by where they stand, though each answer names them anew', () => {
    const view = chart('x', {
      cx: [
        ['x'],
        [
          ['private-4', 'sire', 1],
          ['private-9', 'dam', 1],
        ],
      ],
      cs: [
        ['private-4'],
        [
          ['private-2', 'sire', 0.3],
          ['private-1', 'sire', 0.7],
          ['m', 'dam', 1],
        ],
      ],
      cd: [
        ['private-9'],
        [
          ['private-1', 'sire', 0.7],
          ['private-2', 'sire', 0.3],
          ['n', 'dam', 1],
        ],
      ],
    });
    const told = answer(
      [step('private-1', 'k1', 'sire'), step('private-2', 'k2', 'sire', 0.7)],
      [step('private-3', 'k1', 'dam'), step('private-2', 'k3', 'sire', 0.7)],
      through('private-2'),
    );
    const graph = readPedigree(view);
    expect([...pathsOfLoops(graph, told, told.loops).nodes].sort()).toEqual(
      ['cd', 'cs', 'cx', 'private-1', 'private-4', 'private-9', 'x'].sort(),
    );
    const shown: ShownLoops = { answer: told, chosen: null, through: () => expect.fail() };
    const found = ancestorsInChart(graph, shown);
    expect(found.get('private-1')).toEqual({ id: 'private-1', places: 2, part: 0.125, told: told.ancestors[0] });
    expect(found.get('private-2')).toMatchObject({ part: 0, told: null });
  });

  it('says that it goes on where the chart ends before it does', () => {
    const graph = readPedigree(
      chart('x', {
        cx: [
          ['x'],
          [
            ['s', 'sire', 1],
            ['d', 'dam', 1],
          ],
        ],
      }),
    );
    const told = answer(
      [step('s', 'cx', 'sire'), step('a', 'cs', 'sire')],
      [step('d', 'cx', 'dam'), step('a', 'cd', 'sire')],
      through('a'),
    );
    const paths = pathsOfLoops(graph, told, told.loops);
    expect(paths.isWhole).toBe(false);
    expect([...paths.streams].sort()).toEqual(['cx x', 'd cx', 's cx']);
    expect(topOfLoop(graph, told, told.loops[0] ?? expect.fail())).toBeNull();
    expect(ancestorsInChart(graph, { answer: told, chosen: null, through: () => expect.fail() }).size).toBe(0);
  });

  it('marks none before the service has told of any, nor as adding nothing where not all are named', () => {
    const graph = readPedigree(halfSiblings);
    const none: ShownLoops = { answer: null, chosen: null, through: () => expect.fail() };
    expect(ancestorsInChart(graph, none).size).toBe(0);
    const told = answer([step('s', 'cx', 'sire')], [step('d', 'cx', 'dam')], through('a'));
    expect([...ancestorsInChart(graph, { ...none, answer: { ...told, others: 1 } }).keys()]).toEqual(['a']);
    expect([...ancestorsInChart(graph, { ...none, answer: told }).keys()]).toEqual(['a', 'b']);
  });
});

describe('a loop in words', () => {
  const loop = { commonAncestor: 0, part: 0.0222, probability: 0.7, steps: 4, kinship: 0.5625, first: [], second: [] };
  const told = answer([], [], through('a'));

  it('is an addition of halves, odds first', () => {
    expect(loopArithmetic(loop, through('a'))).toBe('0.7 × ½⁵ × 1.13');
    expect(loopArithmetic({ ...loop, probability: 1, kinship: 0.5, steps: 12 }, through('a'))).toBe('½¹³');
    const sources = [{ id: 'q', title: 'Import', label: null, standing: 'unknown' as const, isPrivate: false }];
    const founders = { ...figures, part: 0.1, sources };
    expect(loopArithmetic({ ...loop, probability: 1, kinship: 0.1 }, founders)).toBe('½⁴ × 0.1');
    expect(loopArithmetic({ ...loop, probability: 1, steps: 0, kinship: 0.1 }, founders)).toBe('0.1');
  });

  it('is counted as far as there are numbers', () => {
    expect([1, 2500, 4.2e18].map(loopCount)).toEqual(['1 loop', '2\u202f500 loops', 'about 4.2 · 10¹⁸ loops']);
    expect(loopCount(null)).toMatch(/^more than/);
  });

  it('says what is lit and how much of it', () => {
    const ancestor = through('a');
    expect(chosenInWords({ answer: told, ancestor, loops: [loop] })).toBe(
      'A loop of 4 steps through a adds 2.2\u202f% to F.',
    );
    expect(chosenInWords({ answer: told, ancestor, loops: [loop, loop] })).toBe(
      '2 loops through a add 4.4\u202f% to F.',
    );
    expect(litShare({ answer: told, ancestor, loops: [loop] })).toBe('');
    expect(litShare({ answer: told, ancestor: { ...ancestor, loops: 40 }, loops: [loop, loop] })).toBe(
      'The largest of its 40 loops are lit, 2 of them.',
    );
  });
});
