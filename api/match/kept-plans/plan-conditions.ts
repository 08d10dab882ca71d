import type { PlanRecord } from '../plan/plan-record.ts';
import type { PlanRequest } from '../plan/plan.dto.ts';
import type { PairToday } from './pairs-today.ts';
import { say } from '../../platform/say.ts';

/** The assumptions that are held against the register of today. */
export const planConditions = ['pairs', 'inbreeding', 'lines', 'labels', 'moves', 'kept-together', 'reserve'] as const;
export type PlanConditionCode = (typeof planConditions)[number];

/** Whether one of them is met. */
export interface PlanCondition {
  readonly condition: PlanConditionCode;
  readonly isMet: boolean;
  readonly detail: string;
}

/**
 * Whether the pairs of a plan that were not declined meet its assumptions today. What the plan was allowed to do when it was made does not
 * count against it.
 */
export function conditionsOf(request: PlanRequest, record: PlanRecord, all: readonly PairToday[]): PlanCondition[] {
  const pairs = all.filter(({ row }) => row.state !== 'declined');
  const open = pairs.filter(({ row }) => row.state === 'proposed');
  return [
    possible(pairs, open, all.length > pairs.length),
    limit(request, record, open),
    lines(request, open),
    labels(request, open),
    ...(request.movesMost === null ? [] : [movesOf(request.movesMost, pairs)]),
    ...(request.keptTogether.length === 0 ? [] : [together(request.keptTogether, open)]),
    ...(request.reserve === 0 ? [] : [reserve(request.reserve, pairs)]),
  ];
}

function possible(pairs: readonly PairToday[], open: readonly PairToday[], isCut: boolean): PlanCondition {
  const stopped = open.filter(({ stops }) => stops).length;
  const its = say`its ${counted(pairs.length, 'pair')}${isCut ? say` that were not declined` : ''}`;
  const detail = stopped === 0 ? say`All of ${its} can be made.` : say`Of ${its}, ${stopped} cannot be made any more.`;
  return { condition: 'pairs', isMet: stopped === 0, detail };
}

function limit({ inbreedingTo, allow }: PlanRequest, { plan }: PlanRecord, open: readonly PairToday[]): PlanCondition {
  const isAllowed = ({ row }: PairToday): boolean =>
    allow.includes('above-limit') && plan.pairs[row.place]?.isFixed === true;
  const above = open.filter((pair) => pair.leaves.includes('above-limit') && !isAllowed(pair)).length;
  const detail =
    above === 0
      ? say`F of the young stays within ${inbreedingTo}.`
      : say`F of the young of ${counted(above, 'pair')} would be above ${inbreedingTo}.`;
  return { condition: 'inbreeding', isMet: above === 0, detail };
}

function lines({ allow }: PlanRequest, open: readonly PairToday[]): PlanCondition {
  const crossing = open.filter(({ leaves, wasForeign }) => leaves.includes('cross-lines') && !wasForeign).length;
  const ofOne = allow.includes('cross-lines')
    ? say`No pair crosses lines but as it was planned.`
    : say`No pair crosses lines.`;
  const detail = crossing === 0 ? ofOne : say`${counted(crossing, 'pair')} would cross lines.`;
  return { condition: 'lines', isMet: crossing === 0, detail };
}

function labels({ allow }: PlanRequest, open: readonly PairToday[]): PlanCondition {
  const disputed = open.filter(({ leaves }) => leaves.includes('disputed')).length;
  if (disputed === 0) return { condition: 'labels', isMet: true, detail: say`No label in it is disputed.` };
  const detail = say`The label of ${counted(disputed, 'pair')} is disputed.`;
  return { condition: 'labels', isMet: allow.includes('disputed'), detail };
}

function movesOf(most: number, pairs: readonly PairToday[]): PlanCondition {
  const moving = pairs.filter(({ isMove }) => isMove).length;
  const detail = say`${counted(moving, 'pair')} of two keepers, at most ${most} were wanted.`;
  return { condition: 'moves', isMet: moving <= most, detail };
}

function together(keepers: readonly string[], open: readonly PairToday[]): PlanCondition {
  const parted = open.filter(({ isMove, keeperIds }) => isMove && keeperIds.some((id) => keepers.includes(id))).length;
  const detail =
    parted === 0
      ? say`Animals of keepers who keep theirs together stay among themselves.`
      : say`${counted(parted, 'pair')} would take an animal from a keeper who keeps theirs together.`;
  return { condition: 'kept-together', isMet: parted === 0, detail };
}

function reserve(least: number, pairs: readonly PairToday[]): PlanCondition {
  const old = new Set(pairs.flatMap(({ reserveIds }) => reserveIds)).size;
  const words = old === 1 ? say`1 old animal that has not bred is` : say`${old} old animals that have not bred are`;
  const detail = say`${words} in it, at least ${least} were wanted.`;
  return { condition: 'reserve', isMet: old >= least, detail };
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
