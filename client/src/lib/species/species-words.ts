import type { CitesAppendix, Trait } from '$shared/vocabulary.ts';
import type { Species } from '../api/types.ts';
import { written } from '../ui/figures.ts';
import { writingTag } from '../words/language.ts';
import { word } from '../words/word.ts';

type Range = Species['ranges'][number];

/** The life-history ranges as a keeper says them. */
export const traitWords: Record<Trait, string> = {
  'laying-to-hatching': 'from laying to hatching',
  'hatching-to-leaving-water': 'from hatching to leaving the water',
  maturity: 'until it breeds',
  'sexable-by-looks': 'until its sex can be told by looks',
  'eggs-per-clutch': 'eggs in one clutch',
  'between-clutches': 'between two clutches of one female',
  'snout-vent-male': 'length of a grown male, snout to vent',
  'snout-vent-female': 'length of a grown female, snout to vent',
  lifespan: 'how old it gets',
};

/** The units of the ranges. */
export const unitWords: Readonly<Record<string, string>> = {
  days: word('days'),
  months: word('months'),
  years: word('years'),
  eggs: word('eggs'),
  mm: 'mm',
};

/** A range as a table says it, `12 to 18`; a single value where only one bound is known, `from 12` or `up to 18`. */
export function rangeInWords(least: number | null, most: number | null): string {
  if (least === null && most === null) return '';
  const [from, to] = [written(String(least)), written(String(most))];
  if (least === null) return `up to ${to}`;
  if (most === null) return `from ${from}`;
  return least === most ? from : `${from} to ${to}`;
}

/** One range of a profile, if it has it. */
export function rangeOf(species: Species, trait: Trait): Range | undefined {
  return species.ranges.find((range) => range.trait === trait);
}

/** What is usual, with its unit: `12 to 18 days`; empty where nothing is said. */
export function usualInWords(species: Species, trait: Trait): string {
  const range = rangeOf(species, trait);
  const words = range ? rangeInWords(range.usualLeast, range.usualMost) : '';
  return range && words !== '' ? `${words} ${unitWords[range.unit] ?? range.unit}` : '';
}

/** The countries of a range by name, in the order of the names. */
export function countriesInWords(codes: readonly string[]): string {
  const names = new Intl.DisplayNames([writingTag], { type: 'region' });
  return codes
    .map((code) => names.of(code) ?? code)
    .sort((a, b) => a.localeCompare(b))
    .join(', ');
}

/** What CITES says of a species, in a sentence. */
export function citesInWords(appendix: CitesAppendix | null): string {
  return appendix === null ? 'No CITES appendix is recorded.' : `CITES Appendix ${appendix}, as recorded here.`;
}
