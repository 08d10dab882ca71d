/** The pairs of some clutches, laid out one clutch after the other. */
export interface ParentPairs {
  /** So many + 1: the pairs of clutch c are pairStart[c] .. pairStart[c+1]−1. */
  readonly pairStart: Int32Array;
  readonly pairSire: Int32Array;
  readonly pairDam: Int32Array;
  readonly pairProbability: Float64Array;
  /** 1 where the parents of a clutch are recorded as joint pairs. */
  readonly jointPairs: Uint8Array;
}

const SIRE = 0;
const DAM = 1;
const PAIR = 2;

/** A row of the parents of a clutch; `second` is used by pairs only. */
interface ParentRow {
  readonly role: number;
  readonly first: number;
  readonly second: number;
  readonly probability: number;
}

/** The one unknown parent of a side without rows. */
const NOBODY: readonly ParentRow[] = [{ role: SIRE, first: -1, second: -1, probability: 1 }];

/**
 * Gathers the parents of clutches in whatever order the tables give them, then lays them out clutch by clutch. Rows are kept as
 * numbers: a million of them take no objects.
 */
export class ParentRows {
  readonly #clutches: number;
  #clutch = new Int32Array(256);
  #role = new Uint8Array(256);
  #first = new Int32Array(256);
  #second = new Int32Array(256);
  #probability = new Float64Array(256);
  #count = 0;

  /** @param clutches rows are of clutches 0 .. clutches−1 */
  constructor(clutches: number) {
    this.#clutches = clutches;
  }

  /** A candidate on one side; individual −1 is a frog nobody knows. */
  addCandidate(clutch: number, role: 'sire' | 'dam', individual: number, probability: number): void {
    this.#add(clutch, role === 'sire' ? SIRE : DAM, individual, -1, probability);
  }

  /** Two animals that may be the parents together. */
  addPair(clutch: number, a: number, b: number, probability: number): void {
    this.#add(clutch, PAIR, a, b, probability);
  }

  #add(clutch: number, role: number, first: number, second: number, probability: number): void {
    if (this.#count === this.#clutch.length) this.#grow();
    const row = this.#count++;
    this.#clutch[row] = clutch;
    this.#role[row] = role;
    this.#first[row] = first;
    this.#second[row] = second;
    this.#probability[row] = probability;
  }

  #grow(): void {
    const wider = <Numbers extends Int32Array | Uint8Array | Float64Array>(old: Numbers, empty: Numbers): Numbers => {
      empty.set(old);
      return empty;
    };
    const room = 2 * this.#clutch.length;
    this.#clutch = wider(this.#clutch, new Int32Array(room));
    this.#role = wider(this.#role, new Uint8Array(room));
    this.#first = wider(this.#first, new Int32Array(room));
    this.#second = wider(this.#second, new Int32Array(room));
    this.#probability = wider(this.#probability, new Float64Array(room));
  }

  /** The pairs of every clutch, in the order of the parents' numbers; the probabilities of each clutch sum to 1. */
  multiplyOut(): ParentPairs {
    const { start, rows } = this.#byClutch();
    const pairs = new PairList(this.#clutches, this.#count + 2 * this.#clutches);
    for (let clutch = 0; clutch < this.#clutches; clutch++) {
      const from = start[clutch] ?? 0;
      const to = start[clutch + 1] ?? 0;
      if (!this.#appendCertain(pairs, rows, from, to)) this.#appendUncertain(pairs, clutch, rows, from, to);
      pairs.close(clutch);
    }
    return pairs.done();
  }

  /** Rows sorted by clutch, by counting. */
  #byClutch(): { start: Int32Array; rows: Int32Array } {
    const start = new Int32Array(this.#clutches + 1);
    for (let row = 0; row < this.#count; row++) {
      const next = (this.#clutch[row] ?? 0) + 1;
      start[next] = (start[next] ?? 0) + 1;
    }
    for (let clutch = 0; clutch < this.#clutches; clutch++)
      start[clutch + 1] = (start[clutch + 1] ?? 0) + (start[clutch] ?? 0);
    const place = start.slice();
    const rows = new Int32Array(this.#count);
    for (let row = 0; row < this.#count; row++) {
      const clutch = this.#clutch[row] ?? 0;
      rows[place[clutch] ?? 0] = row;
      place[clutch] = (place[clutch] ?? 0) + 1;
    }
    return { start, rows };
  }

  /** The case of nearly every clutch: one sire and one dam. */
  #appendCertain(pairs: PairList, rows: Int32Array, from: number, to: number): boolean {
    if (to - from !== 2) return false;
    const one = rows[from] ?? 0;
    const other = rows[from + 1] ?? 0;
    const roles = (this.#role[one] ?? 0) * 4 + (this.#role[other] ?? 0);
    if (roles === SIRE * 4 + DAM) pairs.append(this.#first[one] ?? -1, this.#first[other] ?? -1, 1);
    else if (roles === DAM * 4 + SIRE) pairs.append(this.#first[other] ?? -1, this.#first[one] ?? -1, 1);
    else return false;
    return true;
  }

  #appendUncertain(pairs: PairList, clutch: number, numbers: Int32Array, from: number, to: number): void {
    const rows = Array.from(numbers.subarray(from, to), (row): ParentRow => ({
      role: this.#role[row] ?? 0,
      first: this.#first[row] ?? -1,
      second: this.#second[row] ?? -1,
      probability: this.#probability[row] ?? 0,
    }));
    if (rows.some(({ role }) => role === PAIR)) {
      pairs.isJoint(clutch);
      for (const { first, second, probability } of shares(rows)) pairs.append(first, second, probability);
      return;
    }
    const dams = shares(rows.filter(({ role }) => role === DAM));
    for (const sire of shares(rows.filter(({ role }) => role === SIRE)))
      for (const dam of dams) pairs.append(sire.first, dam.first, sire.probability * dam.probability);
  }
}

/** Pairs as they are laid out, with room that grows. */
class PairList {
  readonly #start: Int32Array;
  readonly #joint: Uint8Array;
  #sire: Int32Array;
  #dam: Int32Array;
  #probability: Float64Array;
  #count = 0;

  constructor(clutches: number, room: number) {
    this.#start = new Int32Array(clutches + 1);
    this.#joint = new Uint8Array(clutches);
    this.#sire = new Int32Array(room);
    this.#dam = new Int32Array(room);
    this.#probability = new Float64Array(room);
  }

  append(sire: number, dam: number, probability: number): void {
    if (probability === 0) return; // the product of two odds too small for a number
    if (this.#count === this.#sire.length) this.#grow();
    this.#sire[this.#count] = sire;
    this.#dam[this.#count] = dam;
    this.#probability[this.#count++] = probability;
  }

  #grow(): void {
    const room = 2 * this.#count + 64;
    const [sire, dam, probability] = [new Int32Array(room), new Int32Array(room), new Float64Array(room)];
    sire.set(this.#sire);
    dam.set(this.#dam);
    probability.set(this.#probability);
    [this.#sire, this.#dam, this.#probability] = [sire, dam, probability];
  }

  isJoint(clutch: number): void {
    this.#joint[clutch] = 1;
  }

  close(clutch: number): void {
    this.#start[clutch + 1] = this.#count;
  }

  done(): ParentPairs {
    return {
      pairStart: this.#start,
      pairSire: this.#sire.subarray(0, this.#count),
      pairDam: this.#dam.subarray(0, this.#count),
      pairProbability: this.#probability.subarray(0, this.#count),
      jointPairs: this.#joint,
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
