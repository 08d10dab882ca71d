import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  layoutDescendants,
  moveAmong,
  type ChartDescendant,
} from '../../../client/src/lib/charts/descendants/descendant-layout.ts';
import { descendantRows } from '../../../client/src/lib/charts/descendants/descendant-rows.ts';
import { repeatable } from './invented-pedigree.ts';

type YoungOf = Parameters<typeof layoutDescendants>[1];
type Young = NonNullable<ReturnType<YoungOf['get']>>[number];

/** An invented animal's descendants: random clutches, some of two of them, some animals with several clutches, some opened. */
function invented(seed: number, most: number): { root: ChartDescendant; youngOf: YoungOf; opened: Set<string> } {
  const random = repeatable(seed);
  const animal = (id: string): ChartDescendant => ({
    id,
    number: `${1000 + Math.floor(random() * 9000)}-1`,
    code: id,
    sex: (['male', 'female', 'unsexed'] as const)[Math.floor(random() * 3)] ?? 'unsexed',
    status: random() < 0.3 ? 'died' : 'alive',
    isPrivate: random() < 0.1,
    hasYoung: random() < 0.4,
  });
  const root = { ...animal('root'), hasYoung: true };
  const youngOf = new Map<string, Young[]>();
  const opened = new Set<string>();
  let level = [root];
  for (let generation = 0; generation < 4 && level.length > 0; generation++) {
    const next: ChartDescendant[] = [];
    for (const parent of level.filter(({ hasYoung }) => hasYoung)) {
      if (generation > 0 && random() < 0.2) continue;
      opened.add(parent.id);
      for (let at = 0; at < 1 + random() * most; at++) {
        const id = `c-${parent.id}-${at}`;
        const animals = Array.from({ length: Math.floor(random() * 6) }, (_, place) =>
          animal(`${parent.id}.${at}${place}`),
        );
        next.push(...animals);
        const young = {
          clutch: {
            id,
            title: id,
            laid: random() < 0.2 ? null : `20${10 + generation * 3}-0${1 + Math.floor(random() * 9)}-01`,
            eggs: 4,
            hatched: 3,
            outOfWater: 2,
            role: 'sire',
            probability: random() < 0.3 ? 0.5 : 1,
          },
          mates: [],
          animals,
        } as unknown as Young;
        const others = level.filter((other) => other !== parent && other.hasYoung && random() < 0.15);
        for (const one of [parent, ...others]) youngOf.set(one.id, [...(youngOf.get(one.id) ?? []), young]);
      }
    }
    level = next;
  }
  return { root, youngOf, opened };
}

const families = fc.tuple(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 4 }));

describe('the chart of any descendants', () => {
  it('lets no two animals or diamonds overlap, and keeps all within the frame', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const layout = layoutDescendants(root, youngOf, opened, 390);
        const boxes = layout.items.map(({ kind, key, x, y }) =>
          kind === 'folded'
            ? { key, left: x - 22, right: x + 22, top: y - 20, bottom: y + 20 }
            : { key, left: x - 9, right: x + 84, top: y - 9, bottom: y + 30 },
        );
        const overlaps = boxes.flatMap((a, at) =>
          boxes
            .slice(at + 1)
            .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
            .map((b) => `${a.key} and ${b.key}`),
        );
        expect(overlaps).toEqual([]);
        for (const { left, right, bottom } of boxes) {
          expect(left).toBeGreaterThanOrEqual(0);
          expect(right).toBeLessThanOrEqual(layout.width);
          expect(bottom).toBeLessThanOrEqual(layout.height);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('draws every clutch once and below its parents, every young of it once and below the clutch', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const { items, eggs } = layoutDescendants(root, youngOf, opened);
        const told = items.flatMap((item) =>
          (item.kind === 'folded' ? item.animals : [item.animal]).map(({ id }) => [id, item] as const),
        );
        expect(new Set(told.map(([id]) => id)).size).toBe(told.length);
        const itemOf = new Map(told);
        const eggOf = new Map(eggs.map((egg) => [egg.clutch.id, egg]));
        expect(eggOf.size).toBe(eggs.length);
        for (const { parent, young } of descendantRows(root, youngOf, opened)) {
          const egg = eggOf.get(young.clutch.id);
          if (!itemOf.has(parent.id)) continue;
          expect(egg).toBeDefined();
          for (const { id } of young.animals) expect(itemOf.get(id)?.y ?? NaN).toBeGreaterThan(egg?.y ?? NaN);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is the same whatever the order of clutches and young', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const turned = new Map(
          [...youngOf]
            .reverse()
            .map(([id, clutches]) => [
              id,
              [...clutches].reverse().map((young) => ({ ...young, animals: [...young.animals].reverse() })),
            ]),
        );
        expect(layoutDescendants(root, turned, opened, 500)).toEqual(layoutDescendants(root, youngOf, opened, 500));
      }),
      { numRuns: 40 },
    );
  });

  it('is walked by arrow keys to everything that is drawn', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const layout = layoutDescendants(root, youngOf, opened);
        const met = new Set([root.id]);
        const queue = [root.id];
        for (let at = queue.pop(); at !== undefined; at = queue.pop())
          for (const key of ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight']) {
            const next = moveAmong(layout, at, key);
            if (next === null || met.has(next)) continue;
            met.add(next);
            queue.push(next);
          }
        expect(met.size).toBe(layout.items.length);
      }),
      { numRuns: 40 },
    );
  });
});

it('stays small for an animal with 300 young: a diamond for each clutch', () => {
  const { root } = invented(1, 1);
  const young = Array.from({ length: 30 }, (_, clutch) => ({
    clutch: { id: `c${clutch}`, title: `c${clutch}`, laid: `2020-01-${10 + clutch}`, probability: 1 },
    mates: [],
    animals: Array.from({ length: 10 }, (__, at) => ({ ...root, id: `y${clutch}-${at}`, hasYoung: false })),
  })) as unknown as Young[];
  const layout = layoutDescendants(root, new Map([[root.id, young]]), new Set([root.id]), 856);
  expect(layout.items).toHaveLength(31);
  expect(layout.items.reduce((sum, item) => sum + (item.kind === 'folded' ? item.animals.length : 0), 0)).toBe(300);
  expect(layout.height).toBeLessThan(300);
});
