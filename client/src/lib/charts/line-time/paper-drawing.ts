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
