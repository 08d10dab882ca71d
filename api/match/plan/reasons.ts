import type { Alternative, Alternatives } from './alternatives.ts';
import { PRECISION } from './pairing-programme.ts';
import type { Obstacle, PairPlace, PairRules, PlanAnimal, PlanProblem, PossiblePairs } from './plan-problem.ts';

export type Side = 'male' | 'female';

/** How a mate stands among all that an animal may be paired with, by what each pair would add to the sum. */
export interface MateRank {
  /** 1 is the best; equally good ones share a place. */
  readonly rank: number;
  readonly of: number;
  /** The best mate that the plan does not give it. */
  readonly bestOther: {
    readonly mate: number;
    /** Cost of that pair less the cost of the chosen one: negative where the other mate would be better for this animal alone. */
    readonly difference: number;
    /** The plan uses that mate as often as it may be used. */
    readonly isSpent: boolean;
  } | null;
  /** The best of the mates that the limit of F stands against, where it would add less than the chosen one. */
  readonly aboveLimit: { readonly mate: number; readonly kinship: number; readonly difference: number } | null;
}

/** A pair of the plan, and why. */
export interface ChosenPair extends PairPlace {
  /** Mean kinship of the two, half of each. */
  readonly meanKinship: number;
  readonly kinship: number;
  /** What the pair adds to the sum. */
  readonly cost: number;
  readonly isMove: boolean;
  readonly isFixed: boolean;
  readonly forMale: MateRank;
  readonly forFemale: MateRank;
  /** The best plan without this pair; null for a fixed one too. */
  readonly without: Alternative;
}

/** Why an animal is in no pair. */
export type LeftOutReason =
  'unused' | 'no-mate' | 'mates-spent' | 'moves-spent' | 'as-good' | 'higher-mean-kinship' | 'dearer';

/** An animal that the plan does not use, and why. */
export interface LeftOut {
  readonly side: Side;
  readonly place: number;
  readonly reason: LeftOutReason;
  /** Mates that it might have. */
  readonly mates: number;
  /** How many of the other side it cannot be paired with, by what stands against it. */
  readonly obstacles: Readonly<Record<Obstacle, number>>;
  /** The least kinship with any animal of the other side, allowed or not; null if there is none. */
  readonly leastKinship: number | null;
  /** Its best mate of those that it might have. */
  readonly bestMate: { readonly mate: number; readonly cost: number } | null;
  /** The best of the mates that the limit of F stands against, where it would add less than its best mate. */
  readonly aboveLimit: MateRank['aboveLimit'];
  /** The best plan with it. */
  readonly including: Alternative;
}

/** Says of a plan why each pair is in it, and why each other animal is not. */
export class Reasons {
  readonly #uses: Readonly<Record<Side, Int32Array>>;
  readonly #takenCells: ReadonlySet<number>;
  readonly #movesLeft: boolean;

  constructor(
    private readonly problem: PlanProblem,
    private readonly rules: PairRules,
    private readonly pairs: PossiblePairs,
    private readonly taken: readonly number[],
    private readonly alternatives: Alternatives,
  ) {
    const { males, females, movesMost } = problem;
    this.#uses = { male: new Int32Array(males.length), female: new Int32Array(females.length) };
    const cells = new Set<number>();
    let moves = 0;
    for (const column of taken) {
      const { male, female } = this.#pairAt(column);
      this.#uses.male[male] = (this.#uses.male[male] ?? 0) + 1;
      this.#uses.female[female] = (this.#uses.female[female] ?? 0) + 1;
      cells.add(male * females.length + female);
      if (rules.isMove(male, female)) moves++;
    }
    this.#takenCells = cells;
    this.#movesLeft = movesMost === null || moves < movesMost;
  }

  chosen(): ChosenPair[] {
    return this.taken.map((column) => {
      const { male, female } = this.#pairAt(column);
      const isFixed = this.rules.isFixed(male, female);
      return {
        male,
        female,
        meanKinship: this.rules.meanKinship(male, female),
        kinship: this.rules.kinship(male, female),
        cost: this.rules.cost(male, female),
        isMove: this.rules.isMove(male, female),
        isFixed,
        forMale: this.#rank('male', male, female),
        forFemale: this.#rank('female', female, male),
        without: isFixed ? null : this.alternatives.without(column),
      };
    });
  }

  /** Animals without a pair, the nearest to being used first. */
  leftOut(): LeftOut[] {
    const sides: readonly Side[] = ['male', 'female'];
    return sides
      .flatMap((side) =>
        this.#animals(side).flatMap((animal, place) =>
          this.#uses[side][place] === 0 ? [{ side, place, animal, mates: this.#mates(side, place) }] : [],
        ),
      )
      .sort((one, other) => (one.mates[0]?.cost ?? Infinity) - (other.mates[0]?.cost ?? Infinity) || 0)
      .map(({ side, place, animal, mates }) => this.#explain(side, place, animal, mates));
  }

  #explain(side: Side, place: number, animal: PlanAnimal, mates: readonly Mate[]): LeftOut {
    const including = mates.length === 0 ? 'impossible' : this.alternatives.including(side, place, animal.usesMost);
    return {
      side,
      place,
      reason: this.#reason(side, animal, mates, including),
      mates: mates.length,
      ...this.#against(side, place),
      bestMate: mates[0] ?? null,
      aboveLimit: mates[0] ? this.#betterAboveLimit(side, place, mates[0].cost) : null,
      including,
    };
  }

  #reason(side: Side, animal: PlanAnimal, mates: readonly Mate[], including: Alternative): LeftOutReason {
    if (animal.usesMost === 0) return 'unused';
    if (mates.length === 0) return 'no-mate';
    const isAsGood = including !== null && including !== 'impossible' && including.isExact;
    if (isAsGood && including.extra <= PRECISION * (1 + this.problem.weight)) return 'as-good';
    const free = mates.filter(({ mate }) => !this.#isSpent(otherSide(side), mate));
    if (free.length === 0) return 'mates-spent';
    if (!this.#movesLeft && free.every(({ isMove }) => isMove)) return 'moves-spent';
    const used = this.#animals(side).filter((_, other) => (this.#uses[side][other] ?? 0) > 0);
    return used.every(({ meanKinship }) => meanKinship < animal.meanKinship) ? 'higher-mean-kinship' : 'dearer';
  }

  #against(side: Side, place: number): Pick<LeftOut, 'obstacles' | 'leastKinship'> {
    const obstacles = { unused: 0, 'above-limit': 0, forbidden: 0, 'kept-together': 0 };
    let leastKinship: number | null = null;
    this.#animals(otherSide(side)).forEach((_, mate) => {
      const [male, female] = side === 'male' ? [place, mate] : [mate, place];
      const obstacle = this.rules.obstacle(male, female);
      if (obstacle !== null) obstacles[obstacle]++;
      leastKinship = Math.min(leastKinship ?? Infinity, this.rules.kinship(male, female));
    });
    return { obstacles, leastKinship };
  }

  #rank(side: Side, place: number, chosen: number): MateRank {
    const mates = this.#mates(side, place);
    const cost = mates.find(({ mate }) => mate === chosen)?.cost ?? 0;
    const better = mates.filter((mate) => mate.cost < cost - PRECISION).length;
    const other = mates.find(({ isTaken }) => !isTaken);
    return {
      rank: better + 1,
      of: mates.length,
      bestOther: other
        ? {
            mate: other.mate,
            difference: other.cost - cost,
            isSpent: this.#isSpent(otherSide(side), other.mate),
          }
        : null,
      aboveLimit: this.#betterAboveLimit(side, place, cost),
    };
  }

  /** The mate that would add least of those that the limit of F stands against, if that is less than a cost. */
  #betterAboveLimit(side: Side, place: number, cost: number): MateRank['aboveLimit'] {
    let best: { mate: number; kinship: number; difference: number } | null = null;
    this.#animals(otherSide(side)).forEach((_, mate) => {
      const [male, female] = side === 'male' ? [place, mate] : [mate, place];
      if (this.rules.obstacle(male, female) !== 'above-limit') return;
      const difference = this.rules.cost(male, female) - cost;
      if (difference > -PRECISION || (best && difference >= best.difference)) return;
      best = { mate, kinship: this.rules.kinship(male, female), difference };
    });
    return best;
  }

  /** All mates that an animal may have, the best first. */
  #mates(side: Side, place: number): Mate[] {
    const mates: Mate[] = [];
    this.#animals(otherSide(side)).forEach((_, mate) => {
      const [male, female] = side === 'male' ? [place, mate] : [mate, place];
      if (this.rules.obstacle(male, female) !== null) return;
      mates.push({
        mate,
        cost: this.rules.cost(male, female),
        isMove: this.rules.isMove(male, female),
        isTaken: this.#takenCells.has(male * this.problem.females.length + female),
      });
    });
    return mates.sort((one, other) => one.cost - other.cost);
  }

  #isSpent(side: Side, place: number): boolean {
    return (this.#uses[side][place] ?? 0) >= (this.#animals(side)[place]?.usesMost ?? 0);
  }

  #animals(side: Side): readonly PlanAnimal[] {
    return side === 'male' ? this.problem.males : this.problem.females;
  }

  #pairAt(column: number): PairPlace {
    return { male: this.pairs.male[column] ?? -1, female: this.pairs.female[column] ?? -1 };
  }
}

interface Mate {
  readonly mate: number;
  readonly cost: number;
  readonly isMove: boolean;
  readonly isTaken: boolean;
}

function otherSide(side: Side): Side {
  return side === 'male' ? 'female' : 'male';
}
