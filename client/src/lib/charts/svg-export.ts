import { fontRules } from './svg-fonts.ts';

const drawn = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'font-feature-settings',
  'letter-spacing',
  'text-anchor',
  'text-decoration-line',
  'dominant-baseline',
  'paint-order',
  'opacity',
  'display',
  'visibility',
] as const;

const namespace = 'http://www.w3.org/2000/svg';

/**
 * A drawing of the page as the text of a file that stands alone: every style written out in plain colours, the fonts and patterns it
 * uses inside, the page's ground behind it. Links are left out, since the file leaves the register.
 */
export async function standaloneSvg(svg: SVGSVGElement, title: string): Promise<string> {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  writeStyles(svg, copy);
  copy.setAttribute('xmlns', namespace);
  copy.removeAttribute('role');
  // by which the page finds it; it would differ from one opening of the page to the next
  copy.removeAttribute('id');
  const { width, height } = sizeOf(svg);
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  const name = document.createElementNS(namespace, 'title');
  name.textContent = title;
  const fonts = document.createElementNS(namespace, 'style');
  fonts.textContent = await fontRules(svg);
  copy.prepend(name, fonts, patternsOf(copy), groundOf(svg));
  for (const link of [...copy.querySelectorAll<SVGAElement>('a')]) unlink(link);
  return new XMLSerializer().serializeToString(copy);
}

/** The drawing's own measures, whatever size the page shows it at. */
function sizeOf(svg: SVGSVGElement): { width: number; height: number } {
  const box = svg.viewBox.baseVal;
  const shown = svg.getBoundingClientRect();
  return box.width > 0 ? { width: box.width, height: box.height } : { width: shown.width, height: shown.height };
}

function groundOf(svg: SVGSVGElement): SVGElement {
  const ground = document.createElementNS(namespace, 'rect');
  const { x, y } = svg.viewBox.baseVal;
  ground.setAttribute('x', String(x));
  ground.setAttribute('y', String(y));
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', getComputedStyle(document.documentElement).backgroundColor);
  return ground;
}

function patternsOf(copy: SVGElement): SVGElement {
  const defs = document.createElementNS(namespace, 'defs');
  for (const id of usedPatterns(copy)) {
    const pattern = document.querySelector<SVGPatternElement>(`#${CSS.escape(id)}`);
    if (!pattern || copy.querySelector(`#${CSS.escape(id)}`)) continue;
    const kept = pattern.cloneNode(true) as SVGElement;
    writeStyles(pattern, kept);
    defs.append(kept);
  }
  return defs;
}

function unlink(link: SVGAElement): void {
  const group = document.createElementNS(namespace, 'g');
  group.style.cssText = link.style.cssText;
  group.append(...link.childNodes);
  link.replaceWith(group);
}

function writeStyles(from: SVGElement, to: SVGElement): void {
  const originals = [from, ...from.querySelectorAll<SVGElement>('*')];
  const copies = [to, ...to.querySelectorAll<SVGElement>('*')];
  originals.forEach((original, index) => {
    const copy = copies[index];
    if (!copy) return;
    const style = getComputedStyle(original);
    // through the style object: the page's policy allows no style attributes
    for (const name of drawn) copy.style.setProperty(name, style.getPropertyValue(name));
    for (const pen of ['fill', 'stroke']) {
      const { colour, part } = plainColour(style.getPropertyValue(pen));
      copy.style.setProperty(pen, colour);
      if (part < 1)
        copy.style.setProperty(`${pen}-opacity`, String(part * Number(style.getPropertyValue(`${pen}-opacity`))));
    }
    for (const name of [...copy.getAttributeNames()])
      if (
        ['class', 'tabindex', 'role', 'focusable'].includes(name) ||
        name.startsWith('data-') ||
        name.startsWith('aria-') ||
        copy.getAttribute(name)?.includes('var(')
      )
        copy.removeAttribute(name);
  });
}

/**
 * A computed colour as every program reads it, with its opacity (0 to 1) apart: `color(srgb 1 0.5 0 / 0.3)` is `rgb(255, 128, 0)` and
 * 0.3. What is no colour (`none`, a pattern) stays as it is.
 */
export function plainColour(value: string): { colour: string; part: number } {
  const mixed = /^color\(srgb ([\d.e-]+) ([\d.e-]+) ([\d.e-]+)(?: \/ ([\d.]+))?\)$/.exec(value);
  const clear = /^rgba\((\d+), (\d+), (\d+), ([\d.]+)\)$/.exec(value);
  const [, red, green, blue, part] = mixed ?? clear ?? [];
  if (red === undefined) return { colour: value, part: 1 };
  const scale = mixed ? 255 : 1;
  const parts = [red, green, blue].map((one) => Math.round(Math.min(255, Math.max(0, Number(one) * scale))));
  return { colour: `rgb(${parts.join(', ')})`, part: part === undefined ? 1 : Number(part) };
}

function usedPatterns(svg: Element): Set<string> {
  const ids = new Set<string>();
  for (const element of svg.querySelectorAll('*'))
    for (const match of (element.getAttribute('style') ?? '').matchAll(/url\((?:"|&quot;)?[^#)]*#([\w-]+)/g))
      ids.add(match[1] ?? '');
  return ids;
}

/** Sides and area, in dots, that every browser can still paint on. */
const canvasLimits = { side: 16_000, area: 160e6 };

/**
 * A drawing of the page as a picture, `scale` dots to a CSS pixel; fewer where the picture would be larger than a browser can paint.
 *
 * @throws Error if the browser cannot paint it at all
 */
export async function pngOf(svg: SVGSVGElement, title: string, scale = 2): Promise<Blob> {
  return pngOfText(await standaloneSvg(svg, title), sizeOf(svg), scale);
}

/** The text of an SVG as a picture; sizes in CSS pixels, errors and scale as for `pngOf`. */
export async function pngOfText(
  text: string,
  { width, height }: { width: number; height: number },
  scale = 2,
): Promise<Blob> {
  const fits = Math.min(
    scale,
    canvasLimits.side / Math.max(width, height),
    Math.sqrt(canvasLimits.area / width / height),
  );
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * fits);
  canvas.height = Math.round(height * fits);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const picture = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!picture) throw new Error('The browser could not paint a picture of this size.');
  return picture;
}

/** Hands a text or a picture to the reader as a file. */
export function offerFile(content: string | Blob, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
