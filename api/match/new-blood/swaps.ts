/** Two holdings that may exchange animals. Places are those of the matrix. */
export interface SwapProblem {
  /** How many animals the matrix is of. */
  readonly size: number;
  /** Expected kinships among all animals of both, size × size by rows; ½(1+F) on the diagonal. */
  readonly kinship: Float64Array;
  /** Places of the animals that either has. */
  readonly one: readonly number[];
  readonly other: readonly number[];
  /** Of these, the animals that may go, in the order in which equals are told. */
  readonly mayGo: { readonly one: readonly number[]; readonly other: readonly number[] };
  /** Whether two animals may be exchanged for each other; left out: any two. */
  readonly fits?: (give: number, take: number) => boolean;
}

/** One animal for another. */
export interface Swap {
  /** Place of the animal that the first gives, and of the one that it takes. */
  readonly give: number;
  readonly take: number;
  /** What either gains in gene diversity. */
  readonly one: number;
  readonly other: number;
}

/** What came of trying every exchange of one for one. */
export interface SwapsFound {
  /** Those that help both, the best first. */
  readonly best: readonly Swap[];
  readonly tried: number;
  /** How many help both. */
  readonly helping: number;
}

/** Gains that differ by less than this differ by rounding alone; one that is no greater is none. */
export const GAIN_LEAST = 1e-12;

/**
 * Tries every exchange of one animal for one between two holdings, and ranks those after which either is more diverse than before: the
 * least of both gains first, then their sum, then the order of the animals. What a holding of N animals gains follows from the sum of
 * its kinships S: without g and with t it is S − 2Σφ(g,·) + φ(g,g) + 2(Σφ(t,·) − φ(t,g)) + φ(t,t), so each exchange costs the same
 * few steps, and the ranking is exact.
 *
 * @param most how many are told
 */
export function findSwaps(problem: SwapProblem, most: number): SwapsFound {
  const { one, other, mayGo, fits = () => true } = problem;
  const mine = new HoldingSum(problem, one);
  const theirs = new HoldingSum(problem, other);
  const helping: Swap[] = [];
  let tried = 0;
  for (const give of mayGo.one)
    for (const take of mayGo.other) {
      if (!fits(give, take)) continue;
      tried++;
      const swap = { give, take, one: mine.gain(give, take), other: theirs.gain(take, give) };
      if (Math.min(swap.one, swap.other) > GAIN_LEAST) helping.push(swap);
    }
  // the sort keeps the order of the animals among equals
  helping.sort((first, second) => compareSwaps(first, second));
  return { best: helping.slice(0, most), tried, helping: helping.length };
}

/** Compares two exchanges: below 0 where the first is the better one, 0 where only rounding tells them apart. */
export function compareSwaps(first: Swap, second: Swap): number {
  const steps = (gain: number): number => Math.round(gain / GAIN_LEAST);
  const least = ({ one, other }: Swap): number => steps(Math.min(one, other));
  return least(second) - least(first) || steps(second.one + second.other) - steps(first.one + first.other);
}

/** A holding with the sum of its kinships, and that of each animal with all of it. */
class HoldingSum {
  readonly #problem: SwapProblem;
  readonly #count: number;
  readonly #sums: Float64Array;

  constructor(problem: SwapProblem, holding: readonly number[]) {
    this.#problem = problem;
    this.#count = holding.length;
    this.#sums = Float64Array.from({ length: problem.size }, (_, place) =>
      holding.reduce((sum, member) => sum + this.#kinship(place, member), 0),
    );
  }

  /** What it gains in gene diversity, 1 minus mean kinship, where one animal goes and another comes. */
  gain(goes: number, comes: number): number {
    const without = this.#kinship(goes, goes) - 2 * (this.#sums[goes] ?? 0);
    const withIt = this.#kinship(comes, comes) + 2 * ((this.#sums[comes] ?? 0) - this.#kinship(comes, goes));
    return -(without + withIt) / this.#count ** 2;
  }

  #kinship(row: number, column: number): number {
    return this.#problem.kinship[row * this.#problem.size + column] ?? 0;
  }
}
