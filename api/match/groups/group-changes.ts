import type { RecordNames } from '../../lineage/record-names.ts';
import type { GroupFigures } from './group-scores.ts';
import type { GroupChangeView, GroupScoreView } from './groups.view.ts';

/** Most additions that are told. */
const TOLD_MOST = 10;

/** The animals of a group, then those that might join it, in the order in which figures hold them. */
export interface NamedSides {
  readonly names: RecordNames;
  readonly males: readonly number[];
  readonly females: readonly number[];
  readonly maleOthers: readonly number[];
  readonly femaleOthers: readonly number[];
}

/** What a group would be without each of its animals, the best first; those it would lose a side with are left out. */
export function removals(
  figures: GroupFigures,
  { names, males, females }: NamedSides,
  score: GroupScoreView | null,
): GroupChangeView[] {
  const [sires, dams] = [[...males.keys()], [...females.keys()]];
  const change = changeFrom(names, score);
  return bestFirst(score, [
    ...males.flatMap((animal, place) => change(animal, figures.score(without(sires, place), dams))),
    ...females.flatMap((animal, place) => change(animal, figures.score(sires, without(dams, place)))),
  ]);
}

/**
 * What a group would be with one more, the best first, then those of which nothing is recorded.
 *
 * @param most additions that would be related above it to a mate in the group are left out, 0 to 1
 */
export function additions(
  figures: GroupFigures,
  { names, males, females, maleOthers, femaleOthers }: NamedSides,
  score: GroupScoreView | null,
  most: number,
): GroupChangeView[] {
  const [sires, dams] = [[...males.keys()], [...females.keys()]];
  const change = changeFrom(names, score);
  return bestFirst(score, [
    ...maleOthers.flatMap((animal, at) => {
      const place = males.length + at;
      return figures.exceeds([place], dams, most) ? [] : change(animal, figures.score([...sires, place], dams));
    }),
    ...femaleOthers.flatMap((animal, at) => {
      const place = females.length + at;
      return figures.exceeds(sires, [place], most) ? [] : change(animal, figures.score(sires, [...dams, place]));
    }),
  ]).slice(0, TOLD_MOST);
}

function changeFrom(
  names: RecordNames,
  score: GroupScoreView | null,
): (animal: number, after: GroupScoreView | null) => GroupChangeView[] {
  return (animal, after) =>
    after && score ? [{ animal: names.refOf(animal), after, gain: score.cost - after.cost }] : [];
}

const without = (places: readonly number[], place: number): number[] => places.filter((other) => other !== place);

/** What gains only by what nobody knows comes behind everything else. */
const bestFirst = (score: GroupScoreView | null, changes: GroupChangeView[]): GroupChangeView[] => {
  const isBlind = ({ after }: GroupChangeView): number => (after.nothingKnown > (score?.nothingKnown ?? 0) ? 1 : 0);
  return changes.sort(
    (one, other) =>
      isBlind(one) - isBlind(other) ||
      other.gain - one.gain ||
      (one.animal.number ?? '').localeCompare(other.animal.number ?? ''),
  );
};
