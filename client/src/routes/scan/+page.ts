import { beforeReading } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export const load: PageLoad = () => beforeReading();
