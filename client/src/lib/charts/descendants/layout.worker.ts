import { answerLayouts } from '../layout-worker.ts';
import { layoutDescendants } from './descendant-layout.ts';
import type { DescendantQuestion } from './layout-apart.ts';

answerLayouts(({ root, youngOf, opened, leastWidth }: DescendantQuestion) =>
  layoutDescendants(root, youngOf, opened, leastWidth),
);
