import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutAncestors, type AncestorLayout } from '../../../client/src/lib/charts/ancestors/ancestor-layout.ts';
import { measures } from '../../../client/src/lib/charts/ancestors/measures.ts';
import type { PedigreeView } from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';
import { inventedPedigree, repeatable } from './invented-pedigree.ts';

const seed = fc.integer({ min: 1, max: 1e9 });
const part = fc.double({ min: 0, max: 1, noNaN: true });
/** Pedigrees of up to 8 generations; few breeders make a tight line with many loops, many a broad one. */
const pedigrees = (breeders: fc.Arbitrary<number>): fc.Arbitrary<PedigreeView> =>
  fc
    .record({
      seed,
      generations: fc.integer({ min: 1, max: 8 }),
      breeders,
      founders: fc.integer({ min: 2, max: 70 }),
      uncertain: part,
      undated: part,
    })
    .map(inventedPedigree);

const lines = {
  'tight lines': pedigrees(fc.integer({ min: 2, max: 9 })),
  'broad lines': pedigrees(fc.integer({ min: 20, max: 90 })),
};

interface Box {
  id: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

function boxes(layout: AncestorLayout): Box[] {
  return layout.animals.map(({ animal, x, y }) => ({
    id: animal.id,
    left: x - measures.symbol,
    right: x + measures.textRight,
    top: y - measures.symbol,
    bottom: y + measures.below,
  }));
}

function overlaps(all: Box[]): string[] {
  const sorted = [...all].sort((a, b) => a.top - b.top);
  return sorted.flatMap((a, at) => {
    const found: string[] = [];
    for (let other = at + 1; other < sorted.length; other++) {
      const b = sorted[other];
      if (!b || b.top >= a.bottom) break;
      if (a.left < b.right && b.left < a.right) found.push(`${a.id} and ${b.id}`);
    }
    return found;
  });
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  return list
    .map((value) => ({ value, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ value }) => value);
}

describe.each(Object.entries(lines))('charts of any %s', (_, views) => {
  it('let no two animals overlap, and keep all within the frame', () => {
    fc.assert(
      fc.property(views, (view) => {
        const layout = layoutAncestors(view, 856);
        expect(overlaps(boxes(layout))).toEqual([]);
        for (const { left, right, top, bottom } of boxes(layout)) {
          expect(left).toBeGreaterThanOrEqual(measures.ruler);
          expect(right).toBeLessThanOrEqual(layout.width);
          expect(top).toBeGreaterThanOrEqual(0);
          expect(bottom).toBeLessThanOrEqual(layout.height);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('draw each animal once, every parent above the clutch and the clutch above its young', () => {
    fc.assert(
      fc.property(views, (view) => {
        const layout = layoutAncestors(view, 390);
        const y = new Map<string, number>();
        for (const { animal, y: height } of layout.animals) {
          expect(y.has(animal.id)).toBe(false);
          y.set(animal.id, height);
        }
        for (const { clutch, y: height } of layout.eggs) y.set(clutch.id, height);
        for (const { from, to, kind } of view.edges)
          if (kind !== 'founder') expect((y.get(to) ?? NaN) - (y.get(from) ?? NaN)).toBeGreaterThan(20);
        expect(y.size).toBe(view.nodes.filter(({ kind }) => kind !== 'source').length);
      }),
      { numRuns: 40 },
    );
  });

  it('are the same picture in whatever order the pedigree comes', () => {
    fc.assert(
      fc.property(views, seed, (view, order) => {
        const random = repeatable(order);
        const again = { ...view, nodes: shuffled(view.nodes, random), edges: shuffled(view.edges, random) };
        expect(layoutAncestors(again, 856)).toEqual(layoutAncestors(view, 856));
      }),
      { numRuns: 25 },
    );
  });
});

describe('a chart in rows', () => {
  const view = inventedPedigree({ seed: 3, generations: 8, breeders: 60, founders: 60, uncertain: 0.1, undated: 0.1 });
  const layout = layoutAncestors(view, 856);

  it('is no wider than a reader can follow: some twenty animals side by side', () => {
    expect(layout.inRows).toBe(true);
    expect(layout.animals.length).toBeGreaterThan(100);
    expect(layout.width).toBeLessThan(3000);
    expect(layout.width / layout.height).toBeLessThan(2.5);
  });

  it('keeps time running down: what happened in a lower row happened later', () => {
    const rows = new Map<number, string[]>();
    for (const { clutch, y } of layout.eggs) if (clutch.laid) rows.set(y, [...(rows.get(y) ?? []), clutch.laid]);
    const inOrder = [...rows].sort(([a], [b]) => a - b).map(([, laid]) => laid.sort());
    inOrder.slice(1).forEach((row, at) => expect((inOrder[at]?.at(-1) ?? '') <= (row[0] ?? '')).toBe(true));
    const years = layout.ticks.map(({ year }) => year);
    expect(years).toEqual([...years].sort((a, b) => a - b));
    const heights = layout.ticks.map(({ y }) => y);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
  });

  it('leads no stream through the text of an animal', () => {
    for (const { points, from, to } of layout.streams)
      for (const [at, point] of points.entries()) {
        const next = points[at + 1];
        if (!next || Math.abs(next.x - point.x) > 0.05) continue;
        const crossed = boxes(layout).filter(
          ({ id, left, right, top, bottom }) =>
            id !== from && id !== to && point.x > left && point.x < right && point.y < bottom && next.y > top,
        );
        expect(crossed.map(({ id }) => `${from} to ${to} through ${id}`)).toEqual([]);
      }
  });

  it('comes out of a worker as it went in', () => {
    expect(structuredClone(layout)).toEqual(layout);
  });
});
