import type { CandidateRow, PairRow } from './register-rows.queries.ts';

/** What the kernel wants to know of parents, and where they were recorded as joint pairs. */
interface ParentArrays {
  readonly pairStart: Int32Array;
  readonly pairSire: Int32Array;
  readonly pairDam: Int32Array;
  readonly pairProbability: Float64Array;
  readonly jointPairs: Uint8Array;
}

/** A row by dense numbers; role 0 sire, 1 dam, 2 pair; `second` is used by pairs only. */
interface ParentRow {
  readonly role: 0 | 1 | 2;
  readonly first: number;
  readonly second: number;
  readonly probability: number;
}

/** The one unknown parent of a side without rows. */
const NOBODY: readonly ParentRow[] = [{ role: 0, first: -1, second: -1, probability: 1 }];

/** Gathers the parents of all clutches in whatever order the tables give them, then lays them out clutch by clutch. */
export class ParentRows {
  readonly #clutchNumber: ReadonlyMap<string, number>;
  readonly #individualNumber: ReadonlyMap<string, number>;
  readonly #rowsOf: (ParentRow[] | undefined)[];
  readonly #jointPairs: Uint8Array;

  constructor(clutchNumber: ReadonlyMap<string, number>, individualNumber: ReadonlyMap<string, number>) {
    this.#clutchNumber = clutchNumber;
    this.#individualNumber = individualNumber;
    this.#rowsOf = new Array<ParentRow[] | undefined>(clutchNumber.size);
    this.#jointPairs = new Uint8Array(clutchNumber.size);
  }

  addCandidate([clutch, role, individual, probability]: CandidateRow): void {
    const first = individual === null ? -1 : known(this.#individualNumber, individual);
    this.#add(known(this.#clutchNumber, clutch), { role: role === 'sire' ? 0 : 1, first, second: -1, probability });
  }

  addPair([clutch, a, b, probability]: PairRow): void {
    const number = known(this.#clutchNumber, clutch);
    const first = known(this.#individualNumber, a);
    const second = known(this.#individualNumber, b);
    this.#add(number, { role: 2, first, second, probability });
    this.#jointPairs[number] = 1;
  }

  #add(clutch: number, row: ParentRow): void {
    const rows = this.#rowsOf[clutch];
    if (rows) rows.push(row);
    else this.#rowsOf[clutch] = [row];
  }

  /** The pairs of every clutch, in the order of the parents' ids; the probabilities of each clutch sum to 1. */
  multiplyOut(): ParentArrays {
    const clutches = this.#jointPairs.length;
    const pairStart = new Int32Array(clutches + 1);
    const sires: number[] = [];
    const dams: number[] = [];
    const probabilities: number[] = [];
    const append = (sire: number, dam: number, probability: number): void => {
      if (probability === 0) return; // the product of two odds too small for a number
      sires.push(sire);
      dams.push(dam);
      probabilities.push(probability);
    };
    for (let clutch = 0; clutch < clutches; clutch++) {
      const rows = this.#rowsOf[clutch] ?? [];
      if (this.#jointPairs[clutch] === 1) {
        for (const { first, second, probability } of shares(rows)) append(first, second, probability);
      } else {
        const damRows = shares(rows.filter(({ role }) => role === 1));
        for (const sire of shares(rows.filter(({ role }) => role === 0)))
          for (const dam of damRows) append(sire.first, dam.first, sire.probability * dam.probability);
      }
      pairStart[clutch + 1] = sires.length;
    }
    return {
      pairStart,
      pairSire: Int32Array.from(sires),
      pairDam: Int32Array.from(dams),
      pairProbability: Float64Array.from(probabilities),
      jointPairs: this.#jointPairs,
    };
  }
}

/** Rows in a fixed order. The database lets sums miss 1 by a billionth; two such sides multiplied would miss by more. */
function shares(rows: readonly ParentRow[]): readonly ParentRow[] {
  if (rows.length === 0) return NOBODY;
  if (rows.length === 1) return rows[0]?.probability === 1 ? rows : rows.map((row) => ({ ...row, probability: 1 }));
  const sorted = [...rows].sort((one, other) => one.first - other.first || one.second - other.second);
  const total = sorted.reduce((sum, { probability }) => sum + probability, 0);
  return sorted.map((row) => ({ ...row, probability: row.probability / total }));
}

function known(numbers: ReadonlyMap<string, number>, id: string): number {
  const number = numbers.get(id);
  if (number === undefined)
    throw new Error(`record ${id} is missing from its table: the register was not read in one state`);
  return number;
}
