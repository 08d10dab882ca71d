import { youngBySex, type BreedingScheme, type FilledScheme } from './breeding-scheme.ts';
import type { GenerationKinship } from './generation-kinship.ts';
import { exchangeDams } from './mate-exchange.ts';

/** The parents of a generation's clutches, as animals of the generation before. */
export interface ClutchParents {
  readonly sires: Int32Array;
  readonly dams: Int32Array;
}

/** What the matings of one generation lead to, known before any gene is drawn. */
interface PlannedGeneration extends ClutchParents {
  /** Expected kinships of the young. */
  readonly kinship: GenerationKinship;
}

/** Adds to the kinship of clutch-mates, so that they are mated only where there is no other way. */
const CLUTCH_MATES = 1;

/**
 * Pairs the young of chosen pairs again, generation after generation, by one rule. Who breeds is chosen one by one: first for the places
 * with most clutches, each time the young that leaves the mean kinship of those chosen least. Then dams are exchanged between places as
 * long as that lowers the kinship of the mates; clutch-mates only where there is no other way. Kinships are the expected ones of the
 * pedigree that arises (Malécot 1948), and nothing is left to chance.
 *
 * @param breeders the expected kinships of the animals that fill the places, sires first
 */
export function planGenerations(
  { scheme }: FilledScheme,
  breeders: GenerationKinship,
  generations: number,
  youngKept: number,
): PlannedGeneration[] {
  const planned: PlannedGeneration[] = [];
  const animals = Int32Array.from({ length: scheme.sires + scheme.dams }, (_, animal) => animal);
  let sires = animals.subarray(0, scheme.sires);
  let dams = animals.subarray(scheme.sires);
  let kinship = breeders;
  for (let generation = 1; generation <= generations; generation++) {
    if (generation > 1) ({ sires, dams } = choose(scheme, kinship, generation - 1, youngKept));
    const parents = parentsOf(scheme, sires, dams);
    kinship = kinship.next(parents.sires, parents.dams, youngKept);
    planned.push({ ...parents, kinship });
  }
  return planned;
}

function parentsOf({ siresOf, damOf }: BreedingScheme, sires: Int32Array, dams: Int32Array): ClutchParents {
  return { sires: siresOf.map((place) => sires[place] ?? -1), dams: damOf.map((place) => dams[place] ?? -1) };
}

/** Fills the places of a scheme with young of a generation. */
function choose(
  scheme: BreedingScheme,
  kinship: GenerationKinship,
  generation: number,
  youngKept: number,
): { sires: Int32Array<ArrayBuffer>; dams: Int32Array<ArrayBuffer> } {
  const { males, females } = youngBySex(scheme.damOf.length, youngKept, generation);
  const choice = new BreederChoice(kinship);
  const sires = new Int32Array(scheme.sires);
  const dams = new Int32Array(scheme.dams);
  const free = { sires: choice.byFamily(males), dams: choice.byFamily(females) };
  for (const { side, place, clutches } of placesInOrder(scheme))
    (side === 'sires' ? sires : dams)[place] = choice.take(free[side], clutches);
  exchangeDams(
    scheme,
    sires,
    dams,
    (sire, dam) => kinship.of(sire, dam) + (kinship.familyOf(sire) === kinship.familyOf(dam) ? CLUTCH_MATES : 0),
  );
  return { sires, dams };
}

interface Place {
  readonly side: 'sires' | 'dams';
  readonly place: number;
  /** In how many clutches who stands there is a parent. */
  readonly clutches: number;
}

/** The places with most clutches first, sires and dams in turn. */
function placesInOrder({ sires, dams, siresOf, damOf }: BreedingScheme): Place[] {
  const count = (side: Place['side'], length: number, used: Int32Array): Place[] => {
    const clutches = new Int32Array(length);
    for (const place of used) clutches[place] = (clutches[place] ?? 0) + 1;
    return Array.from(clutches, (times, place) => ({ side, place, clutches: times }));
  };
  return [...count('sires', sires, siresOf), ...count('dams', dams, damOf)].sort(
    (one, other) => other.clutches - one.clutches || one.place - other.place || (one.side === 'sires' ? -1 : 1),
  );
}

/** Takes young one by one so that the mean kinship of those taken, each weighted by its clutches, stays least. */
class BreederChoice {
  readonly #kinship: GenerationKinship;
  /** Families: Σ clutches · kinship with those taken. */
  readonly #withTaken: Float64Array;

  constructor(kinship: GenerationKinship) {
    this.#kinship = kinship;
    this.#withTaken = new Float64Array(kinship.families);
  }

  /** Animals by family, to be taken from. */
  byFamily(animals: Int32Array): number[][] {
    const families: number[][] = Array.from({ length: this.#kinship.families }, () => []);
    for (const animal of animals) families[this.#kinship.familyOf(animal)]?.push(animal);
    return families;
  }

  /** The animal that raises the mean kinship least as a parent of so many clutches; it is free no longer. */
  take(free: number[][], clutches: number): number {
    const kinship = this.#kinship;
    let best = -1;
    let least = Infinity;
    free.forEach((animals, family) => {
      if (animals.length === 0) return;
      const raised = 2 * (this.#withTaken[family] ?? 0) + clutches * kinship.selfOf(family);
      // what differs by rounding alone is the same, so that the order decides
      if (raised < least - 1e-12) {
        least = raised;
        best = family;
      }
    });
    const animal = free[best]?.shift();
    if (animal === undefined) throw new RangeError('There are fewer young than places for them.');
    for (let family = 0; family < kinship.families; family++)
      this.#withTaken[family] = (this.#withTaken[family] ?? 0) + clutches * kinship.between(family, best);
    return animal;
  }
}
