import { api } from '../api/client.ts';
import type { Line, Page, Species } from '../api/types.ts';
import { grouped } from '../ui/figures.ts';

/** A name that the register can be narrowed to, with what stands beside it. */
export interface RegisterName {
  text: string;
  beside: string;
}

/** The names of one part of the sentence, at most 200. Throws `ProblemError`. */
export async function readNames(part: 'species' | 'line' | 'keeper'): Promise<RegisterName[]> {
  const query = { limit: 200 };
  if (part === 'species') {
    const { items } = await api.get<Page<Species>>('/species', { query });
    return items.map((item) => ({ text: item.scientificName, beside: '' }));
  }
  if (part === 'keeper') {
    const { items } = await api.get<Page<{ id: string; name: string }>>('/keepers', { query });
    return items.map((item) => ({ text: item.name, beside: '' }));
  }
  const { items } = await api.get<Page<Line>>('/lines', { query });
  const animals = new Map<string, number>();
  // Lines of two species may share a name; the register narrows to both.
  for (const item of items) animals.set(item.name, (animals.get(item.name) ?? 0) + item.counts.animals);
  return [...animals].map(([text, count]) => ({ text, beside: grouped(count) }));
}
