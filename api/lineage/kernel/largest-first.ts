/**
 * Nodes by a value that only ever shrinks, the largest first, among equals the one listed first. A binary heap over
 * values as they were: one that has shrunk since is put back when its turn comes, so that nobody tells the heap of changes.
 */
export class LargestFirst {
  readonly #listed: readonly number[];
  /** Places in the list. */
  readonly #nodes: Int32Array;
  readonly #ranks: Float64Array;
  readonly #value: (node: number) => number;
  #size: number;

  /** @param value from 0 to 1; differences below 2⁻⁴⁰ are rounding */
  constructor(nodes: readonly number[], value: (node: number) => number) {
    this.#listed = nodes;
    this.#nodes = Int32Array.from(nodes.keys());
    this.#value = value;
    this.#ranks = Float64Array.from(nodes.keys(), (place) => this.#rank(place));
    this.#size = nodes.length;
    for (let place = (this.#size >> 1) - 1; place >= 0; place--) this.#sink(place);
  }

  /** Takes out the node whose value is largest now; null where no value above 0 is left. */
  take(): number | null {
    while (this.#size > 0) {
      const node = this.#nodes[0] as number;
      const rank = this.#rank(node);
      const isStill = rank === this.#ranks[0];
      if (isStill || rank === 0) {
        this.#size--;
        this.#nodes[0] = this.#nodes[this.#size] as number;
        this.#ranks[0] = this.#ranks[this.#size] as number;
        if (isStill && rank > 0) {
          this.#sink(0);
          return this.#listed[node] as number;
        }
      } else this.#ranks[0] = rank;
      this.#sink(0);
    }
    return null;
  }

  #rank(listed: number): number {
    return Math.max(0, Math.round(this.#value(this.#listed[listed] as number) * 2 ** 40));
  }

  #sink(from: number): void {
    const nodes = this.#nodes;
    const ranks = this.#ranks;
    const node = nodes[from] as number;
    const rank = ranks[from] as number;
    let place = from;
    for (let child = 2 * place + 1; child < this.#size; child = 2 * place + 1) {
      if (child + 1 < this.#size && this.#isBefore(child + 1, ranks[child] as number, nodes[child] as number)) child++;
      if (!this.#isBefore(child, rank, node)) break;
      nodes[place] = nodes[child] as number;
      ranks[place] = ranks[child] as number;
      place = child;
    }
    if (place !== from || from === 0) {
      nodes[place] = node;
      ranks[place] = rank;
    }
  }

  #isBefore(place: number, rank: number, node: number): boolean {
    const other = this.#ranks[place] as number;
    return other > rank || (other === rank && (this.#nodes[place] as number) < node);
  }
}
