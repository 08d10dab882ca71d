import type { LineOverTime } from '$lib/api/types.ts';
import type { BarParts } from './bar-parts.ts';
import type { Fill, Palette } from './fills.ts';
import { keyOf, type KeyEntry } from './line-key.ts';
import type { Lit, LineKin } from './line-kin.ts';
import type { LineLayout } from './line-layout.ts';
import { sizes } from './line-sizes.ts';
import { placeTitles } from './source-titles.ts';
import { symbolPaths } from './symbol-paths.ts';
import { barTop } from './family-box.ts';
import { yearTicks } from './year-ticks.ts';

/** What a drawing of a whole line shows besides the line. */
export interface LineDrawing {
  readonly title: string;
  readonly line: LineOverTime;
  readonly layout: LineLayout;
  readonly bars: BarParts;
  /** Colours: as the page shows them, or names that the page fills in. */
  readonly palette: Palette;
  readonly fonts: { readonly sans: string; readonly serif: string };
  readonly kin: LineKin;
  readonly lit: Lit | null;
  /** 1 for animals that the filters set aside. */
  readonly out: Uint8Array;
  /** Style rules that carry the fonts, for a file; empty where the page has them. */
  readonly fontRules?: string;
  /** Whether it stands in the page, which has a heading, the fillings and a key already. */
  readonly isInPage?: boolean;
}

/** Room for the years at the left, above the plane, and for the key below it. */
export const room = { left: 52, top: 34, bottom: 26, row: 20 } as const;
const round = (value: number): string => String(Math.round(value * 10) / 10);
const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (letter) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[letter] ?? letter);

/** Size of the whole drawing in CSS pixels. */
export function drawingSize({ layout, bars, line, isInPage }: LineDrawing): { width: number; height: number } {
  const width = Math.max(room.left + layout.width, 420);
  if (isInPage) return { width, height: layout.height + room.bottom };
  const rows = keyRows(keyOf(line, bars), width).length;
  return { width, height: room.top + layout.height + room.bottom + rows * room.row };
}

/**
 * The whole line as the text of an SVG, at its natural size and from the same layout as on the screen: paths of many symbols each, so that
 * ten thousand animals make some dozens of elements.
 */
export function lineSvg(drawing: LineDrawing): string {
  const { layout, palette, fonts, title, isInPage } = drawing;
  const { width, height } = drawingSize(drawing);
  const top = isInPage ? 0 : room.top;
  const plane = [streams(drawing), barsOf(drawing), rings(drawing), symbols(drawing), titles(drawing)].join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${round(width)}" height="${round(height)}" viewBox="0 0 ${round(width)} ${round(height)}" font-family="${escaped(fonts.sans)}" font-size="12">` +
    `<title>${escaped(title)}</title>${isInPage ? '' : standingAlone(drawing)}` +
    `<rect width="100%" height="100%" fill="${palette('paper')}"/>` +
    `<g transform="translate(${room.left} ${top})">${ground(drawing)}${plane}</g>` +
    (isInPage
      ? ''
      : `<text x="${room.left}" y="20" font-family="${escaped(fonts.serif)}" font-size="17" font-weight="600" fill="${palette('ink')}">${escaped(title)}</text>` +
        keyText(drawing, width, top + layout.height + room.bottom)) +
    '</svg>'
  );
}

/** What a file brings along that the page has: fonts and fillings. */
function standingAlone({ bars, palette, fontRules }: LineDrawing): string {
  const fillings = bars.fills.map((fill) => patternText(fill, palette)).join('');
  return `${fontRules ? `<style>${fontRules}</style>` : ''}<defs>${fillings}</defs>`;
}

/** A filling as the definition of a pattern. */
export function patternText({ id, size, isTurned, ground: back, pen, marks }: Fill, palette: Palette): string {
  const drawn = marks.map((mark) =>
    mark.kind === 'rect'
      ? `<rect x="${mark.x}" y="${mark.y}" width="${mark.w}" height="${mark.h}" fill="${palette(pen)}"/>`
      : `<circle cx="${mark.x}" cy="${mark.y}" r="${mark.r}" fill="${palette(pen)}"/>`,
  );
  return (
    `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"${isTurned ? ' patternTransform="rotate(45)"' : ''}>` +
    `<rect width="${size}" height="${size}" fill="${palette(back)}"/>${drawn.join('')}</pattern>`
  );
}

function ground({ layout, palette }: LineDrawing): string {
  if (!layout.isDated) return '';
  return yearTicks(layout, 1)
    .map(
      ({ year, y, isStrong }) =>
        `<path d="M-6 ${round(y)}H${round(layout.width)}" stroke="${palette(isStrong ? 'firm' : 'hair')}"/>` +
        `<text x="-10" y="${round(y + 4)}" text-anchor="end" fill="${palette('ink-2')}"${isStrong ? ' font-weight="700"' : ''}>${year}</text>`,
    )
    .join('');
}

function streams({ layout, palette, lit, kin }: LineDrawing): string {
  const faint: string[] = [];
  const unsure: string[] = [];
  const marked: string[] = [];
  const { animal, family, probability } = layout.links;
  animal.forEach((parent, link) => {
    const child = family[link] ?? 0;
    const path = streamPath(layout, parent, child);
    if (lit && kin.isLitLink(link, lit)) marked.push(path);
    else (Number(probability[link]) < 1 ? unsure : faint).push(path);
  });
  const pen = (paths: string[], more: string): string =>
    paths.length === 0 ? '' : `<path fill="none" ${more} d="${paths.join('')}"/>`;
  const thin = `stroke="${palette('firm')}" stroke-width="0.7" stroke-opacity="0.6"`;
  return (
    pen(faint, thin) +
    pen(unsure, `${thin} stroke-dasharray="4 3"`) +
    pen(marked, `stroke="${palette('paper')}" stroke-width="5"`) +
    pen(marked, `stroke="${palette('pen')}" stroke-width="2"`)
  );
}

/** From under a parent down to the ring of its young. */
function streamPath({ animals, families }: LineLayout, parent: number, family: number): string {
  const [x, y] = [animals.x[parent] ?? 0, (animals.y[parent] ?? 0) + sizes.symbol];
  const [toX, toY] = [families.x[family] ?? 0, (families.y[family] ?? 0) - sizes.ring];
  const bend = (toY - y) * 0.45;
  return `M${round(x)} ${round(y)}C${round(x)} ${round(y + bend)} ${round(toX)} ${round(toY - bend)} ${round(toX)} ${round(toY)}`;
}

function barsOf({ layout, bars, palette }: LineDrawing): string {
  const { families } = layout;
  const paths = bars.fills.map((): string[] => []);
  const frames: string[] = [];
  families.id.forEach((_, family) => {
    const [from, to] = [bars.start[family] ?? 0, bars.start[family + 1] ?? 0];
    const width = families.width[family] ?? 0;
    const top = (families.y[family] ?? 0) + barTop(families.kind[family] ?? 'lone');
    let x = (families.x[family] ?? 0) - width / 2;
    const box = (left: number, wide: number): string =>
      `M${round(left)} ${round(top)}h${round(wide)}v${sizes.bar}h${round(-wide)}z`;
    frames.push(box(x, width));
    for (let part = from; part < to; part++) {
      const wide = (bars.share[part] ?? 0) * width;
      paths[bars.fill[part] ?? 0]?.push(box(x, wide));
      x += wide;
    }
  });
  const filled = paths.map((path, at) =>
    path.length === 0
      ? ''
      : `<path fill="url(#${bars.fills[at]?.id})" stroke="${palette('ink')}" stroke-width="0.5" d="${path.join('')}"/>`,
  );
  return `${filled.join('')}<path fill="none" stroke="${palette('ink')}" stroke-width="0.8" d="${frames.join('')}"/>`;
}

function rings({ layout: { families }, palette }: LineDrawing): string {
  const [firm, loose, spans]: [string[], string[], string[]] = [[], [], []];
  families.id.forEach((_, family) => {
    const [x, y] = [families.x[family] ?? 0, families.y[family] ?? 0];
    const [from, to] = [families.from[family] ?? NaN, families.to[family] ?? NaN];
    if (!Number.isNaN(from) && !Number.isNaN(to)) spans.push(`M${round(x)} ${round(Math.max(0, from))}V${round(to)}`);
    if (families.kind[family] !== 'clutch') return;
    const r = sizes.ring;
    const circle = `M${round(x - r)} ${round(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
    (families.loose[family] === 1 ? loose : firm).push(circle);
  });
  const pen = (paths: string[], more: string): string =>
    paths.length === 0 ? '' : `<path ${more} d="${paths.join('')}"/>`;
  return (
    pen(spans, `fill="none" stroke="${palette('firm')}" stroke-dasharray="1 3"`) +
    pen(firm, `fill="${palette('paper')}" stroke="${palette('ink')}"`) +
    pen(loose, `fill="${palette('paper')}" stroke="${palette('ink-3')}" stroke-dasharray="2 1.5"`)
  );
}

function symbols({ line, layout, palette, lit, out }: LineDrawing): string {
  const paths = symbolPaths(line, layout, (animal) =>
    lit && lit.marks[animal] !== 0 ? 'pen' : lit || out[animal] === 1 ? 'firm' : 'ink',
  );
  return paths
    .map(({ token, isFilled, path }) => {
      const colour = palette(token);
      return `<path fill="${isFilled ? colour : palette('paper')}" stroke="${colour}" stroke-width="1" d="${path}"/>`;
    })
    .join('');
}

function titles({ line, layout, palette, fonts }: LineDrawing): string {
  return placeTitles(line, layout, { k: 1, x: 0, y: 0 }, { width: layout.width, height: layout.height })
    .map(
      ({ text, x, y }) =>
        `<text x="${round(x)}" y="${round(y)}" text-anchor="middle" font-family="${escaped(fonts.serif)}" font-size="13" font-style="italic" fill="${palette('ink')}" stroke="${palette('paper')}" stroke-width="3" stroke-linejoin="round" paint-order="stroke">${escaped(text)}</text>`,
    )
    .join('');
}

function keyRows(entries: readonly KeyEntry[], width: number): { entry: KeyEntry; x: number }[][] {
  const rows: { entry: KeyEntry; x: number }[][] = [[]];
  let x: number = room.left;
  for (const entry of entries) {
    const wide = 46 + entry.text.length * 6.6;
    if (x + wide > width && x > room.left) {
      rows.push([]);
      x = room.left;
    }
    rows.at(-1)?.push({ entry, x });
    x += wide;
  }
  return rows;
}

function keyText({ line, bars, palette }: LineDrawing, width: number, top: number): string {
  return keyRows(keyOf(line, bars), width)
    .flatMap((row, at) =>
      row.map(({ entry, x }) => {
        const y = top + at * room.row - 10;
        return (
          `<rect x="${round(x)}" y="${round(y)}" width="24" height="11" fill="url(#${entry.fill})" stroke="${palette('ink')}" stroke-width="0.8"/>` +
          `<text x="${round(x + 30)}" y="${round(y + 10)}" fill="${palette('ink')}">${escaped(entry.text)}</text>`
        );
      }),
    )
    .join('');
}
