import { parentsFirst, type ParentLink, type PedigreeGraph } from './pedigree-graph.ts';

/** Two animals that may be the parents of a clutch together, by number. */
interface Couple {
  a: number;
  b: number;
  probability: number;
}

interface Person {
  clutch: string | null;
  /** Greater than the rank of every possible parent, the same for all young of a clutch. */
  rank: number;
}

/**
 * How much each common ancestor adds to the F of an animal. The two parents' gene copies are traced upwards, always the
 * younger one first; they add through A when the first animal that both reach is A. That is Wright's sum over paths
 * (1922, The American Naturalist 56:330-338) without listing the paths; two young of one clutch are traced together, so
 * that they have the same parents, whichever these are.
 */
export class LoopParts {
  readonly #graph: PedigreeGraph;
  readonly #ids: string[] = [];
  readonly #numbers = new Map<string, number>();
  readonly #people: Person[] = [];
  readonly #links = new Map<string, { parent: number; probability: number }[]>();
  readonly #couples = new Map<string, Couple[]>();

  constructor(graph: PedigreeGraph) {
    this.#graph = graph;
    const order = parentsFirst(graph);
    order.forEach((id, number) => this.#numbers.set(id, number));
    for (const id of order) {
      const clutch = graph.birthClutch.get(id) ?? null;
      const parents = clutch === null ? [] : this.#readClutch(clutch);
      const rank = 1 + Math.max(-1, ...parents.map((parent) => this.#people[parent]?.rank ?? 0));
      this.#ids.push(id);
      this.#people.push({ clutch, rank });
    }
  }

  #readClutch(clutch: string): number[] {
    const links = this.#graph.parentsOf.get(clutch) ?? [];
    const number = (id: string) => this.#numbers.get(id) ?? -1;
    this.#links.set(
      clutch,
      links.map((link) => ({ parent: number(link.parent), probability: link.probability })),
    );
    const couples = couplesOf(this.#graph, clutch, links).map(([a, b, probability]) => ({
      a: number(a),
      b: number(b),
      probability,
    }));
    this.#couples.set(
      clutch,
      couples.filter((couple) => couple.a >= 0 && couple.b >= 0),
    );
    return links.map((link) => number(link.parent));
  }

  /**
   * What an ancestor adds to the expected F of the root (0 to 1), and whether it closes any loop among its descendants
   * `below` (ids, the ancestor and the root included).
   */
  of(ancestor: string, below: ReadonlySet<string>): { part: number; closesAny: boolean } {
    const people = [...below].map((id) => this.#numbers.get(id) ?? -1).filter((number) => number >= 0);
    people.sort((a, b) => (this.#people[a]?.rank ?? 0) - (this.#people[b]?.rank ?? 0) || a - b);
    const table = this.#trace(this.#numbers.get(ancestor) ?? -1, people);
    const factor = (1 + (this.#graph.individuals.get(ancestor)?.inbreeding ?? 0)) / 2;
    const root = this.#numbers.get(this.#graph.root) ?? -1;
    const meeting = (person: number) => {
      const couples = this.#couples.get(this.#people[person]?.clutch ?? '') ?? [];
      return couples.reduce((sum, { a, b, probability }) => sum + probability * table(a, b), 0);
    };
    return { part: meeting(root) * factor, closesAny: people.some((person) => meeting(person) > 0) };
  }

  /** For each two animals, the probability that gene copies traced up from them meet first in the ancestor. */
  #trace(ancestor: number, people: number[]): (a: number, b: number) => number {
    const place = new Int32Array(this.#ids.length).fill(-1);
    people.forEach((person, at) => (place[person] = at));
    const size = people.length;
    const values = new Float64Array(size * size);
    const read = (a: number, b: number) => {
      const [i, j] = [place[a] ?? -1, place[b] ?? -1];
      if (i < 0 || j < 0) return 0;
      return values[Math.max(i, j) * size + Math.min(i, j)] ?? 0;
    };
    for (let i = 0; i < size; i++)
      for (let j = 0; j <= i; j++) values[i * size + j] = this.#meet(ancestor, people[i] ?? -1, people[j] ?? -1, read);
    return read;
  }

  /** `younger` has at least the rank of `other`; what is read has been computed before. */
  #meet(ancestor: number, younger: number, other: number, read: (a: number, b: number) => number): number {
    if (younger === other) return younger === ancestor ? 1 : 0;
    const clutch = younger === ancestor ? null : (this.#people[younger]?.clutch ?? null);
    if (clutch === null) return 0;
    const links = this.#links.get(clutch) ?? [];
    let sum = 0;
    if (this.#people[other]?.clutch !== clutch) {
      for (const { parent, probability } of links) sum += probability * read(parent, other);
      return sum / 2;
    }
    for (const { parent, probability } of links) if (parent === ancestor) sum += probability / 4;
    for (const { a, b, probability } of this.#couples.get(clutch) ?? []) sum += (probability * read(a, b)) / 2;
    return sum;
  }
}

/** The couples that may be the parents of a clutch, with probabilities. */
function couplesOf(graph: PedigreeGraph, clutch: string, links: readonly ParentLink[]): [string, string, number][] {
  const pairs = graph.clutches.get(clutch)?.pairs;
  if (pairs && pairs.length > 0) return pairs.map(({ a, b, probability }) => [a, b, probability]);
  return links.flatMap((one, at) =>
    links
      .slice(at + 1)
      .filter((other) => one.role !== other.role || one.role === 'either')
      .map((other): [string, string, number] => [one.parent, other.parent, one.probability * other.probability]),
  );
}
