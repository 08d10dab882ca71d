import type { SeededRandom } from '../../lineage/kernel/seeded-random.ts';
import { laterScheme, schemeOfGroups, youngBySex, type BreedingGroup, type BreedingScheme } from './breeding-scheme.ts';
import { exchangeDams } from './mate-exchange.ts';
import type { ClutchParents } from './planned-generations.ts';

/** Says who are the parents of the clutches of a generation, 1 the first. Good until it is next asked. */
export interface Matings {
  readonly clutches: number;
  parents(generation: number, random: SeededRandom): ClutchParents;
}

/** Matings that were planned before. */
export class PlannedMatings implements Matings {
  readonly clutches: number;
  readonly #planned: readonly ClutchParents[];

  constructor(planned: readonly ClutchParents[]) {
    this.#planned = planned;
    this.clutches = planned[0]?.sires.length ?? 0;
  }

  parents(generation: number): ClutchParents {
    return this.#planned[generation - 1] as ClutchParents; // as many were planned as there are generations
  }
}

/**
 * Matings at random in the places of a scheme: the breeders are mixed in the first generation, later ones drawn from all young, sibs like
 * any other two.
 */
export class RandomMatings implements Matings {
  readonly clutches: number;
  readonly #scheme: BreedingScheme;
  readonly #young: YoungKept;
  readonly #filling: Filling;

  constructor(scheme: BreedingScheme, youngKept: number) {
    this.#scheme = scheme;
    this.clutches = scheme.damOf.length;
    this.#young = new YoungKept(this.clutches, youngKept);
    this.#filling = new Filling(scheme);
  }

  parents(generation: number, random: SeededRandom): ClutchParents {
    const { sires, dams } = this.#scheme;
    const { males, females } = generation === 1 ? breedersBySex(sires, dams) : this.#young.after(generation - 1);
    this.#filling.sires = drawFirst(males, sires, random);
    this.#filling.dams = drawFirst(females, dams, random);
    return this.#filling.parents(random);
  }
}

/**
 * Matings in groups as they stand: each dam has one clutch by any sire of her group. Groups of the same sizes are filled with young at random,
 * but where a dam was born in the group of her mate, another one takes her place, if there is any.
 */
export class GroupMatings implements Matings {
  readonly clutches: number;
  readonly #groups: readonly BreedingGroup[];
  readonly #young: YoungKept;
  readonly #first: Filling;
  readonly #later: Filling;
  readonly #laterSires: number;
  readonly #areOfOneGroup: (sire: number, dam: number) => 0 | 1;

  constructor(groups: readonly BreedingGroup[], youngKept: number) {
    this.#groups = groups;
    this.#first = new Filling(schemeOfGroups(groups).scheme);
    const later = laterScheme(groups, youngKept);
    this.#later = new Filling(later);
    this.#laterSires = later.sires;
    this.clutches = later.damOf.length;
    this.#young = new YoungKept(this.clutches, youngKept);
    const bornIn = (young: number): number => later.groupOf[Math.floor(young / youngKept)] ?? -1;
    this.#areOfOneGroup = (sire, dam) => (bornIn(sire) === bornIn(dam) ? 1 : 0);
  }

  parents(generation: number, random: SeededRandom): ClutchParents {
    if (generation === 1) {
      this.#fillFirst(random);
      return this.#first.parents(random);
    }
    const { males, females } = this.#young.after(generation - 1);
    this.#later.sires = drawFirst(males, this.#laterSires, random);
    // those without a place wait behind the others, to be exchanged for a sister
    this.#later.dams = drawFirst(females, females.length, random);
    if (this.#groups.length > 1) this.#later.exchange(this.#areOfOneGroup);
    return this.#later.parents(random);
  }

  /** Everybody stands where they are; of unsexed animals it is drawn who is a sire. */
  #fillFirst(random: SeededRandom): void {
    const { sires, dams } = this.#first;
    let sire = 0;
    let dam = 0;
    for (const group of this.#groups) {
      const half = group.unsexed.length >> 1;
      const sireEnd = sire + group.sires.length;
      const damEnd = dam + group.dams.length;
      for (; sire < sireEnd; sire++) sires[sire] = sire;
      for (; dam < damEnd; dam++) dams[dam] = sires.length + dam;
      const dealt = Int32Array.from(group.unsexed, (_, place) =>
        place < half ? sire + place : sires.length + dam + place - half,
      );
      drawFirst(dealt, dealt.length, random);
      for (const animal of dealt.subarray(0, half)) sires[sire++] = animal;
      for (const animal of dealt.subarray(half)) dams[dam++] = animal;
    }
  }
}

/** The breeders that fill the places of a scheme in the first generation: sires first. */
function breedersBySex(sires: number, dams: number): { males: Int32Array; females: Int32Array } {
  return {
    males: Int32Array.from({ length: sires }, (_, animal) => animal),
    females: Int32Array.from({ length: dams }, (_, animal) => sires + animal),
  };
}

/** Lists of the young by sex, to be drawn from. */
class YoungKept {
  readonly #byParity: readonly { readonly males: Int32Array; readonly females: Int32Array }[];

  constructor(clutches: number, youngKept: number) {
    this.#byParity = [0, 1].map((generation) => youngBySex(clutches, youngKept, generation));
  }

  /** Those of a generation; the lists are the caller's own. */
  after(generation: number): { males: Int32Array; females: Int32Array } {
    const kept = this.#byParity[generation & 1];
    return { males: kept?.males.slice() ?? new Int32Array(0), females: kept?.females.slice() ?? new Int32Array(0) };
  }
}

/** The animals in the places of a scheme; those behind the last place wait. */
class Filling {
  sires: Int32Array;
  dams: Int32Array;
  readonly #scheme: BreedingScheme;
  readonly #parents: ClutchParents;

  constructor(scheme: BreedingScheme) {
    this.#scheme = scheme;
    this.sires = new Int32Array(scheme.sires);
    this.dams = new Int32Array(scheme.dams);
    const clutches = scheme.damOf.length;
    this.#parents = { sires: new Int32Array(clutches), dams: new Int32Array(clutches) };
  }

  exchange(cost: (sire: number, dam: number) => number): void {
    exchangeDams(this.#scheme, this.sires, this.dams, cost);
  }

  /** The parents of each clutch; where several sires may be, it is drawn which one is. */
  parents(random: SeededRandom): ClutchParents {
    const { damOf, sireStart, siresOf } = this.#scheme;
    const { sires, dams } = this.#parents;
    for (let clutch = 0; clutch < damOf.length; clutch++) {
      const from = sireStart[clutch] ?? 0;
      const possible = (sireStart[clutch + 1] ?? 0) - from;
      const at = from + (possible > 1 ? below(possible, random) : 0);
      sires[clutch] = this.sires[siresOf[at] ?? -1] ?? -1;
      dams[clutch] = this.dams[damOf[clutch] ?? -1] ?? -1;
    }
    return this.#parents;
  }
}

/** Draws so many of a list to its front, each at most once (Fisher & Yates), and gives them. */
function drawFirst(list: Int32Array, count: number, random: SeededRandom): Int32Array {
  for (let place = 0; place < count; place++) {
    const other = place + below(list.length - place, random);
    const drawn = list[other] ?? -1;
    list[other] = list[place] ?? -1;
    list[place] = drawn;
  }
  return list.subarray(0, count);
}

/** A whole number from 0 up to, but never, `end`. */
function below(end: number, random: SeededRandom): number {
  return Math.floor(random.next() * end);
}
