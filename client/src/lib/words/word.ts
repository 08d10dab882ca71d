/**
 * Marks a single lower-case word as said to a reader, so that the catalogue of words takes it up: `word('sire')`. Phrases and
 * capitalised words are found without it; a lower-case word alone could as well be code.
 */
export const word = (text: string): string => text;

/** A phrase about one part that is drawn by itself, `kept by {}`: what stands before and behind that part. */
export function aroundPart(phrase: string): [before: string, after: string] {
  const [before = '', after = ''] = phrase.split('{}');
  return [before, after];
}
