type Numbers = Int32Array | Float64Array | Uint8Array;

interface Kind<Array extends Numbers> {
  new (buffer: SharedArrayBuffer, offset?: number, length?: number): Array;
  readonly BYTES_PER_ELEMENT: number;
}

/**
 * A list of numbers over shared memory with room behind its end. What was shown once never changes: adding writes behind it, and
 * changing a number that somebody may see is done on a copy. Threads read it without its being copied.
 */
export class Column<Array extends Numbers> {
  readonly #kind: Kind<Array>;
  #room: Array;
  #length: number;
  /** So many numbers may be seen by whoever was shown them. */
  #shown: number;

  constructor(kind: Kind<Array>, room = 64, filled?: Array) {
    this.#kind = kind;
    this.#room = filled ?? make(kind, room);
    this.#length = this.#shown = filled?.length ?? 0;
  }

  get length(): number {
    return this.#length;
  }

  at(place: number): number {
    return this.#room[place] ?? 0;
  }

  push(value: number): void {
    if (this.#length === this.#room.length) this.#move(Math.ceil(1.25 * this.#length) + 64);
    this.#room[this.#length++] = value;
  }

  set(place: number, value: number): void {
    if (Object.is(this.#room[place], value)) return;
    if (place < this.#shown) this.#move(this.#room.length);
    this.#room[place] = value;
  }

  /**
   * The numbers, to be written at places from `first` on. Only good until the next call of anything here.
   */
  writable(first: number): Array {
    if (first < this.#shown) this.#move(this.#room.length);
    return this.#room.subarray(0, this.#length) as Array;
  }

  /** The numbers as they are now; what is added or changed later is not seen in it. */
  show(): Array {
    this.#shown = this.#length;
    return this.#room.subarray(0, this.#length) as Array;
  }

  #move(room: number): void {
    const moved = make(this.#kind, room);
    moved.set(this.#room.subarray(0, this.#length));
    this.#room = moved;
    this.#shown = 0;
  }
}

function make<Array extends Numbers>(kind: Kind<Array>, length: number): Array {
  return new kind(new SharedArrayBuffer(kind.BYTES_PER_ELEMENT * length));
}
