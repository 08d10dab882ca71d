import { error } from '@sveltejs/kit';
import { api } from '../api/client.ts';
import type { Clutch, Individual } from '../api/types.ts';

/**
 * The animals that an address names: by `animals`, ids with commas between them, or by `clutch`, of which the living young are meant.
 * More than `most` end on the error page with `tooMany`.
 */
export async function animalsInAddress(
  { searchParams }: URL,
  most: number,
  tooMany: (count: number) => string,
): Promise<Individual[]> {
  const clutch = searchParams.get('clutch');
  const named = (searchParams.get('animals') ?? '').split(',').filter(Boolean);
  const ids = clutch === null ? [...new Set(named)] : await livingYoungOf(clutch);
  if (ids.length > most) error(422, tooMany(ids.length));
  return Promise.all(ids.map((id) => api.get<Individual>(`/individuals/${encodeURIComponent(id)}`)));
}

async function livingYoungOf(clutch: string): Promise<string[]> {
  const { young } = await api.get<Clutch>(`/clutches/${encodeURIComponent(clutch)}`);
  return young.filter(({ status }) => status === 'alive').map(({ id }) => id);
}
