/** How vague dates are said. It reads dates that were taken already, so it goes without the grammar of `edtf.ts`, which is large. */

/** A vague date in words: `1994~` becomes "about 1994", `1993/1996` "1993 to 1996", `199X` "the 1990s". */
export function dateInWords(text: string): string {
  const slash = text.indexOf('/');
  if (slash !== -1) {
    const from = text.slice(0, slash);
    const to = text.slice(slash + 1);
    if (isOpen(from)) return `before or in ${dateInWords(to)}`;
    if (isOpen(to)) return `since ${dateInWords(from)}`;
    return `${dateInWords(from)} to ${dateInWords(to)}`;
  }
  const bare = text.replace(/[~?%]$/, '');
  const qualifier = text.slice(bare.length);
  const said = /^\d{3}X$/.test(bare)
    ? `the ${bare.slice(0, 3)}0s`
    : /^\d{2}XX$/.test(bare)
      ? `the ${bare.slice(0, 2)}00s`
      : bare.replace(/(-XX)+$/, '');
  if (qualifier === '~') return `about ${said}`;
  if (qualifier === '?') return `${said}, uncertain`;
  if (qualifier === '%') return `about ${said}, uncertain`;
  return said;
}

/** Whether an interval is open on a side. */
export const isOpen = (end: string): boolean => end === '..' || end === '';
