/** Words of 32 bits in an id of 16 bytes. */
const WORDS = 4;
/** An even spread of the ids over the places: the last words of an id are random. */
const SPREAD = 0x9e3779b1;

/**
 * Ids of records and their dense numbers, both ways, in 24 bytes a record and without an object for any of them.
 *
 * Numbers are given in the order of adding and never change. The table only grows: whoever remembers how many there were sees
 * it as it was then, and must take a number beyond as none.
 */
export class IdTable {
  #words: Uint32Array;
  /** Open addressing: dense number + 1, 0 where a place is free. At most half of it is in use. */
  #places: Int32Array;
  #size = 0;

  /** @param capacity how many ids are expected; more are taken too */
  constructor(capacity = 64) {
    this.#words = new Uint32Array(Math.max(64, capacity) * WORDS);
    this.#places = new Int32Array(placesFor(capacity));
  }

  get size(): number {
    return this.#size;
  }

  /** The id with a dense number, as PostgreSQL writes it; undefined where there is none. */
  at(number: number): string | undefined {
    if (!(number >= 0 && number < this.#size)) return undefined;
    let text = '';
    for (let word = 0; word < WORDS; word++)
      text += (this.#words[number * WORDS + word] ?? 0).toString(16).padStart(8, '0');
    return `${text.slice(0, 8)}-${text.slice(8, 12)}-${text.slice(12, 16)}-${text.slice(16, 20)}-${text.slice(20)}`;
  }

  /** Dense number of an id, in whatever case; −1 where it is unknown or no id at all. */
  find(id: string): number {
    const words = wordsOf(id);
    return words === null ? -1 : this.#number(...words);
  }

  /** Dense number of an id that stands in bytes; −1 where it is unknown. */
  findBytes(bytes: Uint8Array, offset: number): number {
    return this.#number(
      word(bytes, offset),
      word(bytes, offset + 4),
      word(bytes, offset + 8),
      word(bytes, offset + 12),
    );
  }

  /** Adds an id that stands in bytes and is not there yet; gives its number. */
  addBytes(bytes: Uint8Array, offset: number): number {
    return this.#append(
      word(bytes, offset),
      word(bytes, offset + 4),
      word(bytes, offset + 8),
      word(bytes, offset + 12),
    );
  }

  /** Adds an id that is not there yet; gives its number. */
  add(id: string): number {
    const words = wordsOf(id);
    if (words === null) throw new RangeError(`${id} is not an id.`);
    return this.#append(...words);
  }

  #number(a: number, b: number, c: number, d: number): number {
    const words = this.#words;
    const mask = this.#places.length - 1;
    for (let place = placeOf(c, d) & mask; ; place = (place + 1) & mask) {
      const number = (this.#places[place] ?? 0) - 1;
      if (number < 0) return -1;
      const at = number * WORDS;
      if (words[at + 3] === d && words[at + 2] === c && words[at + 1] === b && words[at] === a) return number;
    }
  }

  #append(a: number, b: number, c: number, d: number): number {
    if ((this.#size + 1) * WORDS > this.#words.length) {
      const words = new Uint32Array(2 * this.#words.length);
      words.set(this.#words);
      this.#words = words;
    }
    const number = this.#size++;
    this.#words.set([a, b, c, d], number * WORDS);
    if (2 * this.#size > this.#places.length) this.#spreadAnew();
    else this.#enter(number);
    return number;
  }

  #enter(number: number): void {
    const mask = this.#places.length - 1;
    let place = placeOf(this.#words[number * WORDS + 2] ?? 0, this.#words[number * WORDS + 3] ?? 0) & mask;
    while (this.#places[place] !== 0) place = (place + 1) & mask;
    this.#places[place] = number + 1;
  }

  #spreadAnew(): void {
    this.#places = new Int32Array(2 * this.#places.length);
    for (let number = 0; number < this.#size; number++) this.#enter(number);
  }

  /** What a thread needs to make the same table. */
  get parts(): IdTableParts {
    return { words: this.#words, places: this.#places, size: this.#size };
  }

  /** The table that a thread has made. */
  static of({ words, places, size }: IdTableParts): IdTable {
    const table = new IdTable(0);
    table.#words = words;
    table.#places = places;
    table.#size = size;
    return table;
  }
}

/** An `IdTable` as it goes from one thread to another. */
export interface IdTableParts {
  readonly words: Uint32Array;
  readonly places: Int32Array;
  readonly size: number;
}

function placesFor(capacity: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(64, 2 * capacity + 2)));
}

function placeOf(c: number, d: number): number {
  return Math.imul(c ^ (d >>> 15) ^ d, SPREAD) >>> 4;
}

function word(bytes: Uint8Array, offset: number): number {
  return (
    (((bytes[offset] ?? 0) << 24) |
      ((bytes[offset + 1] ?? 0) << 16) |
      ((bytes[offset + 2] ?? 0) << 8) |
      (bytes[offset + 3] ?? 0)) >>>
    0
  );
}

const idPattern = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

function wordsOf(id: string): [number, number, number, number] | null {
  if (!idPattern.test(id)) return null;
  const digits = id.replaceAll('-', '');
  const at = (place: number): number => parseInt(digits.slice(place, place + 8), 16);
  return [at(0), at(8), at(16), at(24)];
}
