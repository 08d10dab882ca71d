import type { Sex } from './vocabulary.ts';

/** Writes a group as the trade does, males.females.unsexed: a trio of one male and two females is `1.2.0`. */
export function groupNotation(members: Iterable<Sex>): string {
  const counts: Record<Sex, number> = { male: 0, female: 0, unsexed: 0 };
  for (const sex of members) counts[sex] += 1;
  return `${counts.male}.${counts.female}.${counts.unsexed}`;
}
