import type { Easel } from './line-painter.ts';
import { RULER } from './line-views.ts';
import { yearTicks } from './year-ticks.ts';

/** Rules across the plane at the years, and today's. */
export function paintYears({ ctx, layout, view, frame, palette, today }: Easel): void {
  if (!layout.isDated) return;
  const rule = (y: number, colour: string, width: number): void => {
    const at = Math.round(y) + 0.5;
    if (at < 0 || at > frame.height) return;
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.beginPath();
    ctx.moveTo(RULER - 8, at);
    ctx.lineTo(frame.width, at);
    ctx.stroke();
  };
  for (const { y, isStrong } of yearTicks(layout, view.k))
    rule(y * view.k + view.y, palette(isStrong ? 'firm' : 'hair'), 1);
  ctx.setLineDash([6, 4]);
  rule((today - layout.firstYear) * layout.perYear * view.k + view.y, palette('ink-2'), 1);
  ctx.setLineDash([]);
}

/** The ladder of years at the left, over whatever lies under it. */
export function paintRuler({ ctx, layout, view, frame, palette, fonts }: Easel): void {
  if (!layout.isDated) return;
  ctx.fillStyle = palette('paper');
  ctx.fillRect(0, 0, RULER - 8, frame.height);
  ctx.strokeStyle = palette('ink-2');
  ctx.lineWidth = 1;
  ctx.beginPath();
  ctx.moveTo(RULER - 7.5, 0);
  ctx.lineTo(RULER - 7.5, frame.height);
  const ticks = yearTicks(layout, view.k);
  for (const { y } of ticks) {
    const at = Math.round(y * view.k + view.y) + 0.5;
    ctx.moveTo(RULER - 13, at);
    ctx.lineTo(RULER - 8, at);
  }
  ctx.stroke();
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  for (const { year, y, isStrong } of ticks) {
    ctx.fillStyle = palette(isStrong ? 'ink' : 'ink-2');
    ctx.font = `${isStrong ? 700 : 400} 12px ${fonts.sans}`;
    ctx.fillText(String(year), RULER - 15, y * view.k + view.y);
  }
}
