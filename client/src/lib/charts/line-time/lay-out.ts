import type { LineOverTime } from '$lib/api/types.ts';
import { LayoutWorker, nodesInPage } from '../layout-worker.ts';
import { layoutLine, type LineLayout } from './line-layout.ts';

const linesApart = new LayoutWorker<LineOverTime, LineLayout>(
  () => new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' }),
  layoutLine,
);

/** Lays a line out: a small one at once, others beside the page. */
export async function layOut(line: LineOverTime): Promise<LineLayout> {
  return line.animals.id.length <= nodesInPage ? layoutLine(line) : linesApart.layOut(line);
}
