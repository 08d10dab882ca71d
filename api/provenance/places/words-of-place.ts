/** What looks like a position on the map: degrees with minutes, degrees with decimals, metres of a national or UTM grid. */
const positions: readonly RegExp[] = [
  /[-+−]?\d{1,3}(?:[.,]\d+)?\s*[°º˚](?:\s*\d{1,2}(?:[.,]\d+)?\s*['’′´](?:\s*\d{1,2}(?:[.,]\d+)?\s*(?:["”″]|''|’’|′′))?)?(?:\s*[NSEWO](?!\p{L}))?/giu,
  /[-+−]?\b\d{1,3}\.\d{3,}\b/gu,
  /[-+−]?\b\d{1,3}[.,]\d{2,}\s*[NSEWO]\b/gu,
  /\b\d{1,2}\s*[C-X]\b\s*\d{6}\D{1,12}\d{7}\b/giu,
  /\b\d{6,7}\s*m?\s*[NSEWO]\b/giu,
];

/** Stands in a text where a position was taken out. */
export const POSITION_WITHHELD = '[position withheld]';

/**
 * Words as a stranger may read them: whatever looks like coordinates is taken out. It finds the usual ways to write them, not every one;
 * so it is for names, such as a label, and words that describe a place are withheld whole.
 */
export function withoutPositions<Words extends string | null>(words: Words): Words | string {
  if (words === null) return words;
  return positions.reduce<string>((text, position) => text.replace(position, POSITION_WITHHELD), words);
}
