import { LoopError } from './loop-error.ts';
import { orderPedigree, type PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import type { Pair } from './genome-flow.ts';

/** What is taken to be otherwise than recorded. */
export interface Assumptions {
  /** Base kinship of sources, 0 to 1, by their numbers. */
  readonly baseKinships: ReadonlyMap<number, number>;
  /** Candidate pairs of clutches by their numbers; their probabilities sum to 1. */
  readonly pairs: ReadonlyMap<number, readonly Pair[]>;
}

/** Nothing but what is recorded. */
export const AS_RECORDED: Assumptions = { baseKinships: new Map(), pairs: new Map() };

/** The ancestry of some animals as a small pedigree of its own, under assumptions. */
export interface AncestryCopy {
  readonly pedigree: Pedigree;
  readonly order: PedigreeOrder;
  /** Number of each animal of the copy in the register. */
  readonly animals: Int32Array;
  /** Number of each clutch of the copy in the register. */
  readonly clutches: Int32Array;
  /** Number of an animal within the copy, −1 where it has no part in it. */
  readonly find: (individual: number) => number;
}

/**
 * Copies the ancestry of some animals, the assumed parents of clutches and their ancestors among it. Nothing of the register is
 * changed. Costs what the ancestors cost.
 *
 * @param clutchesMost null is given where there would be more clutches
 * @throws LoopError with numbers of the register, where an animal would be its own ancestor under the assumptions
 */
export function copyAncestry(
  register: Pedigree,
  individuals: Iterable<number>,
  assumptions: Assumptions,
  clutchesMost = Infinity,
): AncestryCopy | null {
  const found = new FoundAncestors(register, assumptions);
  for (const individual of individuals) found.add(individual);
  for (const clutch of assumptions.pairs.keys()) found.addClutch(clutch);
  if (!found.run(clutchesMost)) return null;
  const { animals, clutches, numberOf, pairsOf } = found;
  const pairStart = new Int32Array(clutches.length + 1);
  const pairs = clutches.flatMap((clutch, place) => {
    const own = pairsOf(clutch);
    pairStart[place + 1] = (pairStart[place] as number) + own.length;
    return own;
  });
  const find = (individual: number): number => numberOf.get(individual) ?? -1;
  const clutchNumbers = new Map(clutches.map((clutch, place) => [clutch, place]));
  const baseKinship = register.baseKinship.slice();
  for (const [source, kinship] of assumptions.baseKinships) baseKinship[source] = kinship;
  const pedigree: Pedigree = {
    clutchOf: Int32Array.from(animals, (animal) => clutchNumbers.get(register.clutchOf[animal] as number) ?? -1),
    sourceOf: Int32Array.from(animals, (animal) => register.sourceOf[animal] as number),
    baseKinship,
    ...(register.founderInbreeding ? { founderInbreeding: register.founderInbreeding } : {}),
    ...(register.sourceKinships ? { sourceKinships: register.sourceKinships } : {}),
    pairStart,
    pairSire: Int32Array.from(pairs, ({ a }) => find(a)),
    pairDam: Int32Array.from(pairs, ({ b }) => find(b)),
    pairProbability: Float64Array.from(pairs, ({ probability }) => probability),
  };
  const order = inRegisterNumbers(() => orderPedigree(pedigree), animals);
  return { pedigree, order, animals: Int32Array.from(animals), clutches: Int32Array.from(clutches), find };
}

function inRegisterNumbers<Result>(work: () => Result, animals: readonly number[]): Result {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof LoopError)) throw error;
    throw new LoopError(error.individuals.map((animal) => animals[animal] as number));
  }
}

/** A search upwards through recorded and assumed parents. */
class FoundAncestors {
  readonly animals: number[] = [];
  readonly clutches: number[] = [];
  readonly numberOf = new Map<number, number>();
  readonly #known = new Set<number>();
  readonly #pedigree: Pedigree;
  readonly #assumptions: Assumptions;

  constructor(pedigree: Pedigree, assumptions: Assumptions) {
    this.#pedigree = pedigree;
    this.#assumptions = assumptions;
  }

  add(individual: number): void {
    if (individual < 0 || this.numberOf.has(individual)) return;
    this.numberOf.set(individual, this.animals.length);
    this.animals.push(individual);
    this.addClutch(this.#pedigree.clutchOf[individual] as number);
  }

  addClutch(clutch: number): void {
    if (clutch < 0 || this.#known.has(clutch)) return;
    this.#known.add(clutch);
    this.clutches.push(clutch);
  }

  /** Looks for all ancestors; false as soon as there are more clutches than may be. */
  run(most: number): boolean {
    for (let place = 0; place < this.clutches.length; place++) {
      if (this.clutches.length > most) return false;
      for (const { a, b } of this.pairsOf(this.clutches[place] as number)) {
        this.add(a);
        this.add(b);
      }
    }
    return true;
  }

  readonly pairsOf = (clutch: number): readonly Pair[] => {
    const assumed = this.#assumptions.pairs.get(clutch);
    if (assumed) return assumed;
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const pairs: Pair[] = [];
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++)
      pairs.push({
        a: pairSire[pair] as number,
        b: pairDam[pair] as number,
        probability: pairProbability[pair] as number,
      });
    return pairs;
  };
}
