import { generationChoices, usualGenerations } from './ancestor-view.svelte.ts';

/** How many generations an address asks for; the usual number where it names none that can be chosen. */
export function generationsIn(url: URL): number {
  const named = Number(url.searchParams.get('generations'));
  return generationChoices.find((choice) => choice === named) ?? usualGenerations;
}

/** The address of the same page with another number of generations. */
export function withGenerations(url: URL, generations: number): string {
  const address = new URL(url);
  if (generations === usualGenerations) address.searchParams.delete('generations');
  else address.searchParams.set('generations', String(generations));
  return address.pathname + address.search + address.hash;
}
