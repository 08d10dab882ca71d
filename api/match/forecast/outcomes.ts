/** How one figure came out over the replicates. */
export interface Outcome {
  readonly mean: number;
  /** Standard error of the mean: how far it may be off for want of more replicates. */
  readonly standardError: number;
  /** 95 % of the replicates lie between these, 2.5 % below and 2.5 % above. */
  readonly from: number;
  readonly to: number;
  /** The least and the greatest of all replicates. */
  readonly least: number;
  readonly greatest: number;
}

const TAIL = 0.025;

/** Keeps the figures of every replicate until all are there. */
export class Outcomes {
  readonly #replicates: number;
  readonly #values: Float64Array;

  constructor(replicates: number, figures: number) {
    this.#replicates = replicates;
    this.#values = new Float64Array(replicates * figures);
  }

  note(replicate: number, figure: number, value: number): void {
    this.#values[figure * this.#replicates + replicate] = value;
  }

  /** How a figure came out. Sorts what was noted: nothing can be noted afterwards. */
  of(figure: number): Outcome {
    const count = this.#replicates;
    const values = this.#values.subarray(figure * count, (figure + 1) * count).sort();
    const mean = values.reduce((sum, value) => sum + value, 0) / count;
    const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    const at = (place: number): number => values[Math.min(count - 1, Math.max(0, place))] ?? 0;
    return {
      mean,
      standardError: count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count),
      from: at(Math.ceil(TAIL * count) - 1),
      to: at(Math.ceil((1 - TAIL) * count) - 1),
      least: at(0),
      greatest: at(count - 1),
    };
  }
}
