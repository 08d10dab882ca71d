import { LayoutWorker } from '../layout-worker.ts';
import { layoutDescendants, type DescendantLayout } from './descendant-layout.ts';
import type { ChartDescendant, YoungOf } from './families.ts';

/** What the worker is asked. */
export interface DescendantQuestion {
  root: ChartDescendant;
  youngOf: YoungOf;
  opened: ReadonlySet<string>;
  leastWidth: number;
}

/** Large families are laid out beside the page. */
export const descendantsApart = new LayoutWorker<DescendantQuestion, DescendantLayout>(
  () => new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' }),
  ({ root, youngOf, opened, leastWidth }) => layoutDescendants(root, youngOf, opened, leastWidth),
);
