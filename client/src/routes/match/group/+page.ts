import { groupWishOf, type GroupWish } from '$lib/match/group-wish.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = ({ url }): { wish: GroupWish } => ({ wish: groupWishOf(url.searchParams) });
