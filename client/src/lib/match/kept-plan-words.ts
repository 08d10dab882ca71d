import type { FlagSeverity } from '$shared/vocabulary.ts';
import type { KeptPlan, KeptPlanItem, KeptPlanPair } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { counted, percent } from '../ui/figures.ts';
import { allOf } from '../ui/listed.ts';
import { word } from '../words/word.ts';

type Assumptions = KeptPlan['assumptions'];
type Leave = KeptPlanPair['now']['needs'][number];

/** What a plan was asked to be, in one sentence. */
export function assumptionsInWords(asked: Assumptions, lineName: string): string {
  const among =
    asked.individuals === null
      ? `among the living of ${lineName}`
      : `among ${counted(asked.individuals.length, ['animal', 'animals'])}`;
  return `${[
    `${counted(asked.pairings, ['pair', 'pairs'])} ${among}`,
    ...(asked.also.length > 0 ? [`with ${counted(asked.also.length, ['animal', 'animals'])} of other lines`] : []),
    `F of the young at most ${percent(asked.inbreedingTo)}`,
    `weight ${asked.weight}`,
    `each animal in ${counted(asked.usesMost, ['pair', 'pairs'])} at most`,
    ...asked.uses.map(({ animal, most }) => `${referenceName(animal)} in ${most === 0 ? word('none') : most}`),
    ...(asked.movesMost === null ? [] : [`${counted(asked.movesMost, ['pair', 'pairs'])} of two keepers at most`]),
    ...(asked.reserve > 0
      ? [`${counted(asked.reserve, ['old animal', 'old animals'])} that had not bred at least`]
      : []),
    ...(asked.keptTogether.length > 0
      ? [`the animals of ${allOf(asked.keptTogether.map(({ name }) => name))} among themselves`]
      : []),
    ...pairsInWords(asked.fixed, 'with'),
    ...pairsInWords(asked.forbidden, 'without'),
    ...asked.allow.map((leave) => allowed[leave]),
  ].join(', ')}.`;
}

function pairsInWords(pairs: Assumptions['fixed'], word: string): string[] {
  if (pairs.length === 0) return [];
  const names = pairs.slice(0, 4).map(({ male, female }) => `${referenceName(male)} × ${referenceName(female)}`);
  const more = pairs.length - names.length;
  return [`${word} ${names.join(', ')}${more > 0 ? ` and ${more} more` : ''}`];
}

const allowed: Readonly<Record<Leave, string>> = {
  'cross-lines': 'other lines allowed where they were named',
  'above-limit': 'fixed pairs allowed above the limit',
  disputed: 'disputed labels allowed',
};

/** What has to be ticked to accept pairs in spite of something. */
export const leaveWords: Readonly<Record<Leave, string>> = {
  'cross-lines': 'although the young would be of no line',
  'above-limit': 'although F of the young is above the limit of the plan',
  disputed: 'although a label is disputed',
};

/** The mark beside what changed under a plan. */
export const sinceMarks: Readonly<Record<KeptPlan['since']['word'], FlagSeverity | null>> = {
  unchanged: null,
  holds: null,
  differs: 'worth-knowing',
  broken: 'breaks',
};

/** How far a plan has come: "2 of 6 pairs accepted, 1 declined". */
export function progressInWords({ proposed, accepted, declined }: KeptPlanItem['pairCounts']): string {
  const all = proposed + accepted + declined;
  if (accepted + declined === 0) return `${counted(all, ['pair', 'pairs'])}, none decided`;
  const pairs = counted(all, ['pair', 'pairs']);
  return declined > 0 ? `${accepted} of ${pairs} accepted, ${declined} declined` : `${accepted} of ${pairs} accepted`;
}

/** The two of a pair, as a sentence names them. */
export const pairName = ({ male, female }: Pick<KeptPlanPair, 'male' | 'female'>): string =>
  `${referenceName(male.animal)} and ${referenceName(female.animal)}`;
