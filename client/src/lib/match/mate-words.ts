import type { Mate, YoungInbreeding } from '../api/types.ts';
import { counted, percent, percentRange, written } from '../ui/figures.ts';

/** F of the young, with its range where the parents are uncertain: `6.3 % (0 to 12.5 %)`. Never 0 where nothing is known. */
export function inbreedingInWords({ expected, least, greatest, nothingKnown }: YoungInbreeding): string {
  if (nothingKnown) return 'nothing known';
  return greatest - least > 1e-9 ? `${percent(expected)} (${percentRange(least, greatest)})` : percent(expected);
}

/** What such an F rests on: generations in which every ancestor of the young is known, of those in which any is. Empty where that was not kept. */
export function youngDepthInWords({ depth, fullDepth }: Pick<YoungInbreeding, 'depth' | 'fullDepth'>): string {
  return depth === null || fullDepth === null ? '' : `depth ${fullDepth} of ${depth}`;
}

/** Mean F of the young of several pairs, over those of which something is known: `3.1 %`, `3.1 %, nothing known of 2`. */
export function meanInbreedingInWords(pairs: readonly { readonly inbreeding: YoungInbreeding }[]): string {
  const known = pairs.filter(({ inbreeding }) => !inbreeding.nothingKnown);
  if (known.length === 0) return 'nothing known';
  const mean = percent(known.reduce((sum, { inbreeding }) => sum + inbreeding.expected, 0) / known.length);
  return known.length === pairs.length ? mean : `${mean}, nothing known of ${pairs.length - known.length}`;
}

/** What a young adds to the diversity of the line, or takes from it, in percentage points: `+0.21`. */
export function gainInWords(gain: number | null): string {
  if (gain === null) return '';
  const points = gain * 100;
  const digits = Math.abs(points) < 0.005 ? '0' : written(String(Number(Math.abs(points).toPrecision(2))));
  if (digits === '0') return '0';
  return `${points < 0 ? '−' : '+'}${digits}`;
}

/** Age in the words of a keeper: months up to two years, then years. */
export function ageInWords(age: Mate['age']): string {
  if (!age) return 'not known';
  const [least, greatest] = [age.least, age.greatest].map((months) => (months === null ? null : Math.floor(months)));
  if (least === null || least === undefined)
    return greatest === null ? 'not known' : `at most ${amount(greatest ?? 0)}`;
  if (greatest === null || greatest === undefined) return `at least ${amount(least)}`;
  return amount(least) === amount(greatest) ? amount(least) : `${amount(least)} to ${amount(greatest)}`;
}

const amount = (months: number): string =>
  months < 24 ? counted(months, ['month', 'months']) : counted(Math.floor(months / 12), ['year', 'years']);
