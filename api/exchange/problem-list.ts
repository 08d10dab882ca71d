/** A problem or a warning of a sheet, at the place where a spreadsheet shows it. */
export interface SheetProblem {
  /** Row as a spreadsheet numbers it: the header is row 1. 0 where the file as a whole is meant. */
  readonly row: number;
  /** Header of the column as it stands in the domain's words, empty where the whole row is meant. */
  readonly column: string;
  /** What is wrong and how to put it right, in one or two sentences. */
  readonly detail: string;
}

/** Collects problems of a sheet. The first ones are kept, all are counted, so that a hopeless file cannot fill the memory. */
export class ProblemList {
  readonly #kept: SheetProblem[] = [];
  readonly #most: number;
  #total = 0;

  /** @param most how many problems to keep */
  constructor(most = 1_000) {
    this.#most = most;
  }

  /** Notes a problem. */
  add(row: number, column: string, detail: string): void {
    this.#total += 1;
    if (this.#kept.length < this.#most) this.#kept.push({ row, column, detail });
  }

  /** How many problems there were, those not kept included. */
  get total(): number {
    return this.#total;
  }

  /** The problems that were kept, by row. */
  list(): SheetProblem[] {
    return this.#kept.toSorted((a, b) => a.row - b.row);
  }
}
