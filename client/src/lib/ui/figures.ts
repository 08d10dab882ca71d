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
  if (rounded !== 0 || Math.abs(value) < 1e-10) return String(Math.abs(rounded));
  return String(Number(value.toPrecision(1)));
}

/** A range of fractions in words, or the single value where the range is a point: `0 to 6.3 %`. */
export function percentRange(least: number, greatest: number): string {
  const from = percentDigits(least);
  const to = percentDigits(greatest);
  return from === to ? percent(least) : `${from} to ${to}\u202f%`;
}

/** A count with thin spaces between thousands and its noun: `4 318 animals`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`;
}

/** A count as a sentence begins with it: `Two clutches`; in digits from 13 on. */
export function countedInWords(count: number, one: string, many = `${one}s`): string {
  const word = smallNumbers[count];
  return word === undefined ? counted(count, one, many) : `${word} ${count === 1 ? one : many}`;
}

const smallNumbers = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve'.split(' ');

/** A whole number with thin spaces between thousands. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, '\u2009');
}
