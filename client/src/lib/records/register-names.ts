import { api } from '../api/client.ts';
import type { Line, Species } from '../api/types.ts';
import { grouped } from '../ui/figures.ts';

/** A name that the register can be narrowed to, with what stands beside it. */
export interface RegisterName {
  text: string;
  beside: string;
}

/** The names of one part of the sentence. Throws `ProblemError`. */
export async function readNames(part: 'species' | 'line' | 'keeper'): Promise<RegisterName[]> {
  if (part === 'species') {
    const items = await api.all<Species>('/species');
    return items.map((item) => ({ text: item.scientificName, beside: '' }));
  }
  if (part === 'keeper') {
    const items = await api.all<{ id: string; name: string }>('/keepers');
    return items.map((item) => ({ text: item.name, beside: '' }));
  }
  const items = await api.all<Line>('/lines');
  const animals = new Map<string, number>();
  // Lines of two species may share a name; the register narrows to both.
  for (const item of items) animals.set(item.name, (animals.get(item.name) ?? 0) + item.counts.animals);
  return [...animals].map(([text, count]) => ({ text, beside: grouped(count) }));
}
