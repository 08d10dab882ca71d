import type { LineOverTime } from '$lib/api/types.ts';
import { percent } from '$lib/ui/figures.ts';
import { standingInWords } from '$lib/ui/shares.ts';
import { standings } from '$shared/vocabulary.ts';
import { inbreedingSteps, type BarParts } from './bar-parts.ts';

/** What one filling of the bars stands for. */
export interface KeyEntry {
  /** Id of the filling. */
  readonly fill: string;
  readonly text: string;
}

/** The key of the bars, in the order of the fillings; for keepers only those that are there. */
export function keyOf(line: LineOverTime, bars: BarParts): KeyEntry[] {
  const id = (place: number): string => bars.fills[place]?.id ?? '';
  if (bars.kind === 'standing')
    return standings.map((standing, place) => ({ fill: id(place), text: standingInWords(standing) }));
  if (bars.kind === 'inbreeding') return inbreedingWords().map((text, place) => ({ fill: id(place), text }));
  const last = bars.fills.length - 1;
  const named = bars.keepers
    .slice(0, last)
    .map((keeper, place) => ({ fill: id(place), text: line.keepers[keeper]?.name ?? '' }));
  const isMore = bars.keepers.length > last || line.animals.keeper.includes(-1);
  return isMore ? [...named, { fill: id(last), text: 'others, or not told' }] : named;
}

function inbreedingWords(): string[] {
  return [
    'F not known',
    'F 0',
    ...inbreedingSteps.map((end) => `to ${percent(end)}`),
    `above ${percent(inbreedingSteps[inbreedingSteps.length - 1] ?? 0)}`,
  ];
}
