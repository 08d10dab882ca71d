import { error, redirect } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { readPage } from '$lib/people/read-page.ts';
import { parseRegistryNumber } from '$shared/registry-number.ts';
import type { PageLoad } from './$types';

/** Where the code on a label leads: the animal of that number. */
export const load: PageLoad = async ({ params }) => {
  if (parseRegistryNumber(params.number) === null)
    error(
      404,
      `${params.number} is no registry number: its last character does not fit the others. Scan or type it again.`,
    );
  const { items } = await readPage(() =>
    api.get<{ items: { id: string }[] }>(`/individuals?number=${encodeURIComponent(params.number)}`),
  );
  const found = items[0];
  if (!found) error(404, `There is no animal ${params.number} that you may see in this register.`);
  redirect(307, `/animals/${found.id}`);
};
