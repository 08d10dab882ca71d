import { redirect } from '@sveltejs/kit';
import { isForAnyone } from '$lib/people/for-anyone.ts';
import { session } from '$lib/people/session.svelte.ts';
import type { LayoutLoad } from './$types';

// One static shell for every address; the service answers the rest.
export const ssr = false;
export const prerender = false;

/** Who is signed in is known before any page is read: pages wait for this with `await parent()`. */
export const load: LayoutLoad = async ({ url }) => {
  // a buyer has no account, and is not kept waiting for who asks
  if (isForAnyone(url)) return;
  await session.start();
  const detour = session.detour(url);
  if (detour !== null) redirect(307, detour);
};
