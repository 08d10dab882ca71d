import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LoopError } from '../../../api/lineage/kernel/loop-error.ts';
import { levelSequence, orderIndividuals, orderPedigree, validatePedigree } from '../../../api/lineage/kernel/order.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { registers, shuffled, toPedigree } from './random-registers.ts';

const anyRegister = registers({ clutches: 20, pairs: 3 });

/** One clutch an animal with certain parents; −1 everywhere makes a founder. */
function certain(parents: readonly (readonly [number, number])[]): Pedigree {
  const hatched = parents.flatMap(([sire, dam], animal) => (sire === -1 && dam === -1 ? [] : [animal]));
  const clutches = new Map(hatched.map((animal, clutch) => [animal, clutch]));
  return {
    clutchOf: Int32Array.from(parents, (_, animal) => clutches.get(animal) ?? -1),
    sourceOf: new Int32Array(parents.length).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from({ length: hatched.length + 1 }, (_, place) => place),
    pairSire: Int32Array.from(hatched, (animal) => parents[animal]?.[0] ?? -1),
    pairDam: Int32Array.from(hatched, (animal) => parents[animal]?.[1] ?? -1),
    pairProbability: new Float64Array(hatched.length).fill(1),
  };
}

function expectParentsFirst(pedigree: Pedigree, positionOf: ArrayLike<number>): void {
  for (let clutch = 0; clutch + 1 < pedigree.pairStart.length; clutch++)
    for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++)
      for (const parent of [pedigree.pairSire[pair] ?? -1, pedigree.pairDam[pair] ?? -1]) {
        const from = parent < 0 ? -1 : (pedigree.clutchOf[parent] ?? -1);
        if (from >= 0) expect(positionOf[from]).toBeLessThan(positionOf[clutch] ?? NaN);
      }
}

describe('the order of a pedigree', () => {
  it('has every clutch once and parents before young, whatever the order of rows', () => {
    fc.assert(
      fc.property(anyRegister, fc.integer({ min: 1, max: 1e6 }), (register, seed) => {
        const { pedigree } = shuffled(toPedigree(register), (row) => ((row + 1) * seed) % 7919);
        const order = orderPedigree(pedigree);
        expect([...order.clutches].sort((a, b) => a - b)).toEqual(register.clutches.map((_, clutch) => clutch));
        order.clutches.forEach((clutch, position) => expect(order.positionOf[clutch]).toBe(position));
        expectParentsFirst(pedigree, order.positionOf);
        const byLevel = levelSequence(pedigree);
        const place = new Int32Array(byLevel.length);
        byLevel.forEach((clutch, position) => (place[clutch] = position));
        expectParentsFirst(pedigree, place);
      }),
    );
  });

  it('lists individuals with parents first', () => {
    fc.assert(
      fc.property(anyRegister, fc.integer({ min: 1, max: 1e6 }), (register, seed) => {
        const { pedigree } = shuffled(toPedigree(register), (row) => ((row + 1) * seed) % 7919);
        const order = orderPedigree(pedigree);
        const individuals = orderIndividuals(pedigree, order);
        const place = new Int32Array(individuals.length).fill(-1);
        individuals.forEach((individual, at) => (place[individual] = at));
        expect(place.includes(-1)).toBe(false);
        individuals.forEach((individual, at) => {
          const clutch = pedigree.clutchOf[individual] ?? -1;
          if (clutch < 0) return;
          for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++) {
            const sire = pedigree.pairSire[pair] ?? -1;
            if (sire >= 0) expect(place[sire]).toBeLessThan(at);
          }
        });
      }),
    );
  });

  it('finds families: two pairs and their young are two components, one more mating makes them one', () => {
    const two = certain([
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [0, 1],
      [2, 3],
    ]);
    expect([...orderPedigree(two).componentStart]).toEqual([0, 1, 2]);
    const one = certain([
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [0, 1],
      [2, 3],
      [4, 5],
    ]);
    expect([...orderPedigree(one).componentStart]).toEqual([0, 3]);
  });

  it('joins families through a source whose founders are kin, and through kinship between sources', () => {
    const apart = certain([
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [-1, -1],
      [0, 1],
      [2, 3],
    ]);
    const sources = (theta: number, between: number): Pedigree => ({
      ...apart,
      sourceOf: Int32Array.from([0, 0, 0, 1, -1, -1]),
      baseKinship: Float64Array.from([theta, 0]),
      sourceKinships: [{ a: 0, b: 1, kinship: between }],
    });
    expect(orderPedigree(sources(0, 0)).componentStart).toHaveLength(3);
    expect(orderPedigree(sources(0.1, 0)).componentStart).toHaveLength(2);
    expect(orderPedigree(sources(0, 0.1)).componentStart).toHaveLength(2);
  });

  it('orders a hundred thousand generations without running out of stack', () => {
    const generations = 100_000;
    const line = certain([
      [-1, -1],
      [-1, -1],
      ...Array.from({ length: generations }, (_, row): [number, number] => [row, row + 1]),
    ]);
    const { pedigree } = shuffled(line, (row) => -row);
    expect(orderPedigree(pedigree).clutches[0]).toBe(generations - 1);
  });

  it('orders an empty register', () => {
    const order = orderPedigree(certain([]));
    expect(order.clutches).toHaveLength(0);
    expect([...order.componentStart]).toEqual([0]);
  });
});

describe('a loop', () => {
  const membersOf = (pedigree: Pedigree): readonly number[] => {
    try {
      orderPedigree(pedigree);
    } catch (error) {
      if (error instanceof LoopError) return error.individuals;
      throw error;
    }
    throw new Error('no loop was found');
  };

  it('is found when an animal is its own parent', () => {
    expect(
      membersOf(
        certain([
          [-1, -1],
          [1, 0],
        ]),
      ),
    ).toEqual([1]);
  });

  it('names its members in order, and nobody who merely descends from it', () => {
    const members = membersOf(
      certain([
        [-1, -1],
        [3, 0],
        [1, 0],
        [2, 0],
        [3, 2],
        [4, 0],
      ]),
    );
    expect([...members].sort()).toEqual([1, 2, 3]);
    members.forEach((parent, place) => {
      const child = members[(place + 1) % members.length] ?? -1;
      expect([1, 2, 3].includes(child) && { 1: 2, 2: 3, 3: 1 }[parent as 1 | 2 | 3]).toBe(child);
    });
  });

  it('is found wherever a clutch of a random register is given a descendant as a candidate parent', () => {
    fc.assert(
      fc.property(anyRegister, fc.nat(), fc.nat(), (register, pickClutch, pickYoung) => {
        const pedigree = toPedigree(register);
        const slow = descendants(pedigree, pickClutch % register.clutches.length);
        fc.pre(slow.length > 0);
        const descendant = slow[pickYoung % slow.length] ?? -1;
        const pair = pedigree.pairStart[pickClutch % register.clutches.length] ?? 0;
        const pairSire = pedigree.pairSire.slice();
        pairSire[pair] = descendant;
        const looped = { ...pedigree, pairSire };
        const members = membersOf(looped);
        members.forEach((parent, place) =>
          expect(candidateParents(looped, members[(place + 1) % members.length] ?? -1)).toContain(parent),
        );
        expect(new Set(members).size).toBe(members.length);
      }),
    );
  });
});

describe('a pedigree that breaks its promises', () => {
  const sound = (): Pedigree =>
    certain([
      [-1, -1],
      [-1, -1],
      [0, 1],
    ]);
  const cases: [string, (pedigree: Pedigree) => Pedigree, RegExp][] = [
    [
      'a clutch that does not exist',
      (p) => ({ ...p, clutchOf: Int32Array.from([-1, -1, 5]) }),
      /Individual 2 names clutch 5/,
    ],
    [
      'a source that does not exist',
      (p) => ({ ...p, sourceOf: Int32Array.from([0, -1, -1]) }),
      /Individual 0 names source 0/,
    ],
    [
      'an animal with clutch and source',
      (p) => ({ ...p, sourceOf: Int32Array.from([-1, -1, 0]), baseKinship: new Float64Array(1) }),
      /Individual 2 has both/,
    ],
    [
      'a parent that does not exist',
      (p) => ({ ...p, pairSire: Int32Array.from([7]) }),
      /Clutch 0 names parents 7 and 1/,
    ],
    ['one animal as both parents', (p) => ({ ...p, pairSire: Int32Array.from([1]) }), /individual 1 as both parents/],
    ['a probability of 0', (p) => ({ ...p, pairProbability: Float64Array.from([0]) }), /probability 0/],
    [
      'a probability that is no number',
      (p) => ({ ...p, pairProbability: Float64Array.from([NaN]) }),
      /probability NaN/,
    ],
    ['probabilities that do not sum to 1', (p) => ({ ...p, pairProbability: Float64Array.from([0.9]) }), /sum to 0.9/],
    ['a base kinship above 1', (p) => ({ ...p, baseKinship: Float64Array.from([1.5]) }), /Base kinship of source 0/],
    [
      'a founder inbreeding below 0',
      (p) => ({ ...p, baseKinship: new Float64Array(1), founderInbreeding: Float64Array.from([-0.1]) }),
      /Founder inbreeding of source 0/,
    ],
    [
      'a kinship of a source with itself',
      (p) => ({ ...p, baseKinship: new Float64Array(1), sourceKinships: [{ a: 0, b: 0, kinship: 0.1 }] }),
      /its base kinship/,
    ],
    [
      'a kinship with a source that does not exist',
      (p) => ({ ...p, baseKinship: new Float64Array(1), sourceKinships: [{ a: 0, b: 1, kinship: 0.1 }] }),
      /no such source/,
    ],
    [
      'a kinship between sources that is recorded twice',
      (p) => ({
        ...p,
        baseKinship: new Float64Array(2),
        sourceKinships: [
          { a: 0, b: 1, kinship: 0.1 },
          { a: 1, b: 0, kinship: 0.2 },
        ],
      }),
      /recorded twice/,
    ],
    ['arrays of unequal length', (p) => ({ ...p, sourceOf: new Int32Array(1) }), /clutchOf and sourceOf/],
    [
      'pairs that are not all used',
      (p) => ({ ...p, pairStart: Int32Array.from([0, 0]) }),
      /end with the number of pairs/,
    ],
    ['a clutch without pairs', (p) => ({ ...p, pairStart: Int32Array.from([0, 0, 1]) }), /clutch 0 sum to 0/],
  ];

  it.each(cases)('is refused: %s', (_, spoil, message) => {
    expect(() => orderPedigree(spoil(sound()))).toThrow(RangeError);
    expect(() => {
      validatePedigree(spoil(sound()));
    }).toThrow(message);
    expect(() => orderPedigree(sound())).not.toThrow();
  });
});

function candidateParents(pedigree: Pedigree, individual: number): number[] {
  const clutch = pedigree.clutchOf[individual] ?? -1;
  if (clutch < 0) return [];
  const [start, end] = [pedigree.pairStart[clutch], pedigree.pairStart[clutch + 1]];
  return [...pedigree.pairSire.subarray(start, end), ...pedigree.pairDam.subarray(start, end)];
}

/** The young of a clutch and all who may descend from them. Individuals must be numbered parents first. */
function descendants(pedigree: Pedigree, clutch: number): number[] {
  const found: number[] = [];
  pedigree.clutchOf.forEach((own, individual) => {
    if (own === clutch || candidateParents(pedigree, individual).some((parent) => found.includes(parent)))
      found.push(individual);
  });
  return found;
}
