import type { LineLayout } from './line-layout.ts';

/** Which kin of a picked animal are lit. */
export const litWays = ['both', 'ancestors', 'young'] as const;
export type LitWay = (typeof litWays)[number];

/** Marks of lit animals. */
export const ANCESTOR = 1;
export const DESCENDANT = 2;
export const PICKED = 3;

/** The animals that are lit around a picked one. */
export interface Lit {
  readonly animal: number;
  /** By place in the answer: 0, or a mark. */
  readonly marks: Uint8Array;
  readonly ancestors: number;
  readonly descendants: number;
}

/** A possible parent. */
export interface PossibleParent {
  readonly animal: number;
  readonly probability: number;
}

/** Who descends from whom in a line, by places in the answer. */
export class LineKin {
  readonly #layout: LineLayout;
  /** Links are sorted by family: those of family f lie from here to the next. */
  readonly #linkStart: Int32Array;
  /** Families below each animal, in one list. */
  readonly #belowStart: Int32Array;
  readonly #below: Int32Array;

  constructor(layout: LineLayout) {
    this.#layout = layout;
    const { animal, family } = layout.links;
    this.#linkStart = startsOf(family, layout.families.id.length);
    this.#belowStart = startsOf(animal, layout.animals.x.length);
    this.#below = new Int32Array(animal.length);
    const next = this.#belowStart.slice();
    animal.forEach((parent, link) => {
      const place = next[parent] ?? 0;
      this.#below[place] = family[link] ?? 0;
      next[parent] = place + 1;
    });
  }

  /** The possible parents of an animal, the likeliest first. */
  parentsOf(animal: number): PossibleParent[] {
    const family = this.#layout.animals.family[animal] ?? -1;
    const { links } = this.#layout;
    const parents: PossibleParent[] = [];
    for (let link = this.#linkStart[family] ?? 0; link < (this.#linkStart[family + 1] ?? 0); link++)
      parents.push({ animal: links.animal[link] ?? -1, probability: links.probability[link] ?? 0 });
    return parents.sort((one, other) => other.probability - one.probability);
  }

  /** The families of an animal's young, the eldest first. */
  familiesBelow(animal: number): number[] {
    const { y } = this.#layout.families;
    const families = [...this.#below.subarray(this.#belowStart[animal], this.#belowStart[animal + 1])];
    return families.sort((one, other) => (y[one] ?? 0) - (y[other] ?? 0) || one - other);
  }

  /** The animals of a family, in the order in which they are drawn. */
  membersOf(family: number): Int32Array {
    const { start, animals } = this.#layout.families;
    return animals.subarray(start[family], start[family + 1]);
  }

  /** Lights the ancestors of an animal, its descendants, or both. */
  litAround(animal: number, way: LitWay): Lit {
    const marks = new Uint8Array(this.#layout.animals.x.length);
    marks[animal] = PICKED;
    const ancestors = way === 'young' ? 0 : this.#mark(marks, animal, ANCESTOR, (one) => this.#parents(one));
    const descendants = way === 'ancestors' ? 0 : this.#mark(marks, animal, DESCENDANT, (one) => this.#young(one));
    return { animal, marks, ancestors, descendants };
  }

  /** Whether a link leads from one lit animal to another. */
  isLitLink(link: number, { marks }: Lit): boolean {
    const { links } = this.#layout;
    const above = marks[links.animal[link] ?? -1] ?? 0;
    if (above === 0) return false;
    const members = this.membersOf(links.family[link] ?? -1);
    return above === ANCESTOR
      ? members.some((one) => marks[one] === ANCESTOR || marks[one] === PICKED)
      : members.some((one) => marks[one] === DESCENDANT);
  }

  #mark(marks: Uint8Array, from: number, mark: number, next: (animal: number) => Iterable<number>): number {
    const waiting = [from];
    let found = 0;
    for (let animal = waiting.pop(); animal !== undefined; animal = waiting.pop())
      for (const other of next(animal)) {
        if (marks[other] !== 0) continue;
        marks[other] = mark;
        found++;
        waiting.push(other);
      }
    return found;
  }

  #parents(animal: number): Int32Array {
    const family = this.#layout.animals.family[animal] ?? -1;
    return this.#layout.links.animal.subarray(this.#linkStart[family], this.#linkStart[family + 1]);
  }

  *#young(animal: number): Generator<number> {
    for (let at = this.#belowStart[animal] ?? 0; at < (this.#belowStart[animal + 1] ?? 0); at++)
      yield* this.membersOf(this.#below[at] ?? -1);
  }
}

/** Where the entries of each owner begin, were they sorted by owner. */
function startsOf(owners: Int32Array, count: number): Int32Array {
  const starts = new Int32Array(count + 1);
  for (const owner of owners) starts[owner + 1] = (starts[owner + 1] ?? 0) + 1;
  for (let at = 0; at < count; at++) starts[at + 1] = (starts[at + 1] ?? 0) + (starts[at] ?? 0);
  return starts;
}
