import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PedigreeView } from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';
import {
  bracketGenerations,
  layoutBracket,
  type PlacedSlot,
} from '../../../client/src/lib/charts/bracket/bracket-layout.ts';
import { bracketSlots } from '../../../client/src/lib/charts/bracket/bracket-slots.ts';
import { slotLines } from '../../../client/src/lib/charts/bracket/slot-words.ts';
import {
  fitted,
  generationsFor,
  roomOf,
  sheetChoiceIn,
  sheetQuery,
  usualSheet,
} from '../../../client/src/lib/pedigree-sheet/sheet-choice.ts';
import { inventedPedigree } from './invented-pedigree.ts';

const room = { width: 190, height: 230 };

const pedigrees = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    generations: fc.integer({ min: 1, max: 7 }),
    breeders: fc.integer({ min: 2, max: 30 }),
    founders: fc.integer({ min: 2, max: 30 }),
    uncertain: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(inventedPedigree);

function parentsIn(view: PedigreeView, id: string): Map<string, number> {
  const clutch = view.edges.find(({ kind, to }) => kind === 'young' && to === id)?.from;
  const links = view.edges.filter(({ kind, to }) => kind === 'parent' && to === clutch);
  return new Map(links.map(({ from, probability }) => [from, probability ?? 1]));
}

describe('a bracket of any pedigree', () => {
  it('writes each animal once with its parents, where it is nearest, and refers to that place wherever it comes again', () => {
    fc.assert(
      fc.property(pedigrees, (view) => {
        const slots = bracketSlots(view, 6);
        const shown = new Map(
          slots.flatMap(({ animal, see, number }) => (animal && see === null ? [[animal.id, number]] : [])),
        );
        expect(shown.size).toBe(slots.filter(({ animal, see }) => animal && see === null).length);
        for (const { animal, see, number } of slots) {
          if (!animal || see === null) continue;
          expect(see).toBe(shown.get(animal.id));
          expect(see).toBeLessThan(number);
          expect(slots.some((other) => other.number === 2 * number || other.number === 2 * number + 1)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('names every candidate parent with its odds, the likeliest leading on', () => {
    fc.assert(
      fc.property(pedigrees, (view) => {
        const slots = bracketSlots(view, 5);
        const at = new Map(slots.map((slot) => [slot.number, slot]));
        for (const { animal, see, generation, number } of slots) {
          if (!animal || see !== null || generation === 5) continue;
          const wanted = parentsIn(view, animal.id);
          const places = [at.get(2 * number), at.get(2 * number + 1)].flatMap((slot) => slot ?? []);
          const told = new Map(
            places.flatMap((place) => [
              ...(place.animal ? [[place.animal.id, place.probability] as const] : []),
              ...place.others.map((other) => [other.animal.id, other.probability] as const),
            ]),
          );
          expect(told).toEqual(wanted);
          for (const place of places)
            for (const other of place.others) expect(other.probability).toBeLessThanOrEqual(place.probability);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keeps to a fixed grid: no slot reaches into another, each stands in the middle of its parents', () => {
    fc.assert(
      fc.property(pedigrees, fc.constantFrom(...bracketGenerations), (view, generations) => {
        const { slots, type, leading } = layoutBracket(view, generations, room);
        const at = new Map(slots.map((slot) => [slot.number, slot]));
        for (const slot of slots) {
          const [sire, dam] = [at.get(2 * slot.number), at.get(2 * slot.number + 1)];
          if (sire && dam) expect((sire.y + dam.y) / 2).toBeCloseTo(slot.y, 6);
          expect(slot.x + slot.width).toBeLessThanOrEqual(room.width);
          const lines = slotLines(slot, type);
          expect(lines.length).toBeGreaterThan(0);
          expect(lines.length * leading).toBeLessThanOrEqual(slot.height + 1e-6);
        }
        const columns = new Map<number, PlacedSlot[]>();
        for (const slot of slots) columns.set(slot.generation, [...(columns.get(slot.generation) ?? []), slot]);
        for (const column of columns.values())
          column.slice(1).forEach((lower, above) => {
            const upper = column[above] ?? lower;
            expect(lower.y - lower.height / 2).toBeGreaterThanOrEqual(upper.y + upper.height / 2 - 1e-6);
          });
      }),
      { numRuns: 40 },
    );
  });

  it('does not depend on the order in which the pedigree comes', () => {
    fc.assert(
      fc.property(pedigrees, (view) => {
        const again = { ...view, nodes: [...view.nodes].reverse(), edges: [...view.edges].reverse() };
        expect(layoutBracket(again, 5, room)).toEqual(layoutBracket(view, 5, room));
      }),
      { numRuns: 30 },
    );
  });
});

describe('of a pair of which the sexes are not known', () => {
  const base = inventedPedigree({ seed: 4, generations: 1, breeders: 2, founders: 4 });
  const animals = base.nodes.filter((node) => node.kind === 'individual');
  const [one] = animals.filter(({ id }) => id !== base.root);
  const clutch = base.nodes.find((node) => node.kind === 'clutch');
  const unsexed = (id: string) =>
    ({ ...(one ?? animals[0]), kind: 'individual', id, code: id, sex: 'unsexed' }) as const;
  const view = {
    root: base.root,
    nodes: [
      ...animals.filter(({ id }) => id === base.root),
      {
        ...clutch,
        pairs: [
          { a: 'A', b: 'B', probability: 0.6 },
          { a: 'A', b: 'C', probability: 0.3 },
          { a: 'C', b: 'D', probability: 0.1 },
        ],
      },
      ...['A', 'B', 'C', 'D'].map(unsexed),
    ],
    edges: [
      ...base.edges.filter(({ kind }) => kind === 'young'),
      ...Object.entries({ A: 0.9, B: 0.6, C: 0.4, D: 0.1 }).map(([from, probability]) => ({
        from,
        to: clutch?.id ?? '',
        kind: 'parent',
        role: 'either',
        probability,
      })),
    ],
    truncated: false,
  } as PedigreeView;

  it('the likeliest pair leads, and whoever may be with one of them stands in the place of the other', () => {
    const [, first, second] = bracketSlots(view, 3);
    const told = (slot: typeof first) => [
      `${slot?.animal?.id} ${slot?.probability}`,
      ...(slot?.others.map(({ animal, probability }) => `${animal.id} ${probability}`) ?? []),
    ];
    expect(told(first)).toEqual(['A 0.9', 'D 0.1']);
    expect(told(second)).toEqual(['B 0.6', 'C 0.4']);
  });
});

describe('the choice of a printed pedigree', () => {
  it('is read from an address and written into one', () => {
    for (const form of ['bracket', 'time'] as const)
      for (const paper of ['a4', 'letter'] as const)
        for (const stands of ['upright', 'across'] as const)
          for (const generations of generationsFor({ form, paper, stands, generations: 4 })) {
            const choice = { form, paper, stands, generations };
            expect(sheetChoiceIn(new URLSearchParams(sheetQuery(choice)))).toEqual(choice);
          }
    expect(sheetChoiceIn(new URLSearchParams('form=round&generations=many&paper=a3'))).toEqual(usualSheet);
  });

  it('offers no more generations than can be written in type of 6 points', () => {
    expect(generationsFor({ ...usualSheet, stands: 'upright' })).toEqual([3, 4, 5, 6]);
    expect(generationsFor({ ...usualSheet, stands: 'across' })).toEqual([3, 4, 5]);
    expect(fitted({ ...usualSheet, generations: 6 }).generations).toBe(5);
    const { height } = roomOf({ ...usualSheet, stands: 'upright', paper: 'letter' });
    expect(
      layoutBracket(inventedPedigree({ seed: 1, generations: 6, breeders: 9, founders: 9 }), 6, { width: 190, height })
        .type,
    ).toBeGreaterThanOrEqual((6 * 25.4) / 72);
  });
});
