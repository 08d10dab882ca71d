import type { Alternative } from './alternatives.ts';
import type { ChosenPair, LeftOut, MateRank } from './reasons.ts';
import { say } from '../../platform/say.ts';

/** How the animals of a plan are called, by side and place. */
export type NameOf = (side: 'male' | 'female', place: number) => string;

/**
 * Why a pair is in a plan, in sentences.
 *
 * @param limit of F of the young, 0 to 1
 */
export function whyChosen(pair: ChosenPair, limit: number, nameOf: NameOf): string[] {
  if (pair.isFixed) return [say`The request fixed it.`];
  const [male, female] = [nameOf('male', pair.male), nameOf('female', pair.female)];
  return [
    rankInWords(male, pair.forMale, (mate) => nameOf('female', mate)),
    ...aboveLimitInWords(male, pair.forMale, limit, (mate) => nameOf('female', mate)),
    rankInWords(female, pair.forFemale, (mate) => nameOf('male', mate)),
    ...aboveLimitInWords(female, pair.forFemale, limit, (mate) => nameOf('male', mate)),
    ...alternativeInWords(pair.without, say`Without this pair`),
  ];
}

function rankInWords(animal: string, { rank, of, bestOther }: MateRank, nameOf: (mate: number) => string): string {
  if (of === 1) return say`It is the only mate that ${animal} may have.`;
  const place = rank === 1 ? say`No mate is better` : say`${rank - 1} of ${of} mates would be better`;
  if (bestOther === null) return say`${place} for ${animal}; all its mates are in the plan.`;
  const other = nameOf(bestOther.mate);
  const difference = figure(Math.abs(bestOther.difference));
  const much =
    difference === '0'
      ? say`would add as much`
      : say`would add ${difference} ${bestOther.difference < 0 ? 'less' : 'more'}`;
  const spent = bestOther.isSpent ? say`, and is used with others in this plan` : '';
  return say`${place} for ${animal}; the best other, ${other}, ${much}${spent}.`;
}

/** That a better mate was passed over, since the young would be above the limit. */
function aboveLimitInWords(
  animal: string,
  { aboveLimit }: MateRank,
  limit: number,
  nameOf: (mate: number) => string,
): string[] {
  if (!aboveLimit) return [];
  const less = figure(-aboveLimit.difference);
  return [
    say`${nameOf(aboveLimit.mate)} would add ${less} less for ${animal}, but F of their young would be ${percent(aboveLimit.kinship)}, above the limit of ${percent(limit)}.`,
  ];
}

/** Why an animal is in no pair, in a sentence or two. */
export function whyLeftOut(
  animal: LeftOut,
  asked: { readonly pairings: number; readonly inbreedingTo: number },
  nameOf: NameOf,
): string {
  return [
    reasonInWords(animal, asked.pairings, asked.inbreedingTo),
    ...tooCloseInWords(animal, asked.inbreedingTo, nameOf),
    ...alternativeInWords(animal.including, say`With it`),
  ].join(' ');
}

function tooCloseInWords({ side, aboveLimit }: LeftOut, limit: number, nameOf: NameOf): string[] {
  if (!aboveLimit) return [];
  const mate = nameOf(side === 'male' ? 'female' : 'male', aboveLimit.mate);
  return [
    say`${mate} would be its best mate, but F of their young would be ${percent(aboveLimit.kinship)}, above the limit of ${percent(limit)}.`,
  ];
}

function reasonInWords({ reason, obstacles, leastKinship, mates }: LeftOut, pairings: number, limit: number): string {
  const all = say`the ${pairings === 1 ? say`one pair` : say`${pairings} pairs`} wanted`;
  switch (reason) {
    case 'unused':
      return say`The request leaves it out.`;
    case 'no-mate':
      return noMateInWords(obstacles, leastKinship, limit);
    case 'mates-spent':
      return say`${mates === 1 ? say`The only mate that it may have is` : say`All ${mates} mates that it may have are`} used as often as may be.`;
    case 'moves-spent':
      return say`It or its mate would have to move, and no more moves are allowed.`;
    case 'as-good':
      return say`Others make up ${all}; a plan with it would be as good.`;
    case 'higher-mean-kinship':
      return say`Its mean kinship is higher than that of every animal of its sex in the plan.`;
    case 'dearer':
      return say`Others make up ${all} with a smaller sum.`;
  }
}

function noMateInWords(obstacles: LeftOut['obstacles'], leastKinship: number | null, limit: number): string {
  const parts = [
    obstacles['above-limit'] > 0
      ? say`${obstacles['above-limit']} above the limit of F, ${percent(limit)} (the least related of all has ${percent(leastKinship ?? 0)})`
      : '',
    obstacles.forbidden > 0 ? say`${obstacles.forbidden} not to be paired with it` : '',
    obstacles['kept-together'] > 0 ? say`${obstacles['kept-together']} of keepers whose animals stay together` : '',
    obstacles.unused > 0 ? say`${obstacles.unused} that are not used` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? say`There is no mate for it.` : say`It may have no mate: ${parts.join(', ')}.`;
}

function alternativeInWords(alternative: Alternative, what: string): string[] {
  if (alternative === null) return [];
  if (alternative === 'impossible') return [say`${what} there is no plan under these conditions.`];
  if (alternative.isExact && figure(alternative.extra) === '0') return [say`${what} the best plan is as good.`];
  return [
    say`${what} the sum would be ${alternative.isExact ? '' : say`at least `}${figure(alternative.extra)} greater.`,
  ];
}

/** Three digits; what is less than the optimum can be told apart by is nothing. */
function figure(value: number): string {
  return (Math.abs(value) < 1e-10 ? 0 : value)
    .toPrecision(3)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}

/** `12.5 %` of 0.125; what is not zero never reads as zero. */
export function percent(share: number): string {
  const value = share * 100;
  return `${Number(Math.abs(value) >= 0.1 ? value.toFixed(1) : value.toPrecision(1))} %`;
}
