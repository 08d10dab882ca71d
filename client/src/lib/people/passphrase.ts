import { word } from '../words/word.ts';

/** Bounds of a passphrase, in characters. */
export const passphraseLength = { least: 8, most: 200, advised: 12 } as const;

/** What can be seen to be wrong with a new passphrase before asking the service. */
export function passphraseProblem(typed: string): string | undefined {
  const length = [...typed].length;
  if (length === 0) return 'Write a passphrase: a few words that only you would put together.';
  if (length < passphraseLength.least) return `At least ${passphraseLength.least} characters; ${length} so far.`;
  if (length > passphraseLength.most) return `At most ${passphraseLength.most} characters; this is ${length}.`;
  return undefined;
}

/**
 * How hard a passphrase is to guess, in a word. Length decides, not signs and capitals; what repeats itself counts once.
 */
export function passphraseStrength(typed: string): string | undefined {
  const letters = [...typed];
  if (letters.length === 0) return undefined;
  if (letters.length < passphraseLength.least) return 'too short';
  const different = new Set(letters.map((letter) => letter.toLowerCase())).size;
  if (different < 5 || isRepeated(typed) || isRow(letters)) return 'easily guessed';
  if (letters.length < passphraseLength.advised) return word('short');
  return letters.length < 18 || different < 8 ? word('good') : word('strong');
}

/** The same few letters over and over. */
const isRepeated = (typed: string): boolean => /^(.{1,5}?)\1+.{0,4}$/i.test(typed);

/** Letters or digits as they stand in the alphabet, up or down. */
function isRow(letters: readonly string[]): boolean {
  const steps = letters.slice(1).map((letter, at) => letter.charCodeAt(0) - (letters[at] ?? '').charCodeAt(0));
  const step = steps[0] ?? 0;
  return Math.abs(step) <= 1 && steps.every((other) => other === step);
}
