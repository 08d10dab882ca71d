import type { Easel } from './line-painter.ts';
import { RULER } from './line-views.ts';
import { sizes } from './line-sizes.ts';
import { placeTitles } from './source-titles.ts';
import { boxOf } from './family-box.ts';

/** Scale from which there is room for the date of a clutch, and for the code of each young. */
const DATES = 1.15;
const CODES = 3.4;
/** Width of a digit of a date, in pixels. */
const DIGIT = 6.8;

/** Names of sources, dates, codes, and the picked animal: written with a halo of the ground over all else. */
export function paintNames(easel: Easel): void {
  const { ctx, line, layout, view, frame, palette, fonts } = easel;
  ctx.lineJoin = 'round';
  ctx.textBaseline = 'alphabetic';
  ctx.textAlign = 'center';
  ctx.strokeStyle = palette('paper');
  ctx.lineWidth = 4;
  ctx.fillStyle = palette('ink');
  ctx.font = `italic 500 14px ${fonts.serif}`;
  for (const { text, x, y } of placeTitles(line, layout, view, frame)) write(easel, text, x, y);
  if (view.k >= DATES) paintDates(easel);
  if (view.k >= CODES) paintCodes(easel);
  paintPicked(easel);
}

function write({ ctx }: Easel, text: string, x: number, y: number): void {
  ctx.strokeText(text, x, y);
  ctx.fillText(text, x, y);
}

/** Dates beside the rings of clutches, of lit ones alone where any are, and none over another. */
function paintDates(easel: Easel): void {
  const { ctx, line, layout, view, palette, fonts, lit, kin } = easel;
  ctx.textAlign = 'left';
  ctx.font = `400 12px ${fonts.sans}`;
  ctx.fillStyle = palette('ink-2');
  const written: { x: number; y: number; width: number }[] = [];
  for (let family = 0; family < layout.families.id.length; family++) {
    if (layout.families.kind[family] !== 'clutch' || !boxOf(easel, family)) continue;
    if (lit && !kin.membersOf(family).some((animal) => lit.marks[animal] !== 0)) continue;
    const laid = line.clutches.laid[layout.families.place[family] ?? -1];
    if (!laid) continue;
    const x = ((layout.families.x[family] ?? 0) + sizes.ring + 2) * view.k + view.x;
    const y = (layout.families.y[family] ?? 0) * view.k + view.y + 3;
    const width = laid.length * DIGIT;
    if (written.some((other) => Math.abs(other.y - y) < 13 && other.x < x + width && x < other.x + other.width))
      continue;
    write(easel, laid, x, y);
    written.push({ x, y, width });
  }
}

function paintCodes(easel: Easel): void {
  const { ctx, line, layout, view, frame, palette, fonts } = easel;
  ctx.textAlign = 'center';
  ctx.font = `400 12px ${fonts.sans}`;
  ctx.fillStyle = palette('ink');
  const wide = sizes.pitch * view.k - 4;
  for (let animal = 0; animal < line.animals.id.length; animal++) {
    const x = (layout.animals.x[animal] ?? 0) * view.k + view.x;
    const y = ((layout.animals.y[animal] ?? 0) + sizes.symbol) * view.k + view.y + 12;
    if (x < 0 || x > frame.width || y < 0 || y > frame.height) continue;
    const text = line.animals.code[animal] ?? line.animals.number[animal] ?? '';
    if (ctx.measureText(text).width <= wide) write(easel, text, x, y);
  }
}

/** The picked animal, ringed, with its name at its right; at its left where there is no room. */
function paintPicked(easel: Easel): void {
  const { ctx, line, layout, lit, view, frame, palette, fonts } = easel;
  if (!lit) return;
  const x = (layout.animals.x[lit.animal] ?? 0) * view.k + view.x;
  const y = (layout.animals.y[lit.animal] ?? 0) * view.k + view.y;
  if (x < RULER - 8 || x > frame.width || y < 0 || y > frame.height) return;
  const r = Math.max(6, (sizes.symbol + 2.5) * view.k);
  ctx.beginPath();
  ctx.arc(x, y, r, 0, 2 * Math.PI);
  ctx.lineWidth = 4;
  ctx.strokeStyle = palette('paper');
  ctx.stroke();
  ctx.lineWidth = 2;
  ctx.strokeStyle = palette('pen');
  ctx.stroke();
  const name = line.animals.code[lit.animal] ?? line.animals.number[lit.animal] ?? '';
  ctx.font = `700 14px ${fonts.sans}`;
  const isLeft = x + r + 8 + ctx.measureText(name).width > frame.width;
  ctx.textAlign = isLeft ? 'right' : 'left';
  ctx.lineWidth = 5;
  ctx.strokeStyle = palette('paper');
  ctx.fillStyle = palette('ink');
  write(easel, name, isLeft ? x - r - 5 : x + r + 5, y + 5);
}
