import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { streamWidth } from '../../../client/src/lib/charts/ancestors/measures.ts';
import {
  layoutDescendants,
  type DescendantItem,
  type DescendantLayout,
} from '../../../client/src/lib/charts/descendants/descendant-layout.ts';
import { moveAmong } from '../../../client/src/lib/charts/descendants/descendant-moves.ts';
import { descendantRows, sharesOfYoung } from '../../../client/src/lib/charts/descendants/descendant-rows.ts';
import type { ChartDescendant, Family, YoungOf } from '../../../client/src/lib/charts/descendants/families.ts';
import { descendantBoxes } from '../../../client/src/lib/charts/descendants/descendant-boxes.ts';
import { partsOf } from '../../../client/src/lib/charts/paper-parts.ts';
import { openingPlace } from '../../../client/src/lib/charts/descendants/opening-place.ts';
import { repeatable } from './invented-pedigree.ts';

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
  const hatched = random() < 0.2 ? null : '2008-05-01';
  const root: ChartDescendant = {
    ...animal('root'),
    isPrivate: false,
    hasYoung: true,
    earliest: hatched,
    latest: hatched,
  };
  const youngOf = new Map<string, Family[]>();
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
        // a few are dated before their parents hatched
        const year = 2010 + generation * 3 + Math.floor(random() * 6) - (random() < 0.1 ? 5 : 0);
        const laid = random() < 0.2 ? null : `${year}-0${1 + Math.floor(random() * 9)}-01`;
        const odds = random() < 0.3 ? 0.5 : 1;
        const clutch = { id, title: id, laid, earliest: laid, latest: laid, probability: odds };
        const young: Family = { clutch, mates: [], animals };
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
            : { key, left: x - 9, right: x + 84, top: y - 9, bottom: y + 54 },
        );
        const overlaps = boxes.flatMap((a, at) =>
          boxes
            .slice(at + 1)
            .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
            .map((b) => `${a.key} and ${b.key}`),
        );
        expect(overlaps).toEqual([]);
        for (const { left, right, bottom } of boxes) {
          expect(left).toBeGreaterThanOrEqual(layout.ticks.length > 0 ? 58 : 0);
          expect(right).toBeLessThanOrEqual(layout.width);
          expect(bottom).toBeLessThanOrEqual(layout.height);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('is cut into strips for paper that hold all of it, every symbol and all words whole in one of them', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const layout = layoutDescendants(root, youngOf, opened, 700);
        const strips = partsOf(descendantBoxes(layout), { from: 50, to: layout.width }, 830);
        expect([strips[0]?.from, strips.at(-1)?.to]).toEqual([50, layout.width]);
        for (const [at, { from, to }] of strips.entries()) {
          expect(to - from).toBeLessThanOrEqual(830);
          // it begins where the last one ends, or a little before
          const end = strips[at - 1]?.to ?? from;
          expect(from).toBeLessThanOrEqual(end);
          expect(end - from).toBeLessThan(200);
        }
        const words = [
          ...layout.items.map(({ kind, x }) => (kind === 'folded' ? [x - 22, x + 22] : [x - 9, x + 80])),
          ...layout.eggs.map(({ x, room }) => [x - 5, x + 9 + room]),
        ];
        const isWhole = ([from = 0, to = 0]: number[]): boolean =>
          strips.some((strip) => strip.from <= from && to <= strip.to);
        expect(words.filter((one) => !isWhole(one))).toEqual([]);
        expect(strips.length).toBeLessThanOrEqual(Math.ceil((layout.width - 50) / 600));
      }),
      { numRuns: 25 },
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
          expect((egg?.y ?? NaN) - (itemOf.get(parent.id)?.y ?? NaN)).toBeGreaterThan(60);
          for (const { id } of young.animals) expect(itemOf.get(id)?.y ?? NaN).toBeGreaterThan(egg?.y ?? NaN);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('lets no words beside an egg meet a symbol, a diamond or the words of another egg', () => {
    fc.assert(
      fc.property(families, ([seed, most]) => {
        const { root, youngOf, opened } = invented(seed, most);
        const { items, eggs } = layoutDescendants(root, youngOf, opened, 700);
        const words = eggs.map(({ x, y, room }) => ({ left: x - 5, right: x + 9 + room, top: y - 14, bottom: y + 15 }));
        const symbols = items.map(({ kind, x, y }) =>
          kind === 'folded'
            ? { left: x - 22, right: x + 22, top: y - 20, bottom: y + 20 }
            : { left: x - 9, right: x + 77, top: y - 9, bottom: y + 26 },
        );
        const meet = (a: (typeof words)[number], b: (typeof words)[number]): boolean =>
          a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
        for (const [at, one] of words.entries())
          expect([...words.slice(at + 1), ...symbols].filter((other) => meet(one, other))).toEqual([]);
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
          for (const key of ['stepUp', 'stepDown', 'stepLeft', 'stepRight'] as const) {
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

const animalOf = (id: string, told: Partial<ChartDescendant> = {}): ChartDescendant => ({
  ...{ id, number: `${id}-0`, code: id, sex: 'male', status: 'alive', isPrivate: false, hasYoung: false },
  ...told,
});
const clutchOf = (id: string, laid: string | null, animals: ChartDescendant[], probability = 1): Family => ({
  clutch: { id, title: id, laid, earliest: laid, latest: laid, probability },
  mates: [],
  animals,
});
const at = (layout: DescendantLayout, key: string): DescendantItem => {
  const item = layout.items.find((one) => one.key === key);
  if (!item) throw new Error(`${key} is not drawn`);
  return item;
};

/** A sire, hatched in 2010; a daughter and a son of two clutches of his, who have young together. */
function twiceBred(): { root: ChartDescendant; youngOf: Map<string, Family[]> } {
  const [daughter, son] = [animalOf('daughter', { hasYoung: true }), animalOf('son', { hasYoung: true })];
  const root = animalOf('sire', { hasYoung: true, earliest: '2010-01-01', latest: '2010-01-01' });
  const own = [clutchOf('first', '2012-01-01', [daughter]), clutchOf('second', '2014-01-01', [son], 0.5)];
  const theirs = clutchOf('inbred', '2018-01-01', [animalOf('a'), animalOf('b')]);
  const youngOf = new Map([
    ['sire', own],
    ['daughter', [theirs]],
    ['son', [theirs]],
  ]);
  return { root, youngOf };
}

describe('the ruler of years beside the descendants', () => {
  it('is true: every clutch hangs at its own date, the first animal at its hatching', () => {
    const { root, youngOf } = twiceBred();
    const layout = layoutDescendants(root, youngOf, new Set(youngOf.keys()), 800);
    const yearAt = new Map(layout.ticks.map(({ year, y }) => [year, y]));
    expect(yearAt.get(2010)).toBeCloseTo(at(layout, 'sire').y, 5);
    for (const { clutch, y } of layout.eggs) expect(yearAt.get(Number(clutch.laid?.slice(0, 4)))).toBeCloseTo(y, 5);
    const heights = layout.ticks.map(({ y }) => y);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
  });

  it('is not there where no date is known, and young stand below their parents all the same', () => {
    const { root, youngOf } = twiceBred();
    const undated = new Map(
      [...youngOf].map(([id, own]) => [
        id,
        own.map(({ clutch, ...rest }) => ({
          ...rest,
          clutch: { ...clutch, laid: null, earliest: null, latest: null },
        })),
      ]),
    );
    const layout = layoutDescendants({ ...root, earliest: null, latest: null }, undated, new Set(undated.keys()), 800);
    expect(layout.ticks).toEqual([]);
    expect(at(layout, 'daughter').y).toBeGreaterThan(at(layout, 'sire').y + 60);
  });
});

it('lets streams carry the expected part of the first animal, by both ways where both parents descend from it', () => {
  const { root, youngOf } = twiceBred();
  const { streams } = layoutDescendants(root, youngOf, new Set(youngOf.keys()), 800);
  const width = (key: string): number | undefined => streams.find((stream) => stream.key === key)?.width;
  expect(width('sire first')).toBe(streamWidth(0.5));
  expect(width('sire second')).toBe(streamWidth(0.25));
  expect(width('daughter inbred')).toBe(streamWidth(0.25));
  expect(width('son inbred')).toBe(streamWidth(0.125));
  expect(width('inbred folded inbred')).toBe(streamWidth(0.375));
});

describe('a chart wider than its frame', () => {
  const wide = (clutches: number): DescendantLayout => {
    const families = Array.from({ length: clutches }, (_, place) =>
      clutchOf(`c${place}`, `20${10 + place}-03-01`, [animalOf(`y${place}`, { hasYoung: true })]),
    );
    const root = animalOf('root', { hasYoung: true });
    return layoutDescendants(root, new Map([['root', families]]), new Set(['root']), 856);
  };

  it('is made to fit where it is only a little wider', () => {
    expect(wide(6).width).toBe(856);
    expect(wide(7).width).toBe(856);
    expect(wide(9).width).toBeGreaterThan(1000);
  });

  it('opens with the animal asked about in sight and no symbol cut at the left edge', () => {
    for (const clutches of [9, 10, 14, 30])
      for (const width of [300, 350, 700, 856]) {
        const layout = wide(clutches);
        const place = openingPlace(layout, { width, ruler: 48 });
        const root = at(layout, 'root');
        expect(root.x - 36).toBeGreaterThanOrEqual(place + 48);
        expect(root.x + 84).toBeLessThanOrEqual(place + width);
        const cut = layout.items.filter(({ x }) => x - 10 < place + 48 && place + 48 < x + 10);
        expect(cut).toEqual([]);
      }
  });

  it('begins at its left end where all of it fits', () => {
    const layout = wide(3);
    expect(openingPlace(layout, { width: 856, ruler: 48 })).toBe(0);
  });
});

describe('the label shares of the young of a clutch', () => {
  const half = [
    { standing: 'documented', share: 0.5 },
    { standing: 'unknown', share: 0.5 },
  ] as const;

  it('are said once where they are alike, and by name where they are not', () => {
    const [a, b] = [animalOf('a', { standings: half }), animalOf('b', { standings: half })];
    const all = '50\u202f% documented, 50\u202f% unknown';
    expect(sharesOfYoung([a, b])).toEqual([{ whose: '', shares: all }]);
    const c = animalOf('c', { standings: [{ standing: 'stated', share: 1 }] });
    expect(sharesOfYoung([a, b, c])).toEqual([
      { whose: 'a, b', shares: all },
      { whose: 'c', shares: '100\u202f% stated' },
    ]);
  });

  it('are not told of a private animal', () => {
    expect(sharesOfYoung([animalOf('a', { isPrivate: true, standings: half })])).toEqual([]);
  });
});

it('stays small for an animal with 300 young: a diamond for each clutch', () => {
  const { root } = invented(1, 1);
  const families = Array.from({ length: 30 }, (_, clutch) =>
    clutchOf(
      `c${clutch}`,
      `20${12 + Math.floor(clutch / 5)}-0${1 + (clutch % 5)}-01`,
      Array.from({ length: 10 }, (__, young) => animalOf(`y${clutch}-${young}`)),
    ),
  );
  const layout = layoutDescendants(root, new Map([[root.id, families]]), new Set([root.id]), 856);
  expect(layout.items).toHaveLength(31);
  expect(layout.items.reduce((sum, item) => sum + (item.kind === 'folded' ? item.animals.length : 0), 0)).toBe(300);
  expect(layout.height).toBeLessThan(500);
});
