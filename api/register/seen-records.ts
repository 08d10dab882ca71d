import { seen } from '../people/visibility.ts';

type Seen = (alias: string) => string;

/** PLACEHOLDER until the visibility of all kinds lands. */
export const seenIn: Readonly<
  Record<'species' | 'line' | 'source' | 'individual' | 'pairing' | 'clutch' | 'observation', Seen>
> = {
  species: () => 'true',
  line: () => 'true',
  source: (alias) => seen('source', alias),
  individual: (alias) => seen('individual', alias),
  pairing: () => 'true',
  clutch: () => 'true',
  observation: (alias) => seen('observation', alias),
};
