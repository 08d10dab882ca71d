/**
 * Random numbers that a seed repeats on every machine: xoshiro128** (Blackman & Vigna 2021), its state filled by splitmix32.
 */
export class SeededRandom {
  readonly #state = new Uint32Array(4);

  /** @param seed a whole number, 0 to 2³²−1 */
  constructor(seed: number) {
    let word = seed >>> 0;
    for (let place = 0; place < 4; place++) {
      word = (word + 0x9e3779b9) >>> 0;
      let mixed = word;
      mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
      mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
      this.#state[place] = mixed ^ (mixed >>> 15);
    }
  }

  /** The next 32 random bits, 0 to 2³²−1. */
  bits(): number {
    const state = this.#state;
    const [a, b, c, d] = state as unknown as [number, number, number, number]; // four words, always
    const times5 = Math.imul(b, 5);
    const result = Math.imul((times5 << 7) | (times5 >>> 25), 9) >>> 0;
    const third = c ^ a;
    const fourth = d ^ b;
    state[1] = b ^ third;
    state[0] = a ^ fourth;
    state[2] = third ^ (b << 9);
    state[3] = (fourth << 11) | (fourth >>> 21);
    return result;
  }

  /** A number from 0 up to, but never, 1. */
  next(): number {
    return this.bits() / 2 ** 32;
  }
}
