import { sheetHeight, sheetWidth } from '../paper-size.ts';
import { partsOf, type Part } from '../paper-parts.ts';
import { drawingSize, room, type LineDrawing } from './line-svg.ts';
import { sizes } from './line-sizes.ts';

/** More sheets of paper than these nobody lays side by side: then the whole stands on one, to be seen from afar. */
export const MOST_SHEETS = 24;

/** The parts of a line's drawing for paper: families whole, each beside the years. */
export function lineParts(drawing: LineDrawing): { columns: Part[]; rows: Part[] } {
  const { width, height } = drawingSize(drawing);
  const { x, y, width: wide, rows, kind } = drawing.layout.families;
  const across: Part[] = [];
  const down: Part[] = [];
  for (let family = 0; family < x.length; family++) {
    const [middle, top, half] = [x[family] ?? 0, y[family] ?? 0, (wide[family] ?? 0) / 2];
    // names of sources stand above their founders
    const above = kind[family] === 'clutch' ? sizes.ring + 2 : sizes.bracket + 18;
    const below = sizes.toYoung + (rows[family] ?? 1) * sizes.row + sizes.below;
    across.push({ from: room.left + middle - half - 3, to: room.left + middle + half + 3 });
    down.push({ from: Math.max(0, top - above), to: Math.min(height, top + below) });
  }
  return {
    columns: partsOf(across, { from: room.left, to: width }, sheetWidth - room.left),
    rows: partsOf(down, { from: 0, to: height }, sheetHeight),
  };
}
