import { error, redirect } from '@sveltejs/kit';
import { idOfShort } from '$shared/short-id.ts';
import type { PageLoad } from './$types';

/** Where the code on a card leads: the clutch of that short id. */
export const load: PageLoad = ({ params }) => {
  const id = idOfShort(params.short);
  if (id === null) error(404, 'This is no address of a card: a character is missing or wrong. Scan it again.');
  redirect(307, `/clutches/${id}`);
};
