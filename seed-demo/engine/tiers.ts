import { animalOf, type Animal, type Clutch, type Draft } from './draft.ts';
import { parentCodes } from './find-parents.ts';

/** Rank in time of clutches and animals: a clutch one above its highest candidate parent, an animal one above its clutch. */
export interface Tiers {
  clutch(clutch: Clutch): number;
  animal(animal: Animal): number;
}

/** Works the tiers out when asked. Throws where the scenario closes a loop. */
export function tiersOf(draft: Draft): Tiers {
  const known = new Map<Clutch, number>();
  const open = new Set<Clutch>();
  const clutchTier = (clutch: Clutch): number => {
    const found = known.get(clutch);
    if (found !== undefined) return found;
    if (open.has(clutch)) throw new Error(`the scenario closes a loop at ${clutch.code}`);
    open.add(clutch);
    const tier = 1 + Math.max(0, ...parentCodes(clutch.parents).map((code) => animalTier(animalOf(draft, code))));
    known.set(clutch, tier);
    return tier;
  };
  const animalTier = (animal: Animal): number => (animal.clutch === null ? 0 : 1 + clutchTier(animal.clutch));
  return { clutch: clutchTier, animal: animalTier };
}
