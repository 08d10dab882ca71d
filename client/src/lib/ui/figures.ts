import { decimalSign } from '../words/language.ts';

/**
 * A fraction from 0 to 1 as a percentage with one decimal at most, `4.7 %`. What is not zero never prints as zero: small values
 * keep one significant digit.
 */
export function percent(fraction: number): string {
  return `${percentDigits(fraction)}\u202f%`;
}

/** The digits of `percent` alone, for tables that name the unit in their head. */
export function percentDigits(fraction: number): string {
  const value = fraction * 100;
  const rounded = Math.round(value * 10) / 10;
  if (rounded !== 0 || Math.abs(value) < 1e-10) return written(String(Math.abs(rounded)));
  return written(String(Number(value.toPrecision(1))));
}

/** A number with so many decimals, behind the decimal sign of the reader's language: `1.95`, `1,95`. */
export const decimals = (value: number, digits: number): string => written(value.toFixed(digits));

/** Digits behind the decimal sign of the reader's language: `0.25`, `0,25`. */
export const written = (digits: string): string => digits.replace('.', decimalSign);

/** A range of fractions in words, or the single value where the range is a point: `0 to 6.3 %`. */
export function percentRange(least: number, greatest: number): string {
  const from = percentDigits(least);
  const to = percentDigits(greatest);
  return from === to ? percent(least) : `${from} to ${to}\u202f%`;
}

/** Which of the forms of a noun goes with a count: in English the first with one, the second with every other number. */
type PluralRule = (count: number) => number;

const english: PluralRule = (count) => (count === 1 ? 0 : 1);

/**
 * A count with narrow spaces, which do not break, between thousands and its noun: `counted(4318, ['animal', 'animals'])` is `4 318 animals`. The forms stand in
 * the call, so that the catalogue of words finds them; the rule is filled in by the language of the reader.
 */
export function counted(count: number, forms: readonly string[], rule = english): string {
  return `${grouped(count)} ${forms[rule(count)] ?? ''}`;
}

/** A count as a sentence begins with it: `Two clutches`; in digits from 13 on. The forms as for `counted`. */
export function countedInWords(count: number, forms: readonly string[], rule = english): string {
  const word = smallNumbers[count];
  return word === undefined ? counted(count, forms, rule) : `${word} ${forms[rule(count)] ?? ''}`;
}

const smallNumbers = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve'.split(' ');

/** A whole number with narrow spaces, which do not break, between thousands. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
}
