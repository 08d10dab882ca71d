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
  const { lines, animalsPerLine, breeders, clutchSize, crosses } = shape;
  const random = seededRandom(seed);
  const pick = (count: number): number => Math.floor(random() * count);
  const half = breeders / 2;
  const rounds = Math.floor((animalsPerLine - breeders) / clutchSize);
  const clutches = lines * rounds;
  const clutchOf = new Int32Array(lines * (breeders + rounds * clutchSize)).fill(-1);
  const pairSire = new Int32Array(clutches);
  const pairDam = new Int32Array(clutches);
  // Seat `line * breeders + s` holds a breeder: a male where s < half, else a female. Founders are the first to sit.
  const seats = Int32Array.from({ length: lines * breeders }, (_, animal) => animal);
  let born = seats.length;
  for (let clutch = 0; clutch < clutches; clutch++) {
    const line = clutch % lines;
    const damLine = random() < crosses ? pick(lines) : line;
    pairSire[clutch] = seats[line * breeders + pick(half)] ?? -1;
    pairDam[clutch] = seats[damLine * breeders + half + pick(half)] ?? -1;
    clutchOf.fill(clutch, born, born + clutchSize);
    seats[line * breeders + pick(breeders)] = born + pick(clutchSize);
    born += clutchSize;
  }
  return {
    clutchOf,
    sourceOf: new Int32Array(clutchOf.length).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from({ length: clutches + 1 }, (_, index) => index),
    pairSire,
    pairDam,
    pairProbability: new Float64Array(clutches).fill(1),
  };
}
