import type { Ancestry } from './ancestry.ts';
import type { AncestorContribution } from './effective-ancestors.ts';
import { genePool, unknownWeights } from './gene-pool.ts';
import { LargestFirst } from './largest-first.ts';
import type { Pedigree } from './pedigree.ts';
import { PositionSet } from './position-set.ts';

/**
 * The state between two picks of ancestors: what still comes down through each animal, and what the picked ones explain of it.
 * Nodes are the animals of the ancestry and, after them, the first and the second parent of each clutch that nobody knows.
 */
export class AncestorPicking {
  /** Links followed so far. */
  work = 0;
  readonly #ancestry: Ancestry;
  /** Node: part of the pool that comes through it past the picked ones below it. */
  readonly #through: Float64Array;
  /** Clutch: part of its young's genes that picked ancestors explain, 0 to 1. */
  readonly #explained: Float64Array;
  readonly #isPicked: Uint8Array;
  readonly #clutchOf: Int32Array;
  /** The clutches that an animal is a candidate of: entries start[i] .. start[i+1]−1. */
  readonly #start: Int32Array;
  readonly #bred: Int32Array;
  readonly #weights: Float64Array;
  readonly #unknown: Float64Array;
  readonly #waiting: PositionSet;
  /** Clutch: what a pick changes in it, while that is on its way. */
  readonly #change: Float64Array;
  readonly #isWaiting: Uint8Array;
  readonly #order: LargestFirst;

  constructor(pedigree: Pedigree, ancestry: Ancestry, members: Int32Array) {
    this.#ancestry = ancestry;
    const { animals, clutches, youngStart } = ancestry;
    const nodes = animals.length + 2 * clutches.length;
    const pool = genePool(pedigree, ancestry, members);
    this.#through = new Float64Array(nodes);
    this.#through.set(pool.through);
    this.#unknown = new Float64Array(2 * clutches.length);
    clutches.forEach((clutch, local) => {
      const { first, second } = unknownWeights(pedigree, clutch);
      this.#unknown.set([first, second], 2 * local);
      const whole = pool.ofClutch[local] as number;
      this.#through.set([first * whole, second * whole], animals.length + 2 * local);
    });
    this.#clutchOf = new Int32Array(animals.length).fill(-1);
    for (let clutch = 0; clutch < clutches.length; clutch++)
      this.#clutchOf.fill(clutch, youngStart[clutch], youngStart[clutch + 1]);
    this.#explained = new Float64Array(clutches.length);
    this.#change = new Float64Array(clutches.length);
    this.#isWaiting = new Uint8Array(clutches.length);
    this.#isPicked = new Uint8Array(nodes);
    this.#waiting = new PositionSet(clutches.length);
    [this.#start, this.#bred, this.#weights] = breedingOf(ancestry);
    const candidates = candidatesOf(ancestry, members).filter((node) => (this.#through[node] as number) > 0);
    this.#order = new LargestFirst(candidates, (node) => this.#marginal(node));
  }

  /** Picks the ancestor that adds most; null where nobody is left. */
  pick(): AncestorContribution | null {
    const node = this.#order.take();
    if (node === null) return null;
    const share = this.#marginal(node);
    const { animals, clutches } = this.#ancestry;
    this.#isPicked[node] = 1;
    if (node < animals.length) {
      const clutch = this.#clutchOf[node] as number;
      this.#explain(node, clutch < 0 ? 1 : 1 - (this.#explained[clutch] as number));
      if (clutch >= 0) this.#cut(clutch, this.#through[node] as number);
      return { kind: 'individual', individual: animals[node] as number, share };
    }
    const clutch = (node - animals.length) >> 1;
    this.#note(clutch, clutches.length - 1 - clutch, this.#unknown[node - animals.length] as number);
    this.#passExplanation();
    return { kind: 'unknown parent', clutch: clutches[clutch] as number, share };
  }

  #marginal(node: number): number {
    const through = this.#through[node] as number;
    const clutch = node < this.#clutchOf.length ? (this.#clutchOf[node] as number) : -1;
    return clutch < 0 ? through : through * (1 - (this.#explained[clutch] as number));
  }

  /** A picked animal passes nothing on to its parents any more: so much less comes through them. */
  #cut(clutch: number, through: number): void {
    const { parentStart, parents, weights, animals } = this.#ancestry;
    this.#note(clutch, clutch, through);
    while (this.#waiting.size > 0) {
      const at = this.#waiting.takeGreatest();
      const less = this.#settle(at);
      for (let link = parentStart[at] as number; link < (parentStart[at + 1] as number); link++) {
        const parent = parents[link] as number;
        const part = (weights[link] as number) * less;
        this.#through[parent] = (this.#through[parent] as number) - part;
        const above = this.#clutchOf[parent] as number;
        if (above >= 0 && this.#isPicked[parent] === 0) this.#note(above, above, part);
        this.work++;
      }
      for (const side of [0, 1]) {
        const node = animals.length + 2 * at + side;
        this.#through[node] = (this.#through[node] as number) - (this.#unknown[2 * at + side] as number) * less;
      }
    }
  }

  /** What a picked animal explains of itself it explains by half of its young, and so on down. */
  #explain(node: number, part: number): void {
    const last = this.#ancestry.clutches.length - 1;
    for (let entry = this.#start[node] as number; entry < (this.#start[node + 1] as number); entry++) {
      const clutch = this.#bred[entry] as number;
      this.#note(clutch, last - clutch, (this.#weights[entry] as number) * part);
    }
    this.#passExplanation();
  }

  #passExplanation(): void {
    const { youngStart, clutches } = this.#ancestry;
    const last = clutches.length - 1;
    while (this.#waiting.size > 0) {
      const at = last - this.#waiting.takeGreatest();
      const part = this.#settle(at);
      this.#explained[at] = Math.min(1, (this.#explained[at] as number) + part);
      for (let young = youngStart[at] as number; young < (youngStart[at + 1] as number); young++) {
        this.work++;
        if (this.#isPicked[young] === 1) continue;
        for (let entry = this.#start[young] as number; entry < (this.#start[young + 1] as number); entry++) {
          const clutch = this.#bred[entry] as number;
          this.#note(clutch, last - clutch, (this.#weights[entry] as number) * part);
          this.work++;
        }
      }
    }
  }

  #note(clutch: number, position: number, change: number): void {
    if (change === 0) return;
    this.#change[clutch] = (this.#change[clutch] as number) + change;
    if (this.#isWaiting[clutch] === 1) return;
    this.#isWaiting[clutch] = 1;
    this.#waiting.add(position);
  }

  #settle(clutch: number): number {
    const change = this.#change[clutch] as number;
    this.#change[clutch] = 0;
    this.#isWaiting[clutch] = 0;
    return change;
  }
}

/** Who may be picked: founders in the order of the register, then all that are no members, then parents that nobody knows. */
function candidatesOf(ancestry: Ancestry, members: Int32Array): number[] {
  const { animals, founders, clutches } = ancestry;
  const isMember = new Uint8Array(animals.length);
  for (const member of members) isMember[ancestry.find(member)] = 1;
  const nodes = Array.from({ length: animals.length + 2 * clutches.length }, (_, node) => node);
  const first = nodes.slice(0, founders).sort((a, b) => (animals[a] as number) - (animals[b] as number));
  return [...first, ...nodes.slice(founders).filter((node) => isMember[node] !== 1)];
}

/** The links of an ancestry from parents to clutches: where each animal's begin, the clutches, the weights. */
function breedingOf({
  animals,
  clutches,
  parentStart,
  parents,
  weights,
}: Ancestry): [Int32Array, Int32Array, Float64Array] {
  const start = new Int32Array(animals.length + 1);
  for (const parent of parents) start[parent] = (start[parent] as number) + 1;
  for (let animal = 0, sum = 0; animal <= animals.length; animal++) {
    sum += start[animal] as number;
    start[animal] = sum; // the end of the group for now; filling counts it down to its start
  }
  const bred = new Int32Array(parents.length);
  const sorted = new Float64Array(parents.length);
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--)
    for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
      const parent = parents[link] as number;
      const place = (start[parent] as number) - 1;
      start[parent] = place;
      bred[place] = clutch;
      sorted[place] = weights[link] as number;
    }
  return [start, bred, sorted];
}
