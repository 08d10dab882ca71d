import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { chooseGroup, choices, CHOICES_MOST } from './group-choice.ts';
import { GroupFigures } from './group-scores.ts';
import type { GroupRequest } from './groups.dto.ts';
import type { GroupScoreView } from './groups.view.ts';
import { say } from '../../platform/say.ts';

/** The best group of a size. */
export interface BestGroup {
  readonly males: readonly number[];
  readonly females: readonly number[];
  readonly score: GroupScoreView;
  /** How many of its pairs a warning is due for: none, unless the limit of F was raised. */
  readonly pairsAbove: number;
}

/**
 * The best group of the size that a request asks for.
 *
 * @param males those that may breed
 * @returns without a group, why there is none; null too where none was asked for
 */
export function bestGroup(
  snapshot: LineageSnapshot,
  males: readonly number[],
  females: readonly number[],
  request: GroupRequest,
): { group: BestGroup } | { group: null; why: string | null } {
  const { males: sires, females: dams, weight, inbreedingTo } = request;
  if (sires === undefined || dams === undefined) return { group: null, why: null };
  const short = [
    ...(males.length < sires ? [say`${counted(males.length, 'male')} of ${sires}`] : []),
    ...(females.length < dams ? [say`${counted(females.length, 'female')} of ${dams}`] : []),
  ];
  if (short.length > 0) {
    const why = say`Only ${short.join(' and ')} among these animals may breed. Name more, or ask for a smaller group.`;
    return { group: null, why };
  }
  const figures = new GroupFigures(snapshot, males, females, weight);
  const chosen = chooseGroup(figures, sires, dams, weight, inbreedingTo);
  const score = chosen && figures.score(chosen.males, chosen.females);
  if (!chosen || !score) {
    const why = say`Every group of ${sires}.${dams} of these animals has a pair whose young would have F above the limit of ${percent(inbreedingTo)}. Name others, ask for a smaller group, or raise the limit.`;
    return { group: null, why };
  }
  const at = (animals: readonly number[], places: readonly number[]): number[] =>
    places.map((place) => animals[place] ?? -1);
  const pairsAbove = figures.pairsAbove(chosen.males, chosen.females, warnedAbove(request));
  return { group: { males: at(males, chosen.males), females: at(females, chosen.females), score, pairsAbove } };
}

/**
 * Refuses half a size, and what would take too long.
 *
 * @param males how many there are to choose from
 * @throws InvalidProblem
 */
export function requireSize(request: GroupRequest, males: number, females: number): void {
  const { males: wantedMales, females: wantedFemales } = request;
  if ((wantedMales === undefined) !== (wantedFemales === undefined)) {
    const missing = wantedMales === undefined ? 'males' : 'females';
    throw new InvalidProblem(say`The size of the group is only half said.`, [
      {
        pointer: `/${missing}`,
        detail: say`must be given too, so that it is known how many ${missing} the group shall have`,
      },
    ]);
  }
  if (wantedMales === undefined || wantedFemales === undefined) return;
  if (Math.min(choices(males, wantedMales), choices(females, wantedFemales)) > CHOICES_MOST)
    throw new InvalidProblem(say`There are too many ways to choose this group.`, [
      { pointer: '/individuals', detail: say`must name fewer animals, or ask for a smaller group` },
    ]);
}

const counted = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;

/** F of the young of half-sibs. */
const HALF_SIBS = 0.125;

/** F above which pairs carry a warning: the limit asked for, but never more than that of half-sibs. */
export const warnedAbove = ({ inbreedingTo }: GroupRequest): number => Math.min(inbreedingTo, HALF_SIBS);

/** `12.5 %` of 0.125. */
export const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;
