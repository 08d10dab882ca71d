import type { ChartKey } from '$lib/keys/actions/chart.ts';
import type { DescendantItem, DescendantLayout } from './descendant-layout.ts';

/** What a key leads to: up to the animal above, down to the first of its young, sideways to the next one of the same generation. */
export function moveAmong({ items }: Pick<DescendantLayout, 'items'>, from: string, key: ChartKey): string | null {
  const here = items.find((item) => item.key === from);
  if (!here) return null;
  if (key === 'stepUp') return here.above;
  if (key === 'toBeginning') return items[0]?.key ?? null;
  const byPlace = (a: DescendantItem, b: DescendantItem): number => a.x - b.x;
  if (key === 'stepDown') return items.filter(({ above }) => above === from).sort(byPlace)[0]?.key ?? null;
  const step = key === 'stepLeft' ? -1 : key === 'stepRight' ? 1 : 0;
  if (step === 0) return null;
  const besides = items.filter(({ generation }) => generation === here.generation).sort(byPlace);
  return besides[besides.indexOf(here) + step]?.key ?? null;
}
