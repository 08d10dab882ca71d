/** An animal that the plan may use. */
export interface PlanAnimal {
  /** Mean kinship with the living of the line, 0 to 1. */
  readonly meanKinship: number;
  /** Dense number of whoever keeps it; animals of different keepers have to move to be paired. */
  readonly keeper: number;
  /** In how many pairs it may be at most; 0 keeps it out. */
  readonly usesMost: number;
  /** An old animal that has not bred: `reserveLeast` counts it. */
  readonly isReserve: boolean;
}

/** A pair by the places of its animals among `males` and `females`. */
export interface PairPlace {
  readonly male: number;
  readonly female: number;
}

/** Which animals there are, what a plan must keep to, and what it is to make small. */
export interface PlanProblem {
  readonly males: readonly PlanAnimal[];
  readonly females: readonly PlanAnimal[];
  /** Expected kinship of male i with female j at `i * females.length + j`: F of their young. */
  readonly kinship: Float64Array;
  /** How many pairs the plan has. */
  readonly pairings: number;
  /** w of the sum that the plan makes small: Σ mean kinship of the parents + w · Σ kinship of the two. 0 or more. */
  readonly weight: number;
  /** Greatest F of the young that a pair may have, 0 to 1. */
  readonly inbreedingMost: number;
  /** Pairs that are fixed may have more than that. */
  readonly fixedMayExceed: boolean;
  readonly fixed: readonly PairPlace[];
  readonly forbidden: readonly PairPlace[];
  /** Keepers whose animals are paired among themselves only. */
  readonly keptTogether: readonly number[];
  /** How many pairs may have animals of different keepers; null: any number. */
  readonly movesMost: number | null;
  /** How many of the old animals that have not bred must be in the plan at least. */
  readonly reserveLeast: number;
}

/** Why two animals cannot be a pair of the plan. */
export type Obstacle = 'unused' | 'above-limit' | 'forbidden' | 'kept-together';

/**
 * Weight that a weight of 0 counts as: a millionth, so that kinship decides between plans that are equal otherwise, and no pair is taken
 * at random.
 */
export const LEAST_WEIGHT = 1e-6;

/** Kinships are sums in floating point: full siblings must not miss a limit of ¼ by the last digit. */
const ROUNDING = 1e-12;

/** What stands against a pair, apart from what other pairs are chosen; null: it may be taken. */
export class PairRules {
  readonly #forbidden: ReadonlySet<number>;
  readonly #fixed: ReadonlySet<number>;
  readonly #keptTogether: ReadonlySet<number>;

  constructor(private readonly problem: PlanProblem) {
    const { females } = problem;
    const cellOf = ({ male, female }: PairPlace): number => male * females.length + female;
    this.#forbidden = new Set(problem.forbidden.map(cellOf));
    this.#fixed = new Set(problem.fixed.map(cellOf));
    this.#keptTogether = new Set(problem.keptTogether);
  }

  isFixed(male: number, female: number): boolean {
    return this.#fixed.has(male * this.problem.females.length + female);
  }

  /** Whether one of the two has to go to another keeper. */
  isMove(male: number, female: number): boolean {
    return this.problem.males[male]?.keeper !== this.problem.females[female]?.keeper;
  }

  kinship(male: number, female: number): number {
    return this.problem.kinship[male * this.problem.females.length + female] ?? 0;
  }

  /** Part of the sum that comes from mean kinship: half of each animal's. */
  meanKinship(male: number, female: number): number {
    return ((this.problem.males[male]?.meanKinship ?? 0) + (this.problem.females[female]?.meanKinship ?? 0)) / 2;
  }

  /** What the pair adds to the sum under a weight, by default the problem's. */
  cost(male: number, female: number, weight = this.problem.weight): number {
    return this.meanKinship(male, female) + Math.max(weight, LEAST_WEIGHT) * this.kinship(male, female);
  }

  obstacle(male: number, female: number): Obstacle | null {
    const { males, females, inbreedingMost, fixedMayExceed } = this.problem;
    if (!males[male]?.usesMost || !females[female]?.usesMost) return 'unused';
    if (this.#forbidden.has(male * females.length + female)) return 'forbidden';
    const mayExceed = fixedMayExceed && this.isFixed(male, female);
    if (!mayExceed && this.kinship(male, female) > inbreedingMost + ROUNDING) return 'above-limit';
    return this.isMove(male, female) && this.#staysAtHome(male, female) ? 'kept-together' : null;
  }

  #staysAtHome(male: number, female: number): boolean {
    const { males, females } = this.problem;
    return this.#keptTogether.has(males[male]?.keeper ?? -1) || this.#keptTogether.has(females[female]?.keeper ?? -1);
  }
}

/** The pairs that may be taken, in a list that the programme's columns follow. */
export interface PossiblePairs {
  readonly male: Int32Array;
  readonly female: Int32Array;
}

/** Every pair against which nothing stands, male by male. */
export function possiblePairs(problem: PlanProblem, rules: PairRules): PossiblePairs {
  const male: number[] = [];
  const female: number[] = [];
  problem.males.forEach((_, m) =>
    problem.females.forEach((__, f) => {
      if (rules.obstacle(m, f) !== null) return;
      male.push(m);
      female.push(f);
    }),
  );
  return { male: Int32Array.from(male), female: Int32Array.from(female) };
}
