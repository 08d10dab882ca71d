/**
 * A dense symmetric matrix of kinships whose rows come and go. Each row belongs to a slot; a slot given back is used
 * again, lowest first, so that the rows in use stay together at the beginning. Slots not in use hold numbers of no meaning.
 *
 * Beyond the slots there may be columns that stay: of animals whose kinships with everybody who comes later are wanted, but
 * which need no row, having no further young.
 */
export class KinshipRows {
  #cells = new Float64Array(0);
  #blended = new Float64Array(0);
  #stride = 0;
  /** All slots in use lie below this one. */
  #high = 0;
  #used = new Uint8Array(0);
  #lowestFree = 0;
  /** Where the columns that stay begin, and where the next one will stand. */
  #stayStart = 0;
  #stayEnd = 0;

  /** Forgets all rows and makes room for `width` rows at once and `staying` columns. Memory is kept for the next component. */
  clear(width: number, staying = 0): void {
    // An odd number of cache lines a row spreads a column over all sets of the processor's cache.
    const lines = (width + staying + 7) >> 3;
    this.#stride = 8 * (lines | 1);
    const cells = width * this.#stride;
    if (this.#cells.length < cells) this.#cells = new Float64Array(cells);
    if (this.#blended.length < width + staying) this.#blended = new Float64Array(width + staying);
    if (this.#used.length < width + 1) this.#used = new Uint8Array(width + 1);
    else this.#used.fill(0);
    this.#high = this.#lowestFree = 0;
    this.#stayStart = this.#stayEnd = width;
  }

  /** Kinship of two slots in use. */
  at(row: number, column: number): number {
    return this.#cells[row * this.#stride + column] as number;
  }

  /** Makes the blend 0 everywhere. */
  blendNothing(): void {
    this.#blended.fill(0, 0, this.#high);
    this.#blended.fill(0, this.#stayStart, this.#stayEnd);
  }

  /** Adds weight times the row of a slot to the blend. */
  blend(slot: number, weight: number): void {
    const cells = this.#cells;
    const blended = this.#blended;
    const high = this.#high;
    const from = slot * this.#stride;
    for (let column = 0; column < high; column++)
      blended[column] = (blended[column] as number) + weight * (cells[from + column] as number);
    for (let column = this.#stayStart; column < this.#stayEnd; column++)
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
    for (let column = this.#stayStart; column < this.#stayEnd; column++)
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
    for (let column = this.#stayStart; column < this.#stayEnd; column++)
      cells[base + column] = blended[column] as number;
    cells[base + slot] = self;
    blended[slot] = within;
    return slot;
  }

  /**
   * Gives the blend a column that stays. If the same animal takes a slot too, it must do so next.
   *
   * @param self its kinship with itself
   * @param read is handed the blend and the first of the columns that stayed before this one
   */
  stay(self: number, read: (blended: Float64Array, start: number) => void): void {
    const cells = this.#cells;
    const blended = this.#blended;
    const stride = this.#stride;
    const column = this.#stayEnd++;
    read(blended, this.#stayStart);
    for (let row = 0, at = column; row < this.#high; row++, at += stride) cells[at] = blended[row] as number;
    blended[column] = self;
  }

  /** Sets the kinship of the animal that stayed last with whoever enters next under the same blend. */
  setLastStaying(within: number): void {
    this.#blended[this.#stayEnd - 1] = within;
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
