/** What a clutch leaves behind when its young are taken out of the sum. */
export interface TakenTerms {
  /** Sum of the coefficients of its young with themselves. */
  readonly self: number;
  /** Sum of the coefficients between different young of it. */
  readonly within: number;
  /** Slots of the other animals that the young stand with; only the first `count` count. */
  readonly slots: Int32Array;
  /** The coefficients summed over the young, by slot. */
  readonly across: Float64Array;
  readonly count: number;
}

/**
 * A sum of kinships, Σ m_ij φ(i,j) over pairs of animals, in which animals are replaced by their parents. A dense symmetric
 * matrix over the animals that stand in it now; places given back are used again, so that it stays as wide as the animals
 * that wait at one time.
 */
export class KinshipTerms {
  readonly #clutchOf: Int32Array;
  readonly #slotOf = new Map<number, number>();
  readonly #youngOf = new Map<number, number[]>();
  readonly #free: number[] = [];
  /** Slot to individual, −1 for a free one. */
  readonly #animals: number[] = [];
  #stride = 32;
  /** Each pair stands on both sides of the diagonal with half its coefficient. */
  #cells = new Float64Array(32 * 32);
  #slots = new Int32Array(32);
  #across = new Float64Array(32);

  constructor(clutchOf: Int32Array) {
    this.#clutchOf = clutchOf;
  }

  /** Adds a coefficient of φ(a,b); a and b may be the same. */
  add(a: number, b: number, coefficient: number): void {
    const row = this.#slot(a);
    const column = this.#slot(b);
    this.#bump(row, column, 0.5 * coefficient);
    this.#bump(column, row, 0.5 * coefficient);
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
    for (const row of rows) {
      self += this.#cells[row * this.#stride + row] as number;
      within += sums[row] as number;
    }
    for (const row of rows) this.#release(row);
    let count = 0;
    for (let slot = 0; slot < this.#animals.length; slot++)
      if (this.#animals[slot] !== -1 && sums[slot] !== 0) this.#slots[count++] = slot;
    return { self, within: within - self, slots: this.#slots, across: sums, count };
  }

  /** Puts parents in the place of young that were taken: φ(i,j) = Σ w_k φ(k,j). */
  spread({ slots, across, count }: TakenTerms, weights: ReadonlyMap<number, number>): void {
    for (const [parent, weight] of weights) {
      const row = this.#slot(parent);
      const cells = this.#cells;
      const stride = this.#stride;
      for (let at = 0; at < count; at++) {
        const column = slots[at] as number;
        const part = weight * (across[column] as number);
        cells[row * stride + column] = (cells[row * stride + column] as number) + part;
        cells[column * stride + row] = (cells[column * stride + row] as number) + part;
      }
    }
  }

  /** Hands over every pair that is left, once, with its whole coefficient. */
  forEach(see: (a: number, b: number, coefficient: number) => void): void {
    for (let row = 0; row < this.#animals.length; row++)
      for (let column = 0; column <= row; column++) {
        const cell = this.#cells[row * this.#stride + column] as number;
        if (cell === 0) continue;
        see(this.#animals[row] as number, this.#animals[column] as number, row === column ? cell : 2 * cell);
      }
  }

  #bump(row: number, column: number, coefficient: number): void {
    const at = row * this.#stride + column;
    this.#cells[at] = (this.#cells[at] as number) + coefficient;
  }

  #sumRows(rows: readonly number[]): Float64Array {
    const width = this.#animals.length;
    const sums = this.#across.fill(0, 0, width);
    for (const row of rows)
      for (let column = 0, at = row * this.#stride; column < width; column++, at++)
        sums[column] = (sums[column] as number) + (this.#cells[at] as number);
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
    const slots = new Int32Array(stride);
    slots.set(this.#slots);
    this.#cells = cells;
    this.#across = across;
    this.#slots = slots;
    this.#stride = stride;
  }
}
