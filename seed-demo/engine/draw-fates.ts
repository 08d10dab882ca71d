import { addDays, addYears, boundsOf, later, middleOf } from './calendar.ts';
import { diceFor, type Dice } from './dice.ts';
import type { Animal, Draft } from './draft.ts';

/** Lets each animal die, leave the circle or live on, so that nothing the scenario tells of it is contradicted. */
export function drawFates(draft: Draft): void {
  for (const animal of draft.animals.values()) {
    const told = animal.line.fates[animal.code];
    if (!told) {
      drawFate(animal, draft.plan.today);
      continue;
    }
    animal.status = told.status;
    animal.notes = joinNotes(animal.notes, told.notes);
    if (told.status === 'died') animal.died = told.died;
    endStays(animal);
  }
}

function drawFate(animal: Animal, today: string): void {
  const lastStay = animal.stays.at(-1);
  if (lastStay && lastStay.left === null) return;
  const dice = diceFor(`fate of ${animal.code}`);
  const [shortest, longest] = animal.species.ranges.lifespan.usual;
  const lifeEnds = addYears(animal.bornAbout, dice.real(shortest ?? 5, longest ?? 10));
  const needed = lastStay?.left ? middleOf(lastStay.left) : (animal.outOfWater ?? addDays(animal.bornAbout, 120));
  const lot = dice.real(0, 1);
  if (lifeEnds <= today)
    liveOut(animal, dice, lot, later(lifeEnds, addDays(needed, dice.whole(10, 200))), needed, today);
  else if (lot < (lastStay ? 0.2 : 0.3)) leave(animal, dice, needed, today);
  else if (!lastStay && lot < 0.4) die(animal, addDays(needed, dice.whole(5, 300)), today);
}

/** The lot of an animal that has outlived its time by today. */
function liveOut(animal: Animal, dice: Dice, lot: number, end: string, needed: string, today: string): void {
  if (lot < 0.3) leave(animal, dice, needed, today);
  else if (lot < 0.37) {
    animal.status = 'unknown';
    animal.notes = joinNotes(animal.notes, `Not reported since ${needed.slice(0, 4)}.`);
  } else die(animal, end, today);
}

function leave(animal: Animal, dice: Dice, needed: string, today: string): void {
  const when = addDays(needed, dice.whole(60, 240));
  if (when > today) return;
  animal.status = 'gone';
  animal.notes = joinNotes(animal.notes, `Passed on outside the circle, ${when.slice(0, 4)}.`);
}

/** Deaths of the early years are known to the month at best. */
function die(animal: Animal, day: string, today: string): void {
  if (day > today) return;
  animal.status = 'died';
  const year = Number(day.slice(0, 4));
  animal.died = year < 2005 ? day.slice(0, 4) : year < 2011 ? day.slice(0, 7) : day;
}

/** A group is left on the day of death. */
function endStays(animal: Animal): void {
  const end = animal.died;
  if (end === null) return;
  for (const stay of animal.stays) {
    const left = stay.left === null ? 'infinity' : boundsOf(stay.left).latest;
    if (left > boundsOf(end).latest) stay.left = end;
  }
}

const joinNotes = (before: string | null, more: string | undefined): string | null =>
  [before, more].filter((text) => text).join(' ') || null;
