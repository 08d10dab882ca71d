import type { RegisterFilters } from './register-filters.ts';

/** Figures that the register can be sorted by and held within bounds, as addresses name them. */
export const figureSorts = ['inbreeding', 'depth', 'meanKinship', 'tracedShare'] as const;
export type FigureSort = (typeof figureSorts)[number];
export type BoundName = `${FigureSort}${'From' | 'To'}`;
export type Bounds = Record<BoundName, string>;

/** What a figure is called in the sentence and in orders. */
export const figureWords: Readonly<Record<FigureSort, string>> = {
  inbreeding: 'F',
  depth: 'depth',
  meanKinship: 'mean kinship',
  tracedShare: 'traced share',
};
/** The phrases that the bounds of a figure stand in. */
export const boundPhrases: Readonly<Record<FigureSort, string>> = {
  inbreeding: 'with F {}',
  depth: 'with depth {}',
  meanKinship: 'with mean kinship {}',
  tracedShare: 'traced {}',
};

const greatestDepth = 10_000;

/** No figure is held within bounds. */
export const noBounds: Readonly<Bounds> = {
  inbreedingFrom: '',
  inbreedingTo: '',
  depthFrom: '',
  depthTo: '',
  meanKinshipFrom: '',
  meanKinshipTo: '',
  tracedShareFrom: '',
  tracedShareTo: '',
};

/** Reads the bounds of an address: fractions from 0 to 1, generations for the depth. What is neither counts as no bound. */
export function boundsOf(said: (name: string) => string): Bounds {
  const read = (name: BoundName): string => {
    const text = said(name);
    if (!/^\d+(\.\d+)?(e-\d+)?$/.test(text)) return '';
    const value = Number(text);
    const isFit = name.startsWith('depth') ? Number.isInteger(value) && value <= greatestDepth : value <= 1;
    return isFit ? String(value) : '';
  };
  const names = Object.keys(noBounds) as BoundName[];
  return { ...noBounds, ...Object.fromEntries(names.map((name) => [name, read(name)])) };
}

/** The bounds of a figure in words: "at least 6.25 %", "2 to 4"; empty where it has none. Both ends are included. */
export function boundsInWords(figure: FigureSort, filters: Readonly<Bounds>): string {
  const [from, to] = [filters[`${figure}From`], filters[`${figure}To`]];
  const unit = figure === 'depth' ? '' : '\u202f%';
  const [least, greatest] = [written(figure, from), written(figure, to)];
  const end = figure === 'depth' ? null : '1';
  if (from === '' && to === '') return '';
  // the ends of the scale leave one value only
  if (from === to || (from === end && to === '')) return `${least}${unit}`;
  if (to === '0' && from === '') return `${greatest}${unit}`;
  if (to === '') return `at least ${least}${unit}`;
  return from === '' ? `at most ${greatest}${unit}` : `${least} to ${greatest}${unit}`;
}

/** A bound as one writes it: per cent with all its digits, or generations. */
export function written(figure: FigureSort, bound: string): string {
  if (bound === '' || figure === 'depth') return bound;
  return String(Number((Number(bound) * 100).toPrecision(12)));
}

/** What was written as a bound, or what is wrong with it. `6.25`, `6,25` and `6.25 %` are the same. */
export function boundFrom(figure: FigureSort, text: string): { bound: string } | { problem: string } {
  const plain = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (plain === '') return { bound: '' };
  if (figure === 'depth')
    return /^\d{1,5}$/.test(plain) && Number(plain) <= greatestDepth
      ? { bound: String(Number(plain)) }
      : { problem: 'Write whole generations, such as 3.' };
  if (!/^\d+(\.\d+)?$/.test(plain) || Number(plain) > 100)
    return { problem: 'Write a percentage from 0 to 100, such as 6.25.' };
  return { bound: String(Number((Number(plain) / 100).toPrecision(12))) };
}

/** Whether the list depends on stored figures, which may be older than the last change. */
export function dependsOnFigures(filters: RegisterFilters): boolean {
  return figureSorts.some(
    (figure) => filters.sort === figure || filters[`${figure}From`] !== '' || filters[`${figure}To`] !== '',
  );
}
