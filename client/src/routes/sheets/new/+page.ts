import type { Individual } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import { animalsInAddress } from '$lib/records/animals-in-address.ts';
import { SHEET_ANIMALS_MOST } from '$shared/sheet/sheet-document.ts';
import type { PageLoad } from './$types';

/** The animals of a sheet that is to be made: those in the address, or the living young of a clutch. */
export const load: PageLoad = ({ url }): Promise<{ animals: Individual[] }> =>
  readPage(async () => ({
    animals: await animalsInAddress(
      url,
      SHEET_ANIMALS_MOST,
      (count) =>
        `A sheet holds ${SHEET_ANIMALS_MOST} animals; these are ${count}. Choose fewer, and make several sheets.`,
    ),
  }));
