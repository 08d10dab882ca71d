import type { IndividualItem } from '../api/types.ts';
import { session } from '../people/session.svelte.ts';
import { kept } from './kept.ts';

/** What is kept of an animal that was looked at. */
export type RecentAnimal = Pick<
  IndividualItem,
  'id' | 'number' | 'code' | 'sex' | 'status' | 'line' | 'species' | 'keeperId'
>;

const storageKey = 'linekeeper.recent-animals';
const most = 6;

/** The animals that the keeper looked at last on this device, the newest first; of another keeper's nothing is told. */
export function recentAnimals(): RecentAnimal[] {
  try {
    const read = JSON.parse(kept.get(storageKey) ?? '{}') as { keeper?: unknown; animals?: unknown };
    if (read.keeper !== (session.keeper?.id ?? '') || !Array.isArray(read.animals)) return [];
    return (read.animals as unknown[]).filter(isAnimal).slice(0, most);
  } catch {
    // Garbled: nothing is recent.
    return [];
  }
}

/** Puts an animal before those that were looked at earlier. */
export function rememberAnimal(animal: RecentAnimal): void {
  const { id, number, code, sex, status, line, species, keeperId } = animal;
  const now: RecentAnimal = { id, number, code, sex, status, line, species, keeperId };
  const animals = [now, ...recentAnimals().filter((other) => other.id !== id)].slice(0, most);
  kept.set(storageKey, JSON.stringify({ keeper: session.keeper?.id ?? '', animals }));
}

const isAnimal = (read: unknown): read is RecentAnimal =>
  typeof read === 'object' && read !== null && 'id' in read && 'number' in read && 'sex' in read && 'species' in read;
