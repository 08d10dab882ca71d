import { error } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import type { Clutch, Figures, Individual, Pairing } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { session } from '$lib/people/session.svelte.ts';
import type { PageLoad } from './$types';

interface CardsData {
  pairings: Pairing[];
  clutches: Clutch[];
  /** Who lives in those pairings, as far as may be seen. */
  animals: ReadonlyMap<string, Individual>;
  figures: ReadonlyMap<string, Figures>;
}

/** As many as an address holds. */
const MOST = 60;

/** The pairings or clutches that the address names: `pairings` or `clutches`, ids with commas between them. */
export const load: PageLoad = ({ url }): Promise<CardsData> =>
  readPage(async () => {
    const named = (what: string): string[] => [
      ...new Set((url.searchParams.get(what) ?? '').split(',').filter(Boolean)),
    ];
    const [pairingIds, clutchIds] = [named('pairings'), named('clutches')];
    const count = pairingIds.length + clutchIds.length;
    if (count > MOST) error(422, `Cards are printed for ${MOST} at once; these are ${count}. Choose fewer.`);
    const [pairings, clutches] = await Promise.all([
      Promise.all(pairingIds.map((id) => api.get<Pairing>(`/pairings/${encodeURIComponent(id)}`))),
      Promise.all(clutchIds.map((id) => api.get<Clutch>(`/clutches/${encodeURIComponent(id)}`))),
    ]);
    const ids = pairings.flatMap(({ members }) =>
      members.flatMap(({ left, individual }) => (left === null && !individual.isPrivate ? [individual.id] : [])),
    );
    const unique = [...new Set(ids)].slice(0, 200);
    const animals = await Promise.all(unique.map((id) => api.get<Individual>(`/individuals/${id}`)));
    return { pairings, clutches, animals: new Map(animals.map((one) => [one.id, one])), figures: await read(unique) };
  });

async function read(ids: readonly string[]): Promise<ReadonlyMap<string, Figures>> {
  if (ids.length === 0 || !session.may('ask', 'lineage')) return new Map();
  const { items } = await api.ask<{ items: Figures[] }>('/lineage/figures', { individuals: ids });
  return new Map(items.map((one) => [one.id, one]));
}
