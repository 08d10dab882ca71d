import type { LineOverTime } from '$lib/api/types.ts';
import { layoutLine, type LineLayout } from './line-layout.ts';

/** Up to so many animals a worker would take longer to start than the layout takes. */
const AT_ONCE = 100;

/**
 * Lays a line out: a small one at once, others in a worker.
 *
 * @throws Error if the worker cannot be started or fails
 */
export async function layOut(line: LineOverTime): Promise<LineLayout> {
  if (line.animals.id.length <= AT_ONCE) return layoutLine(line);
  const worker = new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' });
  try {
    return await new Promise<LineLayout>((done, failed) => {
      worker.onmessage = ({ data }: MessageEvent<LineLayout>) => done(data);
      worker.onerror = (event) => failed(new Error(event.message));
      worker.postMessage(line);
    });
  } finally {
    worker.terminate();
  }
}
