import { tokens, type Palette } from './fills.ts';

/** Fonts of the page for canvas and files. */
export interface Fonts {
  readonly sans: string;
  readonly serif: string;
}

/** The colours of the page as it is painted now. */
export function paletteNow(): Palette {
  const style = getComputedStyle(document.documentElement);
  const colours = new Map(tokens.map((token) => [token, style.getPropertyValue(`--${token}`).trim()]));
  return (token) => colours.get(token) ?? '';
}

/** The colours as names, which the page fills in wherever the drawing stands in it: also on paper. */
export const paletteOfPage: Palette = (token) => `var(--${token})`;

export function fontsNow(): Fonts {
  const style = getComputedStyle(document.documentElement);
  return { sans: style.getPropertyValue('--sans').trim(), serif: style.getPropertyValue('--serif').trim() };
}
