import type { Sex, Standing, Status } from '$shared/vocabulary.ts';
import { symbolOutline } from '../symbol-outline.ts';
import { bandsOf } from './node-bands.ts';
import type { StandingShare } from './pedigree-view.ts';

/** An animal as its marks need it. */
export interface MarkedAnimal {
  animal: { sex: Sex; status: Status; isPrivate?: boolean; standings?: readonly StandingShare[] };
  x: number;
  y: number;
  /** What stands above the symbol. */
  above?: string | null;
}

/** What animals are drawn with but for their texts, as SVG paths. */
export interface AnimalMarks {
  symbols: string;
  /** Symbols of animals that may not be seen. */
  privateSymbols: string;
  /** A stroke through each animal that has died. */
  slashes: string;
  /** Dashes above each animal whose ancestors are not drawn. */
  more: string;
  /** Share bars: what is filled alike, and the lines around all of it. */
  bands: ReadonlyMap<Standing, string>;
  lines: string;
}

const bar = { left: 15, top: 17, width: 62, height: 8 };

/**
 * The marks of all animals together. A path for each kind of mark is drawn much sooner than hundreds of elements, and it stays as it is
 * when something is lit or pointed at.
 */
export function marksOf(animals: readonly MarkedAnimal[]): AnimalMarks {
  const bands = new Map<Standing, string>();
  const marks = { symbols: '', privateSymbols: '', slashes: '', more: '', lines: '', bands };
  for (const { animal, x, y, above } of animals) {
    marks[animal.isPrivate ? 'privateSymbols' : 'symbols'] += symbolOutline(animal.sex, x, y, 8.2);
    if (animal.status === 'died') marks.slashes += `${start(x - 11, y + 11)}l22 -22`;
    if (above === 'more') marks.more += `${start(x, y - 12)}v-5m0 -3v-3m0 -3v-3`;
    const { isPrivate, standings = [] } = animal;
    // an empty bar would say that the label is unknown
    if (isPrivate || standings.length === 0) continue;
    const top = y + bar.top;
    marks.lines += `${start(x + bar.left, top)}${box(bar.width)}`;
    for (const { standing, from, width } of bandsOf(standings, bar.width)) {
      const corner = start(x + bar.left + from, top);
      if (from > 0) marks.lines += `${corner}v${bar.height}`;
      bands.set(standing, `${bands.get(standing) ?? ''}${corner}${box(width)}`);
    }
  }
  return marks;
}

/** Rings around animals, as a path. */
export function ringsAround(animals: readonly Pick<MarkedAnimal, 'x' | 'y'>[]): string {
  return animals.map(({ x, y }) => symbolOutline('female', x, y, 13.5)).join('');
}

function start(x: number, y: number): string {
  return `M${round(x)} ${round(y)}`;
}

function box(width: number): string {
  return `h${round(width)}v${bar.height}h${round(-width)}z`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
