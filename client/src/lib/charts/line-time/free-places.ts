/** A box that stands already. */
interface Placed {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Finds free room for boxes whose height is given, as near as can be to where they would like to stand. */
export class FreePlaces {
  readonly #bin: number;
  readonly #bins = new Map<number, Placed[]>();

  /** @param bin height in which boxes are looked up, about that of a box */
  constructor(bin: number) {
    this.#bin = bin;
  }

  /**
   * Takes the free room nearest to a wish, the left one of two equally near; gives its middle.
   *
   * @param width with the free space that belongs to the box
   */
  take(wish: number, width: number, top: number, bottom: number): number {
    const near = this.#between(top, bottom).sort((one, other) => one.left - other.left);
    const half = width / 2;
    let best = Infinity;
    let edge = -Infinity;
    const tryGap = (from: number, to: number): void => {
      if (to - from < width) return;
      const middle = Math.min(Math.max(wish, from + half), to - half);
      if (Math.abs(middle - wish) < Math.abs(best - wish)) best = middle;
    };
    for (const { left, right } of near) {
      tryGap(edge, left);
      edge = Math.max(edge, right);
    }
    tryGap(edge, Infinity);
    this.#add({ left: best - half, right: best + half, top, bottom });
    return best;
  }

  #between(top: number, bottom: number): Placed[] {
    const found = new Set<Placed>();
    for (let bin = Math.floor(top / this.#bin); bin <= Math.floor(bottom / this.#bin); bin++)
      for (const box of this.#bins.get(bin) ?? []) if (box.top < bottom && box.bottom > top) found.add(box);
    return [...found];
  }

  #add(box: Placed): void {
    for (let bin = Math.floor(box.top / this.#bin); bin <= Math.floor(box.bottom / this.#bin); bin++) {
      const held = this.#bins.get(bin) ?? [];
      held.push(box);
      this.#bins.set(bin, held);
    }
  }
}
