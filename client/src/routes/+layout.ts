import { redirect } from '@sveltejs/kit';
import { api } from '$lib/api/client.ts';
import { device } from '$lib/offline/device.svelte.ts';
import { waiting } from '$lib/offline/waiting.svelte.ts';
import { isForAnyone } from '$lib/people/for-anyone.ts';
import { session } from '$lib/people/session.svelte.ts';
import type { LayoutLoad } from './$types';

// One static shell for every address; the service answers the rest.
export const ssr = false;
export const prerender = false;

// before anything is asked, so that what is answered is remembered
api.device = device;

/** Who is signed in is known before any page is read: pages wait for this with `await parent()`. */
export const load: LayoutLoad = async ({ url }) => {
  // a buyer has no account, and is not kept waiting for who asks
  if (isForAnyone(url)) return;
  await session.start();
  void waiting.of(session.keeper);
  const detour = session.detour(url);
  if (detour !== null) redirect(307, detour);
};
