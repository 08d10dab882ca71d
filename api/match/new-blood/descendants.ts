import type { Pedigree } from '../../lineage/kernel/pedigree.ts';

/** An animal that has genes of some founders, and how much of its genome that is. */
export interface Carrier {
  readonly animal: number;
  /** Expected share of its genome, above 0, at most 1. */
  readonly expected: number;
  /** The share that it has whichever candidates are the parents; 0 to `expected`. */
  readonly least: number;
}

/** The register read downwards: which clutches an animal is a candidate parent of, and which animals hatched from a clutch. */
export class Descendants {
  readonly #pedigree: Pedigree;
  readonly #positionOf: Int32Array;
  readonly #clutchStart: Int32Array;
  readonly #clutches: Int32Array;
  readonly #youngStart: Int32Array;
  readonly #young: Int32Array;

  /** @param positionOf place of each clutch in an order that has parents first */
  constructor(pedigree: Pedigree, positionOf: Int32Array) {
    this.#pedigree = pedigree;
    this.#positionOf = positionOf;
    const { clutchOf, pairStart, pairSire, pairDam } = pedigree;
    const clutches = pairStart.length - 1;
    [this.#youngStart, this.#young] = byKey(clutches, (tell) =>
      clutchOf.forEach((clutch, animal) => clutch >= 0 && tell(clutch, animal)),
    );
    [this.#clutchStart, this.#clutches] = byKey(clutchOf.length, (tell) => {
      for (let clutch = 0; clutch < clutches; clutch++)
        for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
          for (const parent of [pairSire[pair] ?? -1, pairDam[pair] ?? -1]) if (parent >= 0) tell(parent, clutch);
    });
  }

  /**
   * Meets some founders and all that may descend from them, each once, in no order that means anything, the youngest branches early.
   *
   * @param meet told of each animal; false ends it
   * @returns the clutches on the way; null where `meet` ended it
   */
  walk(founders: readonly number[], meet: (animal: number) => boolean): Int32Array | null {
    const found = new Set<number>();
    const waiting = [...founders];
    for (let animal = waiting.pop(); animal !== undefined; animal = waiting.pop()) {
      if (!meet(animal)) return null;
      for (let place = this.#clutchStart[animal] ?? 0; place < (this.#clutchStart[animal + 1] ?? 0); place++) {
        const clutch = this.#clutches[place] ?? -1;
        if (found.has(clutch)) continue;
        found.add(clutch);
        waiting.push(...this.youngOf(clutch));
      }
    }
    return Int32Array.from(found).sort((one, other) => this.#at(one) - this.#at(other));
  }

  /** The animals that hatched from a clutch. */
  youngOf(clutch: number): Int32Array {
    return this.#young.subarray(this.#youngStart[clutch] ?? 0, this.#youngStart[clutch + 1] ?? 0);
  }

  /**
   * How much of the genome of each descendant comes from some founders: half from each parent, over the candidates as they are likely, and
   * as it is at least, which lets each clutch have the candidate pair that gives least.
   *
   * @param clutches all between the founders and those asked about, as `walk` gives them
   * @param animals founders or descendants
   */
  shares(founders: readonly number[], clutches: Int32Array, animals: readonly number[]): Carrier[] {
    const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    const own = new Set(founders);
    const expected = new Map<number, number>();
    const least = new Map<number, number>();
    const of = (shares: ReadonlyMap<number, number>, animal: number): number =>
      own.has(animal) ? 1 : (shares.get(animal < 0 ? -1 : (clutchOf[animal] ?? -1)) ?? 0);
    for (const clutch of clutches) {
      let sum = 0;
      let lowest = 1;
      for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
        const [sire, dam] = [pairSire[pair] ?? -1, pairDam[pair] ?? -1];
        sum += 0.5 * (pairProbability[pair] ?? 0) * (of(expected, sire) + of(expected, dam));
        lowest = Math.min(lowest, 0.5 * (of(least, sire) + of(least, dam)));
      }
      expected.set(clutch, sum);
      least.set(clutch, Math.min(lowest, sum)); // rounding must not lift the least above the expected
    }
    return animals.map((animal) => ({ animal, expected: of(expected, animal), least: of(least, animal) }));
  }

  #at(clutch: number): number {
    return this.#positionOf[clutch] ?? 0;
  }
}

/** Lists of values by dense keys: entries start[k] .. start[k+1]−1 belong to k. */
function byKey(
  keys: number,
  each: (tell: (key: number, value: number) => void) => void,
): [start: Int32Array, values: Int32Array] {
  const start = new Int32Array(keys + 1);
  each((key) => (start[key + 1] = (start[key + 1] ?? 0) + 1));
  for (let key = 0; key < keys; key++) start[key + 1] = (start[key + 1] ?? 0) + (start[key] ?? 0);
  const values = new Int32Array(start[keys] ?? 0);
  const next = start.slice(0, keys);
  each((key, value) => {
    const at = next[key] ?? 0;
    values[at] = value;
    next[key] = at + 1;
  });
  return [start, values];
}
