import { weightOf, type AncestorPairs } from './ancestor-pairs.ts';
import { keyOfMeeting, type PairStep, type StepVisitor } from './pair-steps.ts';

/** A loop as the choices that lead to it: one of the starts, then from pair to pair until they meet. */
export interface FoundLoop {
  readonly start: number;
  readonly choices: readonly PairStep[];
}

/** Place of what stands before all pairs. */
const START = -1;

/** A way on from a pair, and the most that a loop through it is worth from here. */
interface Choice {
  readonly step: PairStep;
  readonly value: number;
  /** Of a way from the start: which. */
  readonly start: number;
}

/** The choices made up to some pair, the last one first. */
interface Chain {
  readonly choice: Choice;
  readonly before: Chain | null;
}

/** A loop not yet found: it follows `before` to a pair, takes the choice of that rank there, and then always the best. */
interface Turn {
  readonly worth: number;
  readonly before: Chain | null;
  readonly weight: number;
  readonly pair: number;
  readonly rank: number;
}

/**
 * Finds loops, those that add most to F first. One pass backwards over all pairs tells the most that a loop from each is worth; then every loop
 * is the best one but for where it turns off another (Hoffman & Pavley 1959), so that a million loops that are worth the same cost nothing
 * until they are asked for.
 */
export class LoopSearch {
  readonly #pairs: AncestorPairs;
  readonly #through: string | null;
  /** The most that a loop from each pair is worth, its way there not counted; 0 where none leads on. */
  readonly #best: Float64Array;
  readonly #choices = new Map<number, readonly Choice[]>();

  /**
   * @param pairs pairs that have been led on
   * @param through the key of the meeting that loops must close in; null for any
   */
  constructor(pairs: AncestorPairs, through: string | null) {
    this.#pairs = pairs;
    this.#through = through;
    this.#best = new Float64Array(pairs.younger.length);
    let best = 0;
    const hear: StepVisitor = (one, other, steps, odds, end) => {
      best = Math.max(best, this.#valueOf(one, other, steps, odds, end));
    };
    for (let pair = this.#best.length - 1; pair >= 0; pair--) {
      best = 0;
      pairs.steps.visit(pairs.younger[pair] as number, pairs.elder[pair] as number, hear);
      this.#best[pair] = best;
    }
  }

  /** So many loops or all there are, those worth most first, but for differences in the last digit; fewer where these have too many steps. */
  find(most: number, stepsMost: number): FoundLoop[] {
    const found: FoundLoop[] = [];
    const turns = new Turns();
    this.#offer(turns, null, 1, START, 0);
    for (let named = 0; found.length < most && named < stepsMost;) {
      const turn = turns.take();
      if (!turn) break;
      this.#offer(turns, turn.before, turn.weight, turn.pair, turn.rank + 1);
      const loop = this.#follow(turns, turn);
      found.push(loop);
      named += loop.choices.reduce((sum, { steps }) => sum + steps, 2);
    }
    return found;
  }

  /** Takes the turn, then the best choice at every pair, offering the second best of each. */
  #follow(turns: Turns, { before, weight, pair, rank }: Turn): FoundLoop {
    let choice = this.#choicesAt(pair)[rank] as Choice; // what was offered is there
    let chain: Chain = { choice, before };
    let worth = weight;
    while (!choice.step.end) {
      worth *= weightOf(choice.step.steps, choice.step.odds, null);
      const next = this.#pairs.placeOf(choice.step.one, choice.step.other);
      this.#offer(turns, chain, worth, next, 1);
      choice = this.#choicesAt(next)[0] as Choice; // worth something, so it leads on
      chain = { choice, before: chain };
    }
    return unwound(chain);
  }

  #offer(turns: Turns, before: Chain | null, weight: number, pair: number, rank: number): void {
    const choice = this.#choicesAt(pair)[rank];
    const worth = weight * (choice?.value ?? 0);
    if (worth > 0) turns.add({ worth, before, weight, pair, rank });
  }

  /** The ways on from a pair that end in a loop asked for, best first. */
  #choicesAt(pair: number): readonly Choice[] {
    const known = this.#choices.get(pair);
    if (known) return known;
    const choices = this.#stepsFrom(pair)
      .map((step, start) => ({
        step,
        value: this.#valueOf(step.one, step.other, step.steps, step.odds, step.end),
        start,
      }))
      .filter(({ value }) => value > 0)
      .sort((one, other) => other.value - one.value || one.start - other.start);
    this.#choices.set(pair, choices);
    return choices;
  }

  #stepsFrom(pair: number): readonly PairStep[] {
    if (pair === START) return this.#pairs.starts;
    return this.#pairs.steps.from(this.#pairs.younger[pair] as number, this.#pairs.elder[pair] as number);
  }

  /** The most that a loop is worth that begins with this step. */
  #valueOf(one: number, other: number, steps: 0 | 1 | 2, odds: number, end: PairStep['end']): number {
    const weight = weightOf(steps, odds, end);
    if (!end) return weight * (this.#best[this.#pairs.placeOf(one, other)] as number);
    return this.#through === null || this.#through === keyOfMeeting(end.meeting) ? weight : 0;
  }
}

function unwound(last: Chain): FoundLoop {
  const choices: Choice[] = [];
  for (let chain: Chain | null = last; chain; chain = chain.before) choices.push(chain.choice);
  const [first, ...rest] = choices.reverse();
  return { start: first?.start ?? 0, choices: rest.map(({ step }) => step) };
}

/** Turns not yet taken, the one worth most first; among equals the one offered first. A binary heap. */
class Turns {
  readonly #turns: { readonly turn: Turn; readonly order: number }[] = [];
  #offered = 0;

  add(turn: Turn): void {
    const turns = this.#turns;
    const added = { turn, order: this.#offered++ };
    let place = turns.push(added) - 1;
    while (place > 0) {
      const above = (place - 1) >> 1;
      if (!isBefore(added, turns[above])) break;
      turns[place] = turns[above] as typeof added;
      place = above;
    }
    turns[place] = added;
  }

  take(): Turn | undefined {
    const turns = this.#turns;
    const first = turns[0];
    const last = turns.pop();
    if (!first || !last || turns.length === 0) return first?.turn;
    let place = 0;
    for (let below = 1; below < turns.length; below = 2 * place + 1) {
      if (isBefore(turns[below + 1], turns[below])) below++;
      const child = turns[below];
      if (!child || !isBefore(child, last)) break;
      turns[place] = child;
      place = below;
    }
    turns[place] = last;
    return first.turn;
  }
}

type Offered = { readonly turn: Turn; readonly order: number } | undefined;

function isBefore(one: Offered, other: Offered): boolean {
  if (!one || !other) return other === undefined && one !== undefined;
  return one.turn.worth > other.turn.worth || (one.turn.worth === other.turn.worth && one.order < other.order);
}
