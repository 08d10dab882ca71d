import type { LineOverTime } from '$lib/api/types.ts';
import { layoutLine } from './line-layout.ts';

/** Lays a line out beside the page, so that the page stays quick meanwhile. */
self.onmessage = ({ data }: MessageEvent<LineOverTime>): void => {
  self.postMessage(layoutLine(data));
};
