import { InvalidProblem } from '../../platform/problem.ts';
import { percent } from './reason-words.ts';
import type { Impossibility } from './impossible.ts';
import type { Obstacle, PairPlace } from './plan-problem.ts';
import type { PlanRequest } from './plan.dto.ts';
import { say } from '../../platform/say.ts';

/** What a plan was asked for, and how animals are called. */
export interface AskedPlan {
  readonly request: PlanRequest;
  readonly fixed: readonly PairPlace[];
  readonly nameOf: (side: 'male' | 'female', place: number) => string;
}

/** 422: no plan can fulfil the conditions; says which one and what would help. */
export function impossiblePlan(why: Impossibility, asked: AskedPlan): InvalidProblem {
  const { pointer, detail } = inWords(why, asked);
  return new InvalidProblem(detail, [{ pointer, detail }], { condition: why.condition });
}

/** 422: the time was over before any plan was found. */
export function noPlanInTime({ seconds }: PlanRequest): InvalidProblem {
  const detail = say`No plan was found within ${seconds} seconds. Allow more seconds, or name fewer animals.`;
  return new InvalidProblem(detail, [{ pointer: '/seconds', detail }]);
}

function inWords(why: Impossibility, asked: AskedPlan): { pointer: string; detail: string } {
  const { request } = asked;
  switch (why.condition) {
    case 'fixed-pair':
      return fixedInWords(why.pair, why.obstacle, asked);
    case 'fixed-count':
      return {
        pointer: '/fixed',
        detail: say`${why.fixed} pairs are fixed, but only ${pairs(why.most)} wanted. Ask for more pairs, or fix fewer.`,
      };
    case 'fixed-uses':
      return {
        pointer: '/fixed',
        detail: say`${asked.nameOf(why.side, why.place)} is in ${why.fixed} fixed pairs, but may be used ${times(why.most)}. Let it be used more often, or fix fewer.`,
      };
    case 'fixed-moves':
      return {
        pointer: '/movesMost',
        detail: say`${why.fixed} of the fixed pairs have animals of two keepers, but only ${why.most} may. Allow more moves, or fix other pairs.`,
      };
    case 'together':
      return {
        pointer: '/pairings',
        detail: say`No plan fulfils all conditions together, though none of them was found to stand against it by itself. Ask for fewer pairs, or loosen one of them.`,
      };
    case 'reserve':
      return {
        pointer: '/reserve',
        detail: say`${request.reserve} old animals that have not bred are to be in the plan, but of the ${why.before} that there are at most ${why.most} can be. Ask for ${why.most}.`,
      };
    default:
      return countedInWords(why, request);
  }
}

function fixedInWords(pair: PairPlace, obstacle: Obstacle, asked: AskedPlan): { pointer: string; detail: string } {
  const { nameOf, request, fixed } = asked;
  const place = fixed.findIndex(({ male, female }) => male === pair.male && female === pair.female);
  const both = say`${nameOf('male', pair.male)} and ${nameOf('female', pair.female)}`;
  const words: Readonly<Record<Obstacle, string>> = {
    unused: say`${both} are fixed, but one of them may not be used. Let it be used, or fix another pair.`,
    'above-limit': say`The young of ${both} would have F above the limit of ${percent(request.inbreedingTo)}. Fix another pair, raise the limit, or allow fixed pairs above the limit.`,
    forbidden: say`${both} are fixed, and may not be paired: the pair is forbidden, or neither is of this line.`,
    'kept-together': say`${both} have different keepers, one of whom keeps their animals together. Fix another pair, or let the keeper's animals be paired with others'.`,
  };
  return { pointer: `/fixed/${place}`, detail: words[obstacle] };
}

function countedInWords(
  why: Extract<Impossibility, { most: number; before: number }>,
  request: PlanRequest,
): { pointer: string; detail: string } {
  const wanted = say`${pairs(request.pairings)} wanted, but`;
  const fewer =
    why.most === 0 ? '' : say` Ask for ${why.most === 1 ? say`one pair` : say`${why.most} pairs`} at most, or`;
  const or = (remedy: string): string =>
    fewer === '' ? ` ${remedy}` : `${fewer} ${remedy.charAt(0).toLowerCase()}${remedy.slice(1)}`;
  const only = why.most === 0 ? say`leaves none` : say`leaves ${why.most} at most`;
  switch (why.condition) {
    case 'males':
    case 'females':
      return {
        pointer: '/pairings',
        detail: say`${wanted} the ${why.before} ${why.condition} that may breed can be used ${times(why.most)} in all.${or(say`Let animals be used more often.`)}`,
      };
    case 'uses':
      return {
        pointer: '/usesMost',
        detail: say`${wanted} how often each animal may be used ${only}.${or(say`Let animals be used more often.`)}`,
      };
    case 'above-limit':
      return {
        pointer: '/inbreedingTo',
        detail: say`${wanted} the limit of F, ${percent(request.inbreedingTo)}, ${only}; without it there are ${why.before}.${or(say`Raise the limit, let animals be used more often, or bring in unrelated ones.`)}`,
      };
    case 'forbidden':
      return {
        pointer: '/forbidden',
        detail: say`${wanted} the forbidden pairs leave ${why.most === 0 ? 'none' : say`${why.most} at most`}; without them there are ${why.before}.${or(say`Forbid fewer.`)}`,
      };
    case 'kept-together':
      return {
        pointer: '/keptTogether',
        detail: say`${wanted} what keepers keep together ${only}; without that there are ${why.before}.${or(say`Let a keeper's animals be paired with others'.`)}`,
      };
    default:
      return {
        pointer: '/movesMost',
        detail: say`${wanted} with ${request.movesMost ?? 0} moves between keepers there are ${why.most} at most; without that limit ${why.before}.${or(say`Allow more moves.`)}`,
      };
  }
}

function pairs(count: number): string {
  return count === 1 ? say`1 pair is` : say`${count} pairs are`;
}

function times(count: number): string {
  return count === 1 ? 'once' : say`${count} times`;
}
