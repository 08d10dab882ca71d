import { addDays, isDay, later, middleOf } from './calendar.ts';
import { diceFor, type Dice } from './dice.ts';
import type { Animal, Draft } from './draft.ts';
import type { RangePlan, Remark } from './plan.ts';

/** The remarks that are told, and those that keepers make as a matter of course: sizes of breeders and of froglets, calling. */
export function makeRemarks(draft: Draft): Remark[] {
  const told = draft.plan.lines.flatMap((line) => line.remarks);
  const usual = [...draft.animals.values()].flatMap((animal) => [
    ...measureBreeder(animal, draft.plan.today),
    ...measureFroglet(animal, draft.plan.today),
    ...hearMale(animal, draft.plan.today),
  ]);
  return [...told, ...usual];
}

/** Breeders are measured once, some months after they joined a group, when they are grown up. */
function measureBreeder(animal: Animal, today: string): Remark[] {
  const stay = animal.stays.at(-1);
  const dice = diceFor(`size of ${animal.code}`);
  if (!stay || animal.sex === 'unsexed' || !dice.chance(0.6)) return [];
  const grownUp = addDays(animal.bornAbout, Math.round(30.4 * (animal.species.ranges.maturity.usual[1] ?? 14)));
  const on = addDays(later(middleOf(stay.joined), grownUp), dice.whole(20, 120));
  if (on > today || on < '2001-06' || isAfterEnd(animal, on)) return [];
  const range = animal.species.ranges[animal.sex === 'male' ? 'snout-vent-male' : 'snout-vent-female'];
  return [measurement(animal, on, lengthIn(dice, range, 0.2, 0.9), dice)];
}

/** Young of the last three years are measured at half a year. */
function measureFroglet(animal: Animal, today: string): Remark[] {
  const on = addDays(animal.bornAbout, 190);
  const dice = diceFor(`froglet ${animal.code}`);
  if (animal.outOfWater === null || on < '2023-06' || on > today || on <= animal.outOfWater || isAfterEnd(animal, on))
    return [];
  if (!dice.chance(0.5)) return [];
  const range = animal.species.ranges['snout-vent-male'];
  return [measurement(animal, on, Math.round(lengthIn(dice, range, 0, 0.4) * 6.5) / 10, dice)];
}

function hearMale(animal: Animal, today: string): Remark[] {
  const dice = diceFor(`voice of ${animal.code}`);
  if (animal.sex !== 'male' || !isDay(animal.hatched ?? '') || !dice.chance(0.35)) return [];
  const on = addDays(
    animal.bornAbout,
    Math.round(30.4 * (animal.species.ranges.maturity.usual[1] ?? 12)) + dice.whole(0, 90),
  );
  if (on > today || isAfterEnd(animal, on)) return [];
  const text = dice.pick([
    'Heard calling for the first time.',
    'Calls in the morning.',
    'Calls after misting.',
    'Calls, short and low.',
  ]);
  return [{ about: animal.code, on, kind: 'behaviour', text, keeper: animal.keeper }];
}

/** Animals that left are not looked at any more; of a death only what lies before it is told. */
function isAfterEnd(animal: Animal, on: string): boolean {
  if (animal.status === 'died') return animal.died === null || on >= animal.died.slice(0, 4);
  return animal.status !== 'alive' && animal.stays.at(-1) === undefined;
}

function measurement(animal: Animal, on: string, svlMm: number, dice: Dice): Remark {
  // A frog weighs about a ten-thousandth of a gram for each cubic millimetre of its length cubed (common practice, no source).
  const massG = Math.round(svlMm ** 3 * dice.real(0.00009, 0.00012) * 100) / 100;
  return { about: animal.code, on, kind: 'measurement', svlMm, massG, keeper: animal.keeper };
}

function lengthIn(dice: Dice, range: RangePlan, from: number, to: number): number {
  const [least, most] = range.usual;
  const low = least ?? 15;
  return Math.round((low + ((most ?? low) - low) * dice.real(from, to)) * 10) / 10;
}
