/** What a clutch leaves behind when its young are taken out of the sum. */
export interface TakenTerms {
  /** Sum of the coefficients of its young with themselves. */
  readonly self: number;
  /** Sum of the coefficients between different young of it. */
  readonly within: number;
  /** Coefficients with other animals, summed over the young, by slot; only the first `width` count. */
  readonly across: Float64Array;
  readonly width: number;
}

/**
 * A sum of kinships, Σ m_ij φ(i,j) over pairs of animals, in which animals are replaced by their parents. A dense matrix over the
 * animals that stand in it now, a pair on either side of the diagonal or part of it on both; places given back are used
 * again, so that it stays as wide as the animals that wait at one time.
 */
export class KinshipTerms {
  readonly #clutchOf: Int32Array;
  readonly #slotOf = new Map<number, number>();
  readonly #youngOf = new Map<number, number[]>();
  readonly #free: number[] = [];
  /** Slot to individual, −1 for a free one. */
  readonly #animals: number[] = [];
  #stride = 32;
  #cells = new Float64Array(32 * 32);
  #across = new Float64Array(32);

  constructor(clutchOf: Int32Array) {
    this.#clutchOf = clutchOf;
  }

  /** Adds a coefficient of φ(a,b); a and b may be the same. */
  add(a: number, b: number, coefficient: number): void {
    const row = this.#slot(a);
    const column = this.#slot(b); // may move all cells: it comes before their place is told
    const at = row * this.#stride + column;
    this.#cells[at] = (this.#cells[at] as number) + coefficient;
  }

  /** Takes the young of a clutch out; null where none of them stands in the sum. What it gives is good until the next call. */
  take(clutch: number): TakenTerms | null {
    const young = this.#youngOf.get(clutch);
    if (young === undefined) return null;
    this.#youngOf.delete(clutch);
    const rows = young.map((animal) => this.#slotOf.get(animal) as number); // they entered together
    const sums = this.#sumRows(rows);
    let self = 0;
    let within = 0;
    for (const row of rows)
      for (const column of rows) {
        const cell = this.#cells[row * this.#stride + column] as number;
        if (row === column) self += cell;
        else within += cell;
      }
    for (const row of rows) {
      this.#release(row);
      sums[row] = 0;
    }
    return { self, within, across: sums, width: this.#animals.length };
  }

  /** Puts parents in the place of young that were taken: φ(i,j) = Σ w_k φ(k,j). */
  spread({ across, width }: TakenTerms, weights: ReadonlyMap<number, number>): void {
    for (const [parent, weight] of weights) {
      const row = this.#slot(parent);
      const cells = this.#cells;
      for (let column = 0, at = row * this.#stride; column < width; column++, at++)
        cells[at] = (cells[at] as number) + weight * (across[column] as number);
    }
  }

  /** Hands over every pair that is left with its coefficient, in one part or two. */
  forEach(see: (a: number, b: number, coefficient: number) => void): void {
    for (let row = 0; row < this.#animals.length; row++)
      for (let column = 0; column < this.#animals.length; column++) {
        const cell = this.#cells[row * this.#stride + column] as number;
        if (cell !== 0) see(this.#animals[row] as number, this.#animals[column] as number, cell);
      }
  }

  #sumRows(rows: readonly number[]): Float64Array {
    const width = this.#animals.length;
    const sums = this.#across.fill(0, 0, width);
    const cells = this.#cells;
    const stride = this.#stride;
    for (const own of rows)
      for (let other = 0, along = own * stride, down = own; other < width; other++, along++, down += stride)
        sums[other] = (sums[other] as number) + (cells[along] as number) + (cells[down] as number);
    return sums;
  }

  #slot(animal: number): number {
    const known = this.#slotOf.get(animal);
    if (known !== undefined) return known;
    const slot = this.#free.pop() ?? this.#animals.length;
    this.#animals[slot] = animal;
    if (this.#animals.length > this.#stride) this.#widen();
    this.#slotOf.set(animal, slot);
    const clutch = this.#clutchOf[animal] as number;
    if (clutch >= 0) {
      const mates = this.#youngOf.get(clutch);
      if (mates) mates.push(animal);
      else this.#youngOf.set(clutch, [animal]);
    }
    return slot;
  }

  #release(slot: number): void {
    const stride = this.#stride;
    for (let other = 0; other < this.#animals.length; other++)
      this.#cells[slot * stride + other] = this.#cells[other * stride + slot] = 0;
    this.#slotOf.delete(this.#animals[slot] as number);
    this.#animals[slot] = -1;
    this.#free.push(slot);
  }

  #widen(): void {
    const stride = 2 * this.#stride;
    const cells = new Float64Array(stride * stride);
    for (let row = 0; row < this.#stride; row++)
      cells.set(this.#cells.subarray(row * this.#stride, (row + 1) * this.#stride), row * stride);
    const across = new Float64Array(stride);
    across.set(this.#across);
    this.#cells = cells;
    this.#across = across;
    this.#stride = stride;
  }
}
