import type { Fill } from './fills.ts';
import type { LineScene } from './line-painter.ts';

/** Tiles are made once for each colouring, scale of the screen and theme. */
const tiles = new Map<string, HTMLCanvasElement>();
const TILES_MOST = 200;

/**
 * The fillings of the bars for a canvas, moved with the view so that they do not swim under it. Where a bar is too low for a pattern to be
 * told, its colour alone.
 */
export function patternsOf(ctx: CanvasRenderingContext2D, scene: LineScene): (CanvasPattern | string)[] {
  const { bars, view, palette } = scene;
  return bars.fills.map((fill) => {
    const tile = tileOf(fill, scene);
    const pattern = ctx.createPattern(tile, 'repeat');
    if (!pattern) return palette(fill.pen);
    const scale = fill.size / tile.width;
    const placed = new DOMMatrix().translate(view.x % 1000, view.y % 1000);
    pattern.setTransform((fill.isTurned ? placed.rotate(45) : placed).scale(scale, scale));
    return pattern;
  });
}

function tileOf(fill: Fill, { dots, palette }: LineScene): HTMLCanvasElement {
  const key = [fill.id, dots, palette(fill.ground), palette(fill.pen)].join(' ');
  const known = tiles.get(key);
  if (known) return known;
  const tile = document.createElement('canvas');
  tile.width = tile.height = Math.max(2, Math.round(fill.size * Math.max(2, dots)));
  const ctx = tile.getContext('2d');
  const scale = tile.width / fill.size;
  if (ctx) {
    ctx.scale(scale, scale);
    ctx.fillStyle = palette(fill.ground);
    ctx.fillRect(0, 0, fill.size, fill.size);
    ctx.fillStyle = palette(fill.pen);
    for (const mark of fill.marks) {
      if (mark.kind === 'rect') ctx.fillRect(mark.x, mark.y, mark.w, mark.h);
      else {
        ctx.beginPath();
        ctx.arc(mark.x, mark.y, mark.r, 0, 2 * Math.PI);
        ctx.fill();
      }
    }
  }
  if (tiles.size > TILES_MOST) tiles.clear();
  tiles.set(key, tile);
  return tile;
}
