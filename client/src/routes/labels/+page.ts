import type { Individual } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { animalsInAddress } from '$lib/records/animals-in-address.ts';
import type { PageLoad } from './$types';

/** As many ids as an address holds. */
const mostAnimals = 100;

/** The animals named in the address, or the living young of the clutch named there. */
export const load: PageLoad = ({ url }): Promise<{ animals: Individual[] }> =>
  readPage(async () => ({
    animals: await animalsInAddress(
      url,
      mostAnimals,
      (count) => `Labels are printed for ${mostAnimals} animals at once; these are ${count}. Choose fewer.`,
    ),
  }));
