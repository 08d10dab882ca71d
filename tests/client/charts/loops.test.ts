import { describe, expect, it } from 'vitest';
import { genomeShares } from '../../../client/src/lib/charts/ancestors/genome-shares.ts';
import { commonAncestors, pathsToRoot } from '../../../client/src/lib/charts/ancestors/loops.ts';
import { readPedigree } from '../../../client/src/lib/charts/ancestors/pedigree-graph.ts';
import type { PedigreeView } from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';

type Parents = [sires: Record<string, number>, dams: Record<string, number>];

/** A pedigree from "animal: [sires with probability, dams with probability]"; each animal has its own clutch. */
function pedigree(root: string, births: Record<string, Parents>, clutchOf: Record<string, string> = {}): PedigreeView {
  const view: PedigreeView = { root, nodes: [], edges: [], truncated: false };
  const names = new Set(Object.entries(births).flatMap(([id, [s, d]]) => [id, ...Object.keys(s), ...Object.keys(d)]));
  for (const id of names)
    view.nodes.push({
      kind: 'individual',
      id,
      number: id,
      sex: 'unsexed',
      status: 'alive',
      unknownOrigin: !births[id],
      hasMoreAncestors: false,
      standings: [],
      inbreeding: 0,
    });
  for (const [id, [sires, dams]] of Object.entries(births)) {
    const clutch = clutchOf[id] ?? `clutch-${id}`;
    view.edges.push({ from: clutch, to: id, kind: 'young' });
    if (view.nodes.some((node) => node.id === clutch)) continue;
    view.nodes.push({ kind: 'clutch', id: clutch, title: clutch });
    for (const [role, side] of [['sire', sires] as const, ['dam', dams] as const])
      for (const [from, probability] of Object.entries(side))
        view.edges.push({ from, to: clutch, kind: 'parent', role, probability });
  }
  return view;
}

const found = (view: PedigreeView) =>
  Object.fromEntries(
    commonAncestors(readPedigree(view)).map((one) => [one.id, { part: one.part, places: one.places }]),
  );

describe('the part of F that a common ancestor adds', () => {
  it('of half siblings is 1/8 (Wright 1922)', () => {
    const view = pedigree('x', { s: [{ a: 1 }, { b: 1 }], d: [{ a: 1 }, { c: 1 }], x: [{ s: 1 }, { d: 1 }] });
    expect(found(view)).toEqual({ a: { part: 1 / 8, places: 2 } });
  });

  it('of full siblings from one clutch is 1/8 for each parent (Wright 1922)', () => {
    const births: Record<string, Parents> = {
      s: [{ a: 1 }, { b: 1 }],
      d: [{ a: 1 }, { b: 1 }],
      x: [{ s: 1 }, { d: 1 }],
    };
    const view = pedigree('x', births, { s: 'c', d: 'c' });
    expect(found(view)).toEqual({ a: { part: 1 / 8, places: 2 }, b: { part: 1 / 8, places: 2 } });
  });

  it('of father and daughter is 1/4 through the father alone (Wright 1922)', () => {
    const view = pedigree('x', { d: [{ s: 1 }, { b: 1 }], x: [{ s: 1 }, { d: 1 }] });
    expect(found(view)).toEqual({ s: { part: 1 / 4, places: 2 } });
  });

  it('is weighed by the probability of a candidate, counted once for two siblings of one clutch', () => {
    const births: Record<string, Parents> = {
      s: [{ a: 0.75, z: 0.25 }, { b: 1 }],
      d: [{ a: 0.75, z: 0.25 }, { b: 1 }],
      x: [{ s: 1 }, { d: 1 }],
    };
    const parts = found(pedigree('x', births, { s: 'c', d: 'c' }));
    expect(parts['a']?.part).toBeCloseTo(0.75 / 8, 12);
    expect(parts['z']?.part).toBeCloseTo(0.25 / 8, 12);
    expect(parts['b']?.part).toBeCloseTo(1 / 8, 12);
  });

  it('is none where two candidates for the same place have one father', () => {
    const births: Record<string, Parents> = {
      s: [{ a: 1 }, { b: 1 }],
      t: [{ a: 1 }, { c: 1 }],
      x: [{ s: 0.5, t: 0.5 }, { d: 1 }],
    };
    expect(found(pedigree('x', births))).toEqual({});
  });

  it('is marked but not named as part of F when the loop closes above one parent only', () => {
    const births: Record<string, Parents> = {
      p: [{ a: 1 }, { b: 1 }],
      q: [{ a: 1 }, { c: 1 }],
      s: [{ p: 1 }, { q: 1 }],
      x: [{ s: 1 }, { d: 1 }],
    };
    const [only] = commonAncestors(readPedigree(pedigree('x', births)));
    expect(only).toEqual({ id: 'a', places: 2, part: 0 });
  });
});

it('lights every way from a common ancestor to the root and nothing else', () => {
  const view = pedigree('x', { s: [{ a: 1 }, { b: 1 }], d: [{ a: 1 }, { c: 1 }], x: [{ s: 1 }, { d: 1 }] });
  const { nodes, streams } = pathsToRoot(readPedigree(view), 'a');
  expect([...nodes].sort()).toEqual(['a', 'clutch-d', 'clutch-s', 'clutch-x', 'd', 's', 'x']);
  expect(streams.size).toBe(7);
  expect(streams.has('b clutch-s')).toBe(false);
});

it('counts a repeated grandparent with both of its places in the genome', () => {
  const view = pedigree('x', { s: [{ a: 1 }, { b: 1 }], d: [{ a: 0.5 }, { c: 1 }], x: [{ s: 1 }, { d: 1 }] });
  const shares = genomeShares(readPedigree(view));
  expect(shares.get('a')).toBeCloseTo(0.25 + 0.125, 12);
  expect(shares.get('c')).toBeCloseTo(0.25, 12);
});
