import type { Easel } from './line-painter.ts';
import { sizes } from './line-sizes.ts';

/** Streams that are stroked together: many enough to be quick, few enough that crossings darken. */
const TOGETHER = 96;

/** Streams from parents to families: faint, fainter the more there are; those between lit animals in red over all others. */
export function paintStreams(easel: Easel): void {
  const { ctx, layout, palette, lit, kin, dots } = easel;
  const { probability } = layout.links;
  const [sure, unsure, marked]: [number[], number[], number[]] = [[], [], []];
  for (let link = 0; link < probability.length; link++) {
    if (!isInSight(easel, link)) continue;
    if (lit && kin.isLitLink(link, lit)) marked.push(link);
    else ((probability[link] ?? 0) < 1 ? unsure : sure).push(link);
  }
  ctx.strokeStyle = palette('firm');
  // one dot of the screen: thinner lines are quicker, and as thin as a screen can show
  ctx.lineWidth = 1 / dots;
  ctx.globalAlpha = Math.min(0.7, 10 / Math.sqrt(sure.length + unsure.length + 1)) * (lit ? 0.6 : 1);
  strokeAll(easel, sure);
  const isClose = easel.view.k > 0.6;
  if (isClose) ctx.setLineDash([4, 3]);
  strokeAll(easel, unsure);
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
  paintLit(easel, marked);
}

function paintLit(easel: Easel, marked: readonly number[]): void {
  const { ctx, palette, layout, view } = easel;
  const width = view.k < 0.4 ? 1.4 : 2;
  ctx.strokeStyle = palette('paper');
  ctx.lineWidth = width + 3;
  strokeAll(easel, marked);
  ctx.strokeStyle = palette('pen');
  ctx.lineWidth = width;
  const isSure = (link: number): boolean => (layout.links.probability[link] ?? 0) >= 1;
  strokeAll(easel, marked.filter(isSure));
  ctx.setLineDash([5, 4]);
  strokeAll(
    easel,
    marked.filter((link) => !isSure(link)),
  );
  ctx.setLineDash([]);
}

function strokeAll(easel: Easel, links: readonly number[]): void {
  const { ctx } = easel;
  for (let from = 0; from < links.length; from += TOGETHER) {
    ctx.beginPath();
    for (let at = from; at < Math.min(links.length, from + TOGETHER); at++) addStream(easel, links[at] ?? 0);
    ctx.stroke();
  }
}

function addStream({ ctx, layout, view: { k, x, y } }: Easel, link: number): void {
  const { links, animals, families } = layout;
  const [parent, family] = [links.animal[link] ?? 0, links.family[link] ?? 0];
  const fromX = (animals.x[parent] ?? 0) * k + x;
  const fromY = ((animals.y[parent] ?? 0) + sizes.symbol) * k + y;
  const toX = (families.x[family] ?? 0) * k + x;
  const toY = ((families.y[family] ?? 0) - sizes.ring) * k + y;
  const bend = (toY - fromY) * 0.45;
  ctx.moveTo(fromX, fromY);
  ctx.bezierCurveTo(fromX, fromY + bend, toX, toY - bend, toX, toY);
}

function isInSight({ layout, view: { k, x, y }, frame }: Easel, link: number): boolean {
  const { links, animals, families } = layout;
  const [parent, family] = [links.animal[link] ?? 0, links.family[link] ?? 0];
  const top = (animals.y[parent] ?? 0) * k + y;
  const bottom = (families.y[family] ?? 0) * k + y;
  if (bottom < 0 || top > frame.height) return false;
  const [one, other] = [(animals.x[parent] ?? 0) * k + x, (families.x[family] ?? 0) * k + x];
  return Math.max(one, other) >= 0 && Math.min(one, other) <= frame.width;
}
