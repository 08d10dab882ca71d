import { boundsOf, middleOf } from './calendar.ts';
import { animalOf, type Draft, type Stay } from './draft.ts';

/**
 * Puts the animals into their groups. An animal that joins a later group left the one before; it belongs to the keeper of
 * the last group that it joined.
 */
export function houseAnimals(draft: Draft): void {
  for (const group of draft.groups)
    for (const member of group.plan.members) {
      const [code = '', joined = group.plan.since, left = group.plan.until ?? null] = member.split(' ');
      const animal = animalOf(draft, code);
      const stay: Stay = { animal, group, joined, left };
      animal.stays.push(stay);
      group.stays.push(stay);
    }
  for (const animal of draft.animals.values()) {
    animal.stays.sort((a, b) => (middleOf(a.joined) < middleOf(b.joined) ? -1 : 1));
    animal.stays.forEach((stay, index) => {
      const next = animal.stays[index + 1];
      if (next && (stay.left === null || middleOf(stay.left) > middleOf(next.joined))) stay.left = next.joined;
    });
    animal.keeper = animal.stays.at(-1)?.group.plan.keeper ?? animal.keeper;
  }
}

/** Whether an animal may have been housed in a group on a date, vague dates taken as wide as they are. */
export function isHousedOn(stay: Stay, date: string): boolean {
  const on = boundsOf(date);
  const beganBefore = boundsOf(stay.joined).earliest <= on.latest;
  return beganBefore && (stay.left === null || boundsOf(stay.left).latest >= on.earliest);
}
