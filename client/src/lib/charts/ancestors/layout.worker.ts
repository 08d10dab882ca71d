import { layoutAncestors } from './ancestor-layout.ts';
import type { LayoutAnswer, LayoutQuestion } from './layout-apart.ts';

/** Lays out large pedigrees beside the page, so that it answers to the reader meanwhile. */
self.onmessage = ({ data }: MessageEvent<LayoutQuestion>): void => {
  const answer: LayoutAnswer = { question: data.question, layout: layoutAncestors(data.view, data.leastWidth) };
  self.postMessage(answer);
};
