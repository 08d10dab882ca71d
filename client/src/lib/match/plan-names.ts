import type { Plan, Ref } from '../api/types.ts';

/** The animals that a plan tells of, by registry number and by id, so that an address can be read in names. */
export function namesIn(plan: Plan | null): Map<string, Ref> {
  if (!plan) return new Map();
  const animals: Ref[] = [
    ...plan.pairs.flatMap(({ male, female }) => [male.animal, female.animal]),
    ...plan.leftOut.map(({ animal }) => animal.animal),
    ...plan.excluded.flatMap((reason) => reason.animals),
  ];
  return new Map(animals.flatMap((animal) => [animal.id, animal.number ?? animal.id].map((text) => [text, animal])));
}

/** What an address calls an animal: its registry number, which is short and never changes hands. */
export const wishedName = ({ id, number }: Ref): string => number ?? id;
