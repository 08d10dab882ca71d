import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';

/** How a made-up population of lines grows. */
export interface Shape {
  readonly name: string;
  readonly lines: number;
  readonly animalsPerLine: number;
  /** Animals of a line that may breed at any one time; even. */
  readonly breeders: number;
  readonly clutchSize: number;
  /** Share of clutches whose dam comes from another line. */
  readonly crosses: number;
  /** Share of clutches of which the sire is one of two or three; none unless said otherwise. */
  readonly uncertain?: number;
}

/** The shapes the kernel is measured on. */
export const SHAPES: readonly Shape[] = [
  { name: '2 000 lines x 500', lines: 2000, animalsPerLine: 500, breeders: 20, clutchSize: 5, crosses: 0 },
  {
    name: '2 000 lines x 500, clutches of 1',
    lines: 2000,
    animalsPerLine: 500,
    breeders: 20,
    clutchSize: 1,
    crosses: 0,
  },
  { name: '20 lines x 5 000', lines: 20, animalsPerLine: 5000, breeders: 50, clutchSize: 5, crosses: 0 },
  { name: '100 000 closed, 400 breeders', lines: 1, animalsPerLine: 100_000, breeders: 400, clutchSize: 5, crosses: 0 },
  {
    name: '100 000 closed, clutches of 1',
    lines: 1,
    animalsPerLine: 100_000,
    breeders: 400,
    clutchSize: 1,
    crosses: 0,
  },
  {
    name: '2 000 lines x 500, 2 % crosses',
    lines: 2000,
    animalsPerLine: 500,
    breeders: 20,
    clutchSize: 5,
    crosses: 0.02,
  },
  {
    name: '2 000 lines x 500, half of the sires uncertain',
    lines: 2000,
    animalsPerLine: 500,
    breeders: 20,
    clutchSize: 5,
    crosses: 0,
    uncertain: 0.5,
  },
  {
    name: '2 000 lines x 500, 2 % crosses, half of the sires uncertain',
    lines: 2000,
    animalsPerLine: 500,
    breeders: 20,
    clutchSize: 5,
    crosses: 0.02,
    uncertain: 0.5,
  },
];

/** A random number generator with a seed, so that every run measures the same population (xorshift, Marsaglia 2003). */
export function seededRandom(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

/**
 * Builds a population in order of time, the lines side by side. Each line starts from founders of unknown origin, half of
 * them of each sex. Clutch after clutch takes a random sire and a random dam among its breeders; then one of the young
 * takes the place of a random breeder. So generations overlap and the number of breeders stays.
 */
export function buildShape(shape: Shape, seed = 1): Pedigree {
  const { lines, animalsPerLine, breeders, clutchSize, crosses, uncertain = 0 } = shape;
  const random = seededRandom(seed);
  const pick = (count: number): number => Math.floor(random() * count);
  const half = breeders / 2;
  const rounds = Math.floor((animalsPerLine - breeders) / clutchSize);
  const clutches = lines * rounds;
  const clutchOf = new Int32Array(lines * (breeders + rounds * clutchSize)).fill(-1);
  const pairs = new Pairs(clutches, uncertain === 0 ? 1 : 3);
  // Seat `line * breeders + s` holds a breeder: a male where s < half, else a female. Founders are the first to sit.
  const seats = Int32Array.from({ length: lines * breeders }, (_, animal) => animal);
  let born = seats.length;
  for (let clutch = 0; clutch < clutches; clutch++) {
    const line = clutch % lines;
    const damLine = random() < crosses ? pick(lines) : line;
    const sires = uncertain > 0 && random() < uncertain ? 2 + pick(2) : 1;
    const first = pick(half);
    const dam = seats[damLine * breeders + half + pick(half)] ?? -1;
    for (let sire = 0; sire < sires; sire++)
      pairs.add(seats[line * breeders + ((first + sire) % half)] ?? -1, dam, 1 / sires);
    pairs.endClutch(clutch);
    clutchOf.fill(clutch, born, born + clutchSize);
    seats[line * breeders + pick(breeders)] = born + pick(clutchSize);
    born += clutchSize;
  }
  const sourceOf = new Int32Array(clutchOf.length).fill(-1);
  return { clutchOf, sourceOf, baseKinship: new Float64Array(0), ...pairs.finish() };
}

/** Candidate pairs, clutch by clutch. */
class Pairs {
  readonly #start: Int32Array;
  readonly #sire: Int32Array;
  readonly #dam: Int32Array;
  readonly #probability: Float64Array;
  #count = 0;

  constructor(clutches: number, most: number) {
    this.#start = new Int32Array(clutches + 1);
    this.#sire = new Int32Array(clutches * most);
    this.#dam = new Int32Array(clutches * most);
    this.#probability = new Float64Array(clutches * most);
  }

  add(sire: number, dam: number, probability: number): void {
    this.#sire[this.#count] = sire;
    this.#dam[this.#count] = dam;
    this.#probability[this.#count++] = probability;
  }

  endClutch(clutch: number): void {
    this.#start[clutch + 1] = this.#count;
  }

  finish(): Pick<Pedigree, 'pairStart' | 'pairSire' | 'pairDam' | 'pairProbability'> {
    return {
      pairStart: this.#start,
      pairSire: this.#sire.slice(0, this.#count),
      pairDam: this.#dam.slice(0, this.#count),
      pairProbability: this.#probability.slice(0, this.#count),
    };
  }
}
