import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';

/** How a made-up population of lines grows. */
export interface Shape {
  readonly name: string;
  readonly lines: number;
  readonly animalsPerLine: number;
  /** Animals of a line that may breed at any one time: the youngest ones, so that generations overlap. */
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
 * Builds a population in order of time, the lines side by side: each line starts from founders of unknown origin and
 * then lays clutch after clutch, sire and dam drawn at random among the youngest `breeders` animals, even and odd
 * numbers within the line being the sexes.
 */
export function buildShape(shape: Shape, seed = 1): Pedigree {
  const { lines, animalsPerLine, breeders, clutchSize, crosses } = shape;
  const random = seededRandom(seed);
  const founders = Math.min(breeders, animalsPerLine);
  const clutchesPerLine = Math.ceil((animalsPerLine - founders) / clutchSize);
  const clutchOf = new Int32Array(lines * animalsPerLine).fill(-1);
  const clutches = lines * clutchesPerLine;
  const pairSire = new Int32Array(clutches);
  const pairDam = new Int32Array(clutches);
  // Animal a of line l is number l * animalsPerLine + a; a clutch is numbered as it is laid, round after round.
  let clutch = 0;
  for (let round = 0; round < clutchesPerLine; round++) {
    const present = founders + round * clutchSize;
    const oldest = present - breeders;
    const draw = (line: number, sex: number): number =>
      line * animalsPerLine + oldest + 2 * Math.floor((random() * breeders) / 2) + ((sex + oldest) & 1);
    for (let line = 0; line < lines; line++, clutch++) {
      pairSire[clutch] = draw(line, 0);
      pairDam[clutch] = draw(random() < crosses ? Math.floor(random() * lines) : line, 1);
      const last = Math.min(present + clutchSize, animalsPerLine);
      clutchOf.fill(clutch, line * animalsPerLine + present, line * animalsPerLine + last);
    }
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
