import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { InbreedingRange } from '../../lineage/kernel/inbreeding.ts';
import type { ExclusionReason } from '../breeders.ts';
import type { RecordedAnimal } from '../plan/plan-record.ts';
import type { PlanLeave } from '../plan/plan.dto.ts';
import type { Side } from '../plan/reasons.ts';
import type { AnimalNow } from './animals-now.queries.ts';
import { say, together } from '../../platform/say.ts';

/** What can be otherwise than when a plan was made. */
export const pairChangeKinds = [
  'withdrawn',
  'merged',
  'not-living',
  'sex',
  'species',
  'keeper-left',
  'too-young',
  'beyond-lifespan',
  'keeper',
  'line',
  'label',
  'housed',
  'bred',
  'inbreeding',
  'pairing-withdrawn',
] as const;
export type PairChangeKind = (typeof pairChangeKinds)[number];

/** A change; `animalId` is null for one of the pair. */
export interface PairChange {
  readonly kind: PairChangeKind;
  readonly animalId: string | null;
  readonly before: string | null;
  readonly after: string | null;
  readonly text: string;
  readonly stops: boolean;
}

/** What is known of an animal of a pair today. */
export interface AnimalFacts {
  readonly side: Side;
  readonly then: RecordedAnimal;
  /** Undefined where whoever asks may not see it: then nothing is told of it. */
  readonly now: AnimalNow | undefined;
  readonly name: string;
  /** Why it may not breed today, disputed labels apart. */
  readonly reason: ExclusionReason | null;
  readonly isDisputed: boolean;
  readonly hasBred: boolean;
  /** The pairings that it lives in today, the pair's own apart, as far as they may be seen. */
  readonly livesIn: readonly { readonly id: string; readonly name: string }[];
  /** Names of those that it did not live in then. */
  readonly housedSince: readonly string[];
}

const change = (
  kind: PairChangeKind,
  { then }: AnimalFacts,
  text: string,
  more: Partial<Pick<PairChange, 'before' | 'after' | 'stops'>> = {},
): PairChange => ({ kind, animalId: then.id, before: null, after: null, stops: false, ...more, text });

const ended = {
  died: 'died',
  gone: say`left the club`,
  unknown: say`may live or not: nobody knows`,
  alive: 'lives',
} as const;

/** What is otherwise with one animal than when the plan was made. */
export function changesOfAnimal(facts: AnimalFacts, keeperThen: string): PairChange[] {
  const { now, name } = facts;
  if (!now) return [];
  if (now.isWithdrawn) return [withdrawn(facts, now)];
  return [...hindrances(facts, now), ...moves(facts, now, keeperThen), ...news(facts, name)];
}

function withdrawn(facts: AnimalFacts, { isMerged, mergedInto }: AnimalNow): PairChange {
  const { name } = facts;
  if (!isMerged) return change('withdrawn', facts, say`${name} was withdrawn from the register.`, { stops: true });
  const into = mergedInto === null ? say`another record` : formatRegistryNumber(mergedInto);
  const text = say`${name} was merged into ${into}, which is the same animal. Make the plan anew with that one.`;
  return change('merged', facts, text, { stops: true, after: mergedInto === null ? null : into });
}

function hindrances(facts: AnimalFacts, now: AnimalNow): PairChange[] {
  const { name, reason, side } = facts;
  const stop = (kind: PairChangeKind, text: string): PairChange[] => [change(kind, facts, text, { stops: true })];
  if (now.sex !== side)
    return [
      change('sex', facts, say`${name} is recorded as ${now.sex} by now.`, {
        before: side,
        after: now.sex,
        stops: true,
      }),
    ];
  switch (reason) {
    case 'not-living':
      return [
        change('not-living', facts, `${name} ${ended[now.status]}.`, {
          before: 'alive',
          after: now.status,
          stops: true,
        }),
      ];
    case 'keeper-left':
      return stop('keeper-left', say`The keeper of ${name} has left the club.`);
    case 'too-young':
      return stop('too-young', say`${name} is younger than its species matures, by what is recorded now.`);
    case 'beyond-lifespan':
      return stop('beyond-lifespan', say`${name} is older than its species is known to live: check whether it does.`);
    default:
      return [];
  }
}

function moves(facts: AnimalFacts, now: AnimalNow, keeperThen: string): PairChange[] {
  const { then, name } = facts;
  const changes: PairChange[] = [];
  if (now.keeperId !== then.keeperId)
    changes.push(
      change('keeper', facts, say`${name} was kept by ${keeperThen} and is kept by ${now.keeper}.`, {
        before: keeperThen,
        after: now.keeper,
      }),
    );
  if (now.lineId !== (then.line?.id ?? null)) {
    const [before, after] = [then.line?.name ?? say`no line`, now.line ?? say`no line`];
    changes.push(change('line', facts, say`${name} was of ${before} and is of ${after}.`, { before, after }));
  }
  return changes;
}

function news(facts: AnimalFacts, name: string): PairChange[] {
  const { then, isDisputed, hasBred, housedSince } = facts;
  return [
    ...(isDisputed && !then.isDisputed
      ? [change('label', facts, say`The label of ${name} is disputed by now.`, { after: 'disputed' })]
      : []),
    ...(!isDisputed && then.isDisputed
      ? [change('label', facts, say`The label of ${name} is not disputed any more.`, { before: 'disputed' })]
      : []),
    ...housedSince.map((pairing) =>
      change('housed', facts, say`${name} lives in “${pairing}” by now.`, { after: pairing }),
    ),
    ...(hasBred && !then.isProven ? [change('bred', facts, say`${name} has bred since.`)] : []),
  ];
}

const ROUNDING = 1e-12;
const differs = (one: number, other: number): boolean => Math.abs(one - other) > ROUNDING;

/** That F of the young is another than then, if it is. */
export function changeOfInbreeding(then: InbreedingRange, now: InbreedingRange | null): PairChange[] {
  if (!now) return [];
  const isOther =
    differs(then.expected, now.expected) || differs(then.least, now.least) || differs(then.greatest, now.greatest);
  if (!isOther) return [];
  const [before, after] = [rangeInWords(then), rangeInWords(now)];
  const text = say`F of the young was ${before} and is ${after}.`;
  return [{ kind: 'inbreeding', animalId: null, before, after, text, stops: false }];
}

/** F as a number with its range, such as "0.125" or "0.125 (0 to 0.25)". */
export function rangeInWords({ expected, least, greatest }: InbreedingRange): string {
  const range = differs(least, greatest) ? say` (${figure(least)} to ${figure(greatest)})` : '';
  return `${figure(expected)}${range}`;
}

const figure = (value: number): string => String(Number(value.toPrecision(4)));

/** A leave that a pair needs, and the warning that it carries. Neither names an animal, so that a pairing may carry it. */
export interface NeededLeave {
  readonly leave: PlanLeave;
  readonly warning: string;
}

/** What stands against a pair unless it is asked for: a cross, F above the limit of the plan, a disputed label. */
export function neededLeaves(
  two: readonly [AnimalFacts, AnimalFacts],
  inbreeding: InbreedingRange | null,
  line: { readonly id: string; readonly name: string },
  inbreedingTo: number,
): NeededLeave[] {
  const lines = two.map(({ now }) => ({ id: now?.lineId ?? null, name: now?.line ?? say`no line` }));
  const isForeign = lines.some(({ id }) => id !== line.id);
  const [one, other] = lines.map(({ name }) => name);
  const isCross = lines[0]?.id !== lines[1]?.id;
  const disputed = two.filter(({ isDisputed }) => isDisputed).map(({ side }) => side);
  const isAbove = (inbreeding?.expected ?? 0) > inbreedingTo + ROUNDING;
  return [
    ...(isForeign
      ? [
          {
            leave: 'cross-lines' as const,
            warning: isCross
              ? say`The young would be a cross of ${one} and ${other}, and belong to neither.`
              : say`The two are of ${one}: their young would not be of ${line.name}.`,
          },
        ]
      : []),
    ...(isAbove
      ? [
          {
            leave: 'above-limit' as const,
            warning: say`F of the young would be ${figure(inbreeding?.expected ?? 0)}, above the limit of the plan, ${inbreedingTo}.`,
          },
        ]
      : []),
    ...(disputed.length > 0
      ? [
          {
            leave: 'disputed' as const,
            warning: say`The label of the ${together(disputed, (names) => names.join(' / '))} is disputed: the young would carry that on.`,
          },
        ]
      : []),
  ];
}
