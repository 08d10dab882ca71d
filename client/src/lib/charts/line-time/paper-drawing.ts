import type { LineDrawing } from './line-svg.ts';
import type { LineView } from './line-view.svelte.ts';
import { fontsNow, paletteNow } from './page-palette.ts';

/** Puts a drawing, given as the text of an SVG, into an element that holds nothing else; gives the element of the drawing. */
export function putDrawing(holder: HTMLElement, text: string): SVGSVGElement | null {
  const drawing = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  holder.replaceChildren(document.adoptNode(drawing));
  return holder.querySelector('svg');
}

/** Takes the drawing out again. */
export function clearDrawing(holder: HTMLElement | undefined): void {
  holder?.replaceChildren();
}

/** What a view shows, as a drawing of the whole; null before it is laid out. */
export function drawingOf(view: LineView, title: string, change: Partial<LineDrawing> = {}): LineDrawing | null {
  const { line, layout, kin, bars, lit, out } = view;
  if (!line || !layout || !kin || !bars) return null;
  return { title, line, layout, kin, bars, lit, out, palette: paletteNow(), fonts: fontsNow(), ...change };
}
