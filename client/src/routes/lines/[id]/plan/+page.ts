import { api } from '$lib/api/client.ts';
import type { Line } from '$lib/api/types.ts';
import { forecastWishOf, type ForecastWish } from '$lib/match/forecast-wish.ts';
import { planWishOf, type PlanWish } from '$lib/match/plan-wish.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

interface Data {
  line: Line;
  wish: PlanWish;
  forecastWish: ForecastWish;
  /** Whether the address asks for a plan, or is only that of the page. */
  isAsked: boolean;
}

export const load: PageLoad = ({ params, url, depends }): Promise<Data> => {
  depends('record:line');
  const said = url.searchParams;
  return readPage(async () => ({
    line: await api.get<Line>(`/lines/${encodeURIComponent(params.id)}`),
    wish: planWishOf(said),
    forecastWish: forecastWishOf(said),
    isAsked: said.has('pairings'),
  }));
};
