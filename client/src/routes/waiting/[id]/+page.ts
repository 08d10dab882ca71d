import { error } from '@sveltejs/kit';
import { waiting } from '$lib/offline/waiting.svelte.ts';
import { beforeReading } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** One entry that waits, to be written anew; or, as `counts?of=`, a new count of a clutch that waits itself. */
export const load: PageLoad = async ({ params, url, parent }) => {
  await parent();
  await beforeReading();
  const isNew = params.id === 'counts';
  const entry = await waiting.entry(isNew ? url.searchParams.get('of') : params.id);
  if (!entry || entry.state === 'done')
    error(404, 'This does not wait here any more: the register has it, or it was thrown away.');
  return { entry, isNew };
};
