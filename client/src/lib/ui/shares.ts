import { standings, type Standing } from '$shared/vocabulary.ts';
import { written } from './figures.ts';
import { word } from '../words/word.ts';

export interface Part {
  standing: Standing;
  /** Share of the whole, 0 to 1. */
  share: number;
  /** The share as printed, in tenths of a per cent; the parts of one bar add up to 1000. */
  tenths: number;
}

/**
 * Parts of a share bar: one for each standing that has a share, in the fixed order from documented to unknown.
 * Printed figures are rounded by the largest remainder, so that they add up to 100 % whenever the shares add up to 1.
 */
export function partsOf(shares: readonly { standing: Standing; share: number }[]): Part[] {
  const total = new Map<Standing, number>();
  for (const { standing, share } of shares) total.set(standing, (total.get(standing) ?? 0) + share);
  const present = standings.filter((standing) => (total.get(standing) ?? 0) > 0);
  const values = present.map((standing) => total.get(standing) ?? 0);
  const tenths = roundTogether(values);
  return present.map((standing, at) => ({ standing, share: values[at] ?? 0, tenths: tenths[at] ?? 0 }));
}

/** Rounds shares to tenths of a per cent so that the rounded values add up to the rounded sum. */
export function roundTogether(shares: readonly number[]): number[] {
  const exact = shares.map((share) => share * 1000);
  const floors = exact.map((value) => Math.floor(value + 1e-9));
  const wanted = Math.round(exact.reduce((sum, value) => sum + value, 0));
  let missing = wanted - floors.reduce((sum, value) => sum + value, 0);
  const byRemainder = exact
    .map((value, at) => ({ at, remainder: value - (floors[at] ?? 0) }))
    .sort((a, b) => b.remainder - a.remainder || a.at - b.at);
  for (const { at } of byRemainder) {
    if (missing <= 0) break;
    floors[at] = (floors[at] ?? 0) + 1;
    missing -= 1;
  }
  return floors;
}

/** A printed share in words, `62.5 % documented`; a share too small to print is said to be there. */
export function partInWords(part: Part): string {
  return `${tenthsInWords(part)} ${standingInWords(part.standing)}`;
}

/** A printed share, `62.5 %`. */
export function tenthsInWords(part: Pick<Part, 'tenths' | 'share'>): string {
  return part.tenths === 0 && part.share > 0 ? 'under 0.1\u202f%' : `${written(String(part.tenths / 10))}\u202f%`;
}

/** A standing as the screen says it. */
export const standingInWords = (standing: Standing): string => standingWords[standing];

const standingWords: Record<Standing, string> = {
  documented: word('documented'),
  corroborated: word('corroborated'),
  stated: word('stated'),
  'by-looks': 'by looks',
  disputed: word('disputed'),
  unknown: word('unknown'),
};
