import type { Group } from '../api/types.ts';
import { counted, percent, percentRange } from '../ui/figures.ts';
import { word } from '../words/word.ts';

/** What young of a group would be, in a sentence: `2.3, six pairs: the young are 4.1 % inbred …`. */
export function scoreInWords({ males, females, score }: Pick<Group, 'males' | 'females' | 'score'>): string {
  if (!score) {
    const missing = males.length === 0 ? word('male') : word('female');
    return `There is no ${missing} among them: add one to score the group.`;
  }
  const { expected, least, greatest } = score.inbreeding;
  const pairs = counted(score.pairs, ['pair', 'pairs']);
  const young =
    greatest - least > 1e-9
      ? `${males.length}.${females.length}, ${pairs}: the young would be ${percent(expected)} inbred, ${percentRange(least, greatest)} by who breeds with whom`
      : `${males.length}.${females.length}, ${pairs}: the young would be ${percent(expected)} inbred`;
  if (score.youngMeanKinship === null) return `${young}.`;
  return `${young}; their mean kinship with the line ${percent(score.youngMeanKinship)}.`;
}
