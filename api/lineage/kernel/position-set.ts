/**
 * A set of positions that is emptied from the greatest down, while smaller ones are still being added. Three levels of
 * 32-bit words, each bit saying whether the word below it holds anything: adding and taking cost a few operations
 * whatever the size, where a heap would cost log n.
 */
export class PositionSet {
  readonly #bits: Int32Array;
  readonly #words: Int32Array;
  readonly #groups: Int32Array;
  #size = 0;
  #highestGroup = 0;

  /** @param capacity positions 0 .. capacity−1 can be held. */
  constructor(capacity: number) {
    this.#bits = new Int32Array((capacity >> 5) + 1);
    this.#words = new Int32Array((capacity >> 10) + 1);
    this.#groups = new Int32Array((capacity >> 15) + 1);
  }

  /** How many positions are held. */
  get size(): number {
    return this.#size;
  }

  /** Adds a position that is not held yet. */
  add(position: number): void {
    const word = position >> 5;
    const group = position >> 10;
    const top = position >> 15;
    this.#bits[word] = (this.#bits[word] as number) | (1 << (position & 31));
    this.#words[group] = (this.#words[group] as number) | (1 << (word & 31));
    this.#groups[top] = (this.#groups[top] as number) | (1 << (group & 31));
    if (top > this.#highestGroup) this.#highestGroup = top;
    this.#size++;
  }

  /** Removes the greatest position and returns it. Only for a set that is not empty. */
  takeGreatest(): number {
    let top = this.#highestGroup;
    while (this.#groups[top] === 0) top--;
    this.#highestGroup = top;
    const groupBits = this.#groups[top] as number;
    const groupBit = 31 - Math.clz32(groupBits);
    const group = (top << 5) | groupBit;
    const wordBits = this.#words[group] as number;
    const wordBit = 31 - Math.clz32(wordBits);
    const word = (group << 5) | wordBit;
    const bits = this.#bits[word] as number;
    const bit = 31 - Math.clz32(bits);
    const left = bits & ~(1 << bit);
    this.#bits[word] = left;
    if (left === 0) {
      const wordsLeft = wordBits & ~(1 << wordBit);
      this.#words[group] = wordsLeft;
      if (wordsLeft === 0) this.#groups[top] = groupBits & ~(1 << groupBit);
    }
    this.#size--;
    return (word << 5) | bit;
  }
}
