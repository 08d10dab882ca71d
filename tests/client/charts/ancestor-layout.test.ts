import { describe, expect, it } from 'vitest';
import { layoutAncestors, type AncestorLayout } from '../../../client/src/lib/charts/ancestors/ancestor-layout.ts';
import { measures } from '../../../client/src/lib/charts/ancestors/measures.ts';
import { inventedPedigree, repeatable, type Wanted } from './invented-pedigree.ts';

const shapes: Record<string, Wanted> = {
  'a tight line, 8 generations': { seed: 2, generations: 8, breeders: 8, founders: 10, uncertain: 0.25, undated: 0.2 },
  'a broad line, 8 generations': { seed: 3, generations: 8, breeders: 60, founders: 60, uncertain: 0.1, undated: 0.1 },
  'a small club': { seed: 1, generations: 4, breeders: 5, founders: 8, uncertain: 0.3, undated: 0.1 },
  'no date at all': { seed: 5, generations: 5, breeders: 5, founders: 6, undated: 1 },
  '12 generations of few animals': { seed: 6, generations: 12, breeders: 4, founders: 6, uncertain: 0.4, undated: 0.5 },
};

/** The box of an animal's symbol with its number, code and share bar. */
function boxes(layout: AncestorLayout) {
  return layout.animals.map(({ animal, x, y }) => ({
    id: animal.id,
    left: x - measures.symbol,
    right: x + measures.textRight,
    top: y - measures.symbol,
    bottom: y + measures.below,
  }));
}

describe.each(Object.entries(shapes))('the ancestor chart of %s', (_, wanted) => {
  const view = inventedPedigree(wanted);
  const layout = layoutAncestors(view, 856);
  const yOf = new Map([
    ...layout.animals.map((placed) => [placed.animal.id, placed.y] as const),
    ...layout.eggs.map((egg) => [egg.clutch.id, egg.y] as const),
  ]);

  it('draws every animal and every clutch once', () => {
    const animals = view.nodes.filter((node) => node.kind === 'individual').map((node) => node.id);
    expect(layout.animals.map((placed) => placed.animal.id).sort()).toEqual(animals.sort());
    expect(layout.eggs).toHaveLength(view.nodes.filter((node) => node.kind === 'clutch').length);
  });

  it('lets no two animals overlap', () => {
    const all = boxes(layout);
    const overlaps = all.flatMap((a, i) =>
      all
        .slice(i + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((b) => `${a.id} and ${b.id}`),
    );
    expect(overlaps).toEqual([]);
  });

  it('keeps everything inside the frame and right of the ruler', () => {
    for (const box of boxes(layout)) {
      expect(box.left).toBeGreaterThanOrEqual(measures.ruler);
      expect(box.right).toBeLessThanOrEqual(layout.width);
      expect(box.top).toBeGreaterThanOrEqual(0);
      expect(box.bottom).toBeLessThanOrEqual(layout.height);
    }
  });

  it('hangs every parent above the egg and the egg above its young', () => {
    for (const edge of view.edges.filter((one) => one.kind !== 'founder')) {
      const room = (yOf.get(edge.to) ?? NaN) - (yOf.get(edge.from) ?? NaN);
      expect(room).toBeGreaterThan(edge.kind === 'parent' ? measures.below : 0);
    }
  });

  it('does not depend on the order in which nodes and edges come', () => {
    const random = repeatable(99);
    const shuffle = <T>(list: T[]) =>
      list
        .map((value) => ({ value, key: random() }))
        .sort((a, b) => a.key - b.key)
        .map(({ value }) => value);
    const again = layoutAncestors({ ...view, nodes: shuffle(view.nodes), edges: shuffle(view.edges) }, 856);
    expect(again.streams.map((one) => one.path).sort()).toEqual(layout.streams.map((one) => one.path).sort());
    expect(boxes(again).sort(byId)).toEqual(boxes(layout).sort(byId));
  });

  it('lays streams that meet at an egg side by side, as wide together as what flows on', () => {
    for (const egg of layout.eggs) {
      const incoming = layout.streams.filter((one) => one.to === egg.clutch.id);
      const young = layout.streams.filter((one) => one.from === egg.clutch.id);
      if (incoming.length === 0 || incoming.some((one) => one.width <= measures.leastStream)) continue;
      const sum = (list: typeof incoming) => list.reduce((total, one) => total + one.width, 0);
      expect(sum(incoming)).toBeCloseTo(sum(young), 6);
      const sorted = incoming
        .map((one) => ({ x: one.points[one.points.length - 1]?.x ?? NaN, width: one.width }))
        .sort((a, b) => a.x - b.x);
      sorted.slice(1).forEach((right, i) => {
        const left = sorted[i] ?? right;
        expect(right.x - left.x).toBeCloseTo((right.width + left.width) / 2, 6);
      });
    }
  });
});

function byId(a: { id: string }, b: { id: string }) {
  return a.id < b.id ? -1 : 1;
}

describe('the year ruler', () => {
  it('gives a clutch the height of its laying date, the same on ruler and node', () => {
    const layout = layoutAncestors(inventedPedigree({ seed: 1, generations: 4, breeders: 5, founders: 8 }), 856);
    for (const egg of layout.eggs) {
      const year = Number(egg.clutch.laid?.slice(0, 4));
      const before = layout.ticks.filter((tick) => tick.year <= year).at(-1);
      const after = layout.ticks.find((tick) => tick.year > year);
      if (before) expect(egg.y).toBeGreaterThanOrEqual(before.y - 0.001);
      if (after) expect(egg.y).toBeLessThanOrEqual(after.y + 0.001);
    }
  });

  it('is left away when nobody wrote a date down', () => {
    const view = inventedPedigree({ seed: 5, generations: 3, breeders: 4, founders: 4, undated: 1 });
    for (const node of view.nodes) if (node.kind === 'source') Object.assign(node, { earliest: null, latest: null });
    expect(layoutAncestors(view).ticks).toEqual([]);
  });
});

it('lays out 8 generations in less than 200 ms', () => {
  const view = inventedPedigree({ seed: 2, generations: 8, breeders: 8, founders: 10, uncertain: 0.25, undated: 0.2 });
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    layoutAncestors(view, 856);
    return performance.now() - start;
  });
  expect(Math.min(...times)).toBeLessThan(200);
});

it('draws a lone animal', () => {
  const view = inventedPedigree({ seed: 1, generations: 1, breeders: 1, founders: 2 });
  const lone = { ...view, nodes: view.nodes.filter((node) => node.id === view.root), edges: [] };
  const layout = layoutAncestors(lone, 400);
  expect(layout.animals).toHaveLength(1);
  expect(Number.isFinite(layout.height) && Number.isFinite(layout.animals[0]?.x)).toBe(true);
});
