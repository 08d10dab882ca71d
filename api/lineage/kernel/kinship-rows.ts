/**
 * A dense symmetric matrix of kinships whose rows come and go. Each row belongs to a slot; a slot given back is used
 * again, lowest first, so that the rows in use stay together at the beginning. Slots not in use hold numbers of no meaning.
 */
export class KinshipRows {
  #cells = new Float64Array(0);
  #blended = new Float64Array(0);
  #stride = 0;
  /** All slots in use lie below this one. */
  #high = 0;
  #used = new Uint8Array(0);
  #lowestFree = 0;

  /** Forgets all rows and makes room for `width` rows at once. Memory is kept for the next component. */
  clear(width: number): void {
    // An odd number of cache lines a row spreads a column over all sets of the processor's cache.
    const lines = (width + 7) >> 3;
    this.#stride = 8 * (lines | 1);
    const cells = width * this.#stride;
    if (this.#cells.length < cells) this.#cells = new Float64Array(cells);
    if (this.#blended.length < width) {
      this.#blended = new Float64Array(width);
      this.#used = new Uint8Array(width + 1);
    } else this.#used.fill(0);
    this.#high = this.#lowestFree = 0;
  }

  /** Kinship of two slots in use. */
  at(row: number, column: number): number {
    return this.#cells[row * this.#stride + column] as number;
  }

  /** Makes the blend 0 everywhere. */
  blendNothing(): void {
    this.#blended.fill(0, 0, this.#high);
  }

  /** Adds weight times the row of a slot to the blend. */
  blend(slot: number, weight: number): void {
    const cells = this.#cells;
    const blended = this.#blended;
    const high = this.#high;
    const from = slot * this.#stride;
    for (let column = 0; column < high; column++)
      blended[column] = (blended[column] as number) + weight * (cells[from + column] as number);
  }

  /** Makes the blend half of one row and half of another. */
  blendTwo(first: number, second: number): void {
    const cells = this.#cells;
    const blended = this.#blended;
    const high = this.#high;
    const a = first * this.#stride;
    const b = second * this.#stride;
    for (let column = 0; column < high; column++)
      blended[column] = 0.5 * ((cells[a + column] as number) + (cells[b + column] as number));
  }

  /** Sets one place of the blend. */
  setBlend(slot: number, kinship: number): void {
    this.#blended[slot] = kinship;
  }

  /**
   * Gives the blend a slot of its own, as row and as column.
   *
   * @param self kinship of the new animal with itself
   * @param within its kinship with whoever enters next under the same blend
   */
  enter(self: number, within: number): number {
    const slot = this.#take();
    const cells = this.#cells;
    const blended = this.#blended;
    const stride = this.#stride;
    const high = this.#high;
    const base = slot * stride;
    for (let column = 0, across = slot; column < high; column++, across += stride) {
      const kinship = blended[column] as number;
      cells[base + column] = kinship;
      cells[across] = kinship;
    }
    cells[base + slot] = self;
    blended[slot] = within;
    return slot;
  }

  /** Gives a slot back. */
  release(slot: number): void {
    const used = this.#used;
    used[slot] = 0;
    if (slot < this.#lowestFree) this.#lowestFree = slot;
    while (this.#high > 0 && used[this.#high - 1] === 0) this.#high--;
  }

  #take(): number {
    const used = this.#used;
    let slot = this.#lowestFree;
    while (used[slot] === 1) slot++;
    used[slot] = 1;
    this.#lowestFree = slot + 1;
    if (slot >= this.#high) this.#high = slot + 1;
    return slot;
  }
}
