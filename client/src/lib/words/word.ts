/**
 * Marks a single lower-case word as said to a reader, so that the catalogue of words takes it up: `word('sire')`. Phrases and
 * capitalised words are found without it; a lower-case word alone could as well be code.
 */
export const word = (text: string): string => text;
