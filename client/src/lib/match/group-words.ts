import type { Group } from '../api/types.ts';
import { counted, percent, percentRange } from '../ui/figures.ts';
import { word } from '../words/word.ts';

type Score = NonNullable<Group['score']>;

/** F of the young of a group; never 0 where nothing is known of any pair. */
export function groupInbreedingInWords({ inbreeding, pairs, nothingKnown }: Score): string {
  return nothingKnown === pairs ? 'nothing known' : percent(inbreeding.expected);
}

/** What belongs beside it: its range over the pairs, and of how many of them nothing is known. Empty where there is nothing to say. */
export function groupRangeInWords({ inbreeding: { least, greatest }, pairs, nothingKnown }: Score): string {
  const range = greatest - least > 1e-9 ? percentRange(least, greatest) : '';
  if (nothingKnown === 0 || nothingKnown === pairs) return range;
  const blind = `nothing known of ${counted(nothingKnown, ['pair', 'pairs'])}`;
  return range === '' ? blind : `${range}, ${blind}`;
}

/** What young of a group would be, in a sentence: `2.3, six pairs: the young are 4.1 % inbred …`. */
export function scoreInWords({ males, females, score }: Pick<Group, 'males' | 'females' | 'score'>): string {
  if (!score) {
    const missing = males.length === 0 ? word('male') : word('female');
    return `There is no ${missing} among them: add one to score the group.`;
  }
  const kinship = score.youngMeanKinship;
  if (kinship === null) return `${youngInWords(males.length, females.length, score)}.`;
  return `${youngInWords(males.length, females.length, score)}; their mean kinship with the line ${percent(kinship)}.`;
}

function youngInWords(males: number, females: number, score: Score): string {
  const { expected, least, greatest } = score.inbreeding;
  const pairs = counted(score.pairs, ['pair', 'pairs']);
  const blind = score.nothingKnown;
  if (blind === score.pairs) return `${males}.${females}, ${pairs}: nothing is known of the inbreeding of the young`;
  const young =
    greatest - least > 1e-9
      ? `${males}.${females}, ${pairs}: the young would be ${percent(expected)} inbred, ${percentRange(least, greatest)} by who breeds with whom`
      : `${males}.${females}, ${pairs}: the young would be ${percent(expected)} inbred`;
  return blind === 0 ? young : `${young}, with nothing known of ${counted(blind, ['pair', 'pairs'])}`;
}
