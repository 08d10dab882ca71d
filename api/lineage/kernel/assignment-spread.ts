import { AssignmentKinship } from './assignment-kinship.ts';
import type { AssignmentPlan } from './assignment-plan.ts';
import { SeededRandom } from './seeded-random.ts';
import { distributionOf, type Distribution } from './value-distribution.ts';

/** How the assignments of parents are gone through. */
export interface SpreadOptions {
  /** How many are drawn where there are too many to count, 2 at least. */
  readonly samples: number;
  /** 0 to 2³²−1: the same seed draws the same assignments. */
  readonly seed: number;
  /** Up to how many of them all are gone through instead. */
  readonly exactUpTo: number;
  /** Told some fifty times how far it has come. */
  readonly tell?: (done: number, total: number) => void;
}

/** The inbreeding coefficients that an animal can have, and how likely each is. */
export interface AssignmentSpread extends Distribution {
  /** Whether every assignment was gone through; the distribution is then exact, else sampled. */
  readonly isExact: boolean;
  /** How many were gone through or drawn. */
  readonly samples: number;
}

/** How many ways there are to choose one pair for every uncertain clutch; Infinity beyond the range of numbers. */
export function countAssignments({ count, pairStart }: AssignmentPlan): number {
  let ways = 1;
  for (let clutch = 0; clutch < count; clutch++)
    ways *= (pairStart[clutch + 1] as number) - (pairStart[clutch] as number);
  return ways;
}

/** What one assignment costs at most, in nanoseconds, measured from a width of 24 to one of 1200. */
export function assignmentCost({ count, width, young }: AssignmentPlan): number {
  return count * (width + 150) + 5 * width * young.length;
}

/**
 * The distribution of an animal's inbreeding coefficient over the assignments of parents to all uncertain clutches of its ancestry, each
 * clutch drawing one of its candidate pairs for all its young together, independently of other clutches; within an assignment F is
 * exact. The idea of sampling what is not known of a pedigree and computing the rest is that of gene dropping (MacCluer et al. 1986).
 * The mean of the distribution is the expected F.
 */
export function assignmentSpread(
  plan: AssignmentPlan,
  { samples, seed, exactUpTo, tell = () => undefined }: SpreadOptions,
): AssignmentSpread {
  const ways = countAssignments(plan);
  const isExact = ways <= exactUpTo;
  const kinship = new AssignmentKinship(plan);
  const assignments = isExact ? new AllAssignments(plan) : new DrawnAssignments(plan, seed);
  const total = isExact ? ways : samples;
  const tellEvery = Math.max(1, Math.floor(total / 50));
  const odds = new Map<number, number>();
  for (let sample = 0; sample < total; sample++) {
    if (sample % tellEvery === 0) tell(sample, total);
    const probability = assignments.next();
    const value = rounded(kinship.inbreeding(assignments.chosen));
    odds.set(value, (odds.get(value) ?? 0) + (isExact ? probability : 1));
  }
  tell(total, total);
  return { isExact, samples: total, ...distributionOf(odds, isExact ? null : samples) };
}

/** On a grid of 2⁻⁴⁴, so that roundings, which depend on the order of clutches, make no two values of one. */
function rounded(value: number): number {
  return Math.round(value * 2 ** 44) / 2 ** 44;
}

/** Every assignment, one after the other. */
class AllAssignments {
  readonly #plan: AssignmentPlan;
  readonly chosen: Int32Array;
  #isFirst = true;

  constructor(plan: AssignmentPlan) {
    this.#plan = plan;
    this.chosen = plan.pairStart.slice(0, plan.count);
  }

  /** Goes on to the next and gives its probability. */
  next(): number {
    const { count, pairStart, pairProbability } = this.#plan;
    const { chosen } = this;
    if (this.#isFirst) this.#isFirst = false;
    else
      for (let clutch = 0; clutch < count; clutch++) {
        const next = (chosen[clutch] as number) + 1;
        const isThere = next < (pairStart[clutch + 1] as number);
        chosen[clutch] = isThere ? next : (pairStart[clutch] as number);
        if (isThere) break;
      }
    let probability = 1;
    for (let clutch = 0; clutch < count; clutch++) probability *= pairProbability[chosen[clutch] as number] as number;
    return probability;
  }
}

/** Assignments drawn by their probabilities. */
class DrawnAssignments {
  readonly #plan: AssignmentPlan;
  readonly #random: SeededRandom;
  /** For each pair: the odds of it and those before it in its clutch, in steps of 2⁻³². */
  readonly #upTo: Float64Array;
  readonly #uncertain: Int32Array;
  readonly chosen: Int32Array;

  constructor(plan: AssignmentPlan, seed: number) {
    const { count, pairStart, pairProbability } = plan;
    this.#plan = plan;
    this.#random = new SeededRandom(seed);
    this.chosen = plan.pairStart.slice(0, count);
    this.#upTo = new Float64Array(pairProbability.length);
    const uncertain: number[] = [];
    for (let clutch = 0; clutch < count; clutch++) {
      const end = pairStart[clutch + 1] as number;
      let sum = 0;
      for (let pair = pairStart[clutch] as number; pair < end; pair++) {
        sum += pairProbability[pair] as number;
        this.#upTo[pair] = Math.round(sum * 2 ** 32);
      }
      this.#upTo[end - 1] = 2 ** 32;
      if (end - (pairStart[clutch] as number) > 1) uncertain.push(clutch);
    }
    this.#uncertain = Int32Array.from(uncertain);
  }

  /** Draws the next one, as every other with its own odds. */
  next(): number {
    const { pairStart } = this.#plan;
    for (const clutch of this.#uncertain) {
      const drawn = this.#random.bits();
      let low = pairStart[clutch] as number;
      let high = (pairStart[clutch + 1] as number) - 1;
      while (low < high) {
        const middle = (low + high) >>> 1;
        if (drawn < (this.#upTo[middle] as number)) high = middle;
        else low = middle + 1;
      }
      this.chosen[clutch] = low;
    }
    return 1;
  }
}
