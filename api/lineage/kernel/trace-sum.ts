import type { Pedigree } from './pedigree.ts';
import {
  COEFFICIENT,
  FIRST,
  LINKED,
  MENDELIAN,
  PARENT_A,
  PARENT_B,
  RECORDED_SOURCE,
  RESIDUAL,
  WITHIN,
  type TraceNodes,
} from './trace-nodes.ts';

/**
 * One sum Σ x_k u_k over nodes at a time, and its variance, found by passing coefficients from young to parents.
 *
 * Which nodes wait for their visit is kept as bits, with one bit above for each word that may not be empty. Nodes are
 * visited from the greatest down and their parents are smaller, so the next one is found in a few operations, where a heap
 * costs log n and a sorted list more.
 */
export class TraceSum {
  readonly #pedigree: Pedigree;
  readonly #nodes: TraceNodes;
  readonly #bits: Int32Array;
  readonly #words: Int32Array;
  #waiting = 0;
  #greatest = -1;
  /** Sources with recorded kinship that the sum has reached, and their coefficients. */
  readonly #sources: number[] = [];
  readonly #sourceCoefficient: Float64Array;

  constructor(pedigree: Pedigree, nodes: TraceNodes) {
    this.#pedigree = pedigree;
    this.#nodes = nodes;
    this.#sourceCoefficient = new Float64Array(pedigree.baseKinship.length);
    this.#bits = new Int32Array((nodes.room >> 5) + 1);
    this.#words = new Int32Array((nodes.room >> 10) + 1);
  }

  /** Adds to the coefficient of a node and lets it wait for its visit. A node waits while its bit is set. */
  add(node: number, coefficient: number): void {
    const parts = this.#nodes.parts;
    parts[2 * node + COEFFICIENT] = (parts[2 * node + COEFFICIENT] as number) + coefficient;
    const word = node >> 5;
    const before = this.#bits[word] as number;
    this.#bits[word] = before | (1 << node);
    this.#words[node >> 10] = (this.#words[node >> 10] as number) | (1 << word);
    this.#waiting += (~before >>> node) & 1;
    if (node > this.#greatest) this.#greatest = node;
  }

  /**
   * The variance of Σ x_k u_k over the nodes added since the last call, which leaves an empty sum.
   *
   * This is the innermost loop of the kernel, kept as one: calls of `add` took half of its time, and so did branches that
   * no processor can foresee. Therefore `add` is written out for the two certain parents, a bit that may be set already
   * is counted by arithmetic, and nodes without anything above them are left to the end.
   */
  takeVariance(): number {
    const { places, parts, shared, pivot } = this.#nodes;
    const bits = this.#bits;
    const words = this.#words;
    let variance = 0;
    let word = this.#greatest >> 5;
    let waiting = this.#waiting;
    while (waiting > 0) {
      if (bits[word] === 0) word = this.#wordBelow(word);
      if (word < pivot >> 5) break;
      const here = bits[word] as number;
      const node = (word << 5) | (31 - Math.clz32(here));
      bits[word] = here ^ (1 << node);
      waiting--;
      const at = 4 * node;
      let coefficient = parts[2 * node + COEFFICIENT] as number;
      parts[2 * node + COEFFICIENT] = 0;
      let squares = coefficient * coefficient;
      const first = places[at + FIRST] as number;
      for (let mate = node - 1; mate >= first; mate--) {
        const other = parts[2 * mate + COEFFICIENT] as number;
        if (other === 0) continue; // also a coefficient that has run down to 0, over a thousand generations: no effect
        parts[2 * mate + COEFFICIENT] = 0;
        bits[mate >> 5] = (bits[mate >> 5] as number) & ~(1 << mate);
        waiting--;
        squares += other * other;
        coefficient += other;
      }
      variance += squares * (parts[2 * node + MENDELIAN] as number);
      if (waiting === 0 && this.#sources.length === 0) {
        variance += coefficient * coefficient * (shared[2 * node + WITHIN] as number); // all that is left passes through here
        break;
      }
      const a = places[at + PARENT_A] as number;
      const b = places[at + PARENT_B] as number;
      if ((a | b) < 0) {
        variance += coefficient * coefficient * (shared[2 * node + RESIDUAL] as number);
        this.#waiting = waiting;
        if (a <= LINKED) this.#addLinked(a, b, coefficient);
        else if (a >= 0) this.add(a, 0.5 * coefficient);
        else if (b >= 0) this.add(b, 0.5 * coefficient);
        waiting = this.#waiting;
        continue;
      }
      parts[2 * a + COEFFICIENT] = (parts[2 * a + COEFFICIENT] as number) + 0.5 * coefficient;
      const beforeA = bits[a >> 5] as number;
      bits[a >> 5] = beforeA | (1 << a);
      words[a >> 10] = (words[a >> 10] as number) | (1 << (a >> 5));
      parts[2 * b + COEFFICIENT] = (parts[2 * b + COEFFICIENT] as number) + 0.5 * coefficient;
      const beforeB = bits[b >> 5] as number;
      bits[b >> 5] = beforeB | (1 << b);
      words[b >> 10] = (words[b >> 10] as number) | (1 << (b >> 5));
      waiting += ((~beforeA >>> a) & 1) + ((~beforeB >>> b) & 1);
    }
    if (waiting > 0) variance += this.#takeTops(word, waiting);
    this.#waiting = 0;
    this.#greatest = -1;
    return variance + this.#sourcesVariance();
  }

  /** The part of the waiting nodes without anything above them, the only ones left; the greatest is in a given word. */
  #takeTops(greatest: number, count: number): number {
    const parts = this.#nodes.parts;
    const bits = this.#bits;
    let variance = 0;
    let word = greatest;
    for (let waiting = count; waiting > 0; waiting--) {
      if (bits[word] === 0) word = this.#wordBelow(word);
      const here = bits[word] as number;
      const node = (word << 5) | (31 - Math.clz32(here));
      bits[word] = here ^ (1 << node);
      const coefficient = parts[2 * node + COEFFICIENT] as number;
      parts[2 * node + COEFFICIENT] = 0;
      variance += coefficient * coefficient * (parts[2 * node + MENDELIAN] as number);
    }
    return variance;
  }

  /** The greatest word below one that has become empty, with something waiting in it. There is one. */
  #wordBelow(empty: number): number {
    const bits = this.#bits;
    const words = this.#words;
    let word = empty;
    do {
      let group = word >> 5;
      words[group] = (words[group] as number) & ~(1 << word);
      while (words[group] === 0) group--;
      word = (group << 5) | (31 - Math.clz32(words[group] as number));
    } while (bits[word] === 0);
    return word;
  }

  #addLinked(kind: number, group: number, coefficient: number): void {
    if (kind === RECORDED_SOURCE) {
      this.#sources.push(group);
      this.#sourceCoefficient[group] = coefficient;
      return;
    }
    const { linkStart, linkNode, linkWeight } = this.#nodes;
    const end = linkStart[group + 1] as number;
    for (let link = linkStart[group] as number; link < end; link++)
      this.add(linkNode[link] as number, coefficient * (linkWeight[link] as number));
  }

  /** The part of kinships recorded between two sources. */
  #sourcesVariance(): number {
    if (this.#sources.length === 0) return 0;
    const coefficients = this.#sourceCoefficient;
    let variance = 0;
    for (const { a, b, kinship } of this.#pedigree.sourceKinships ?? [])
      variance += 2 * kinship * (coefficients[a] as number) * (coefficients[b] as number);
    for (const source of this.#sources) coefficients[source] = 0;
    this.#sources.length = 0;
    return variance;
  }
}
