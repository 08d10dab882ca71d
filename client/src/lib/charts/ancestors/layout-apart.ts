import { LayoutWorker } from '../layout-worker.ts';
import { layoutAncestors, type AncestorLayout } from './ancestor-layout.ts';
import type { PedigreeView } from './pedigree-view.ts';

/** What the worker is asked. */
export interface AncestorQuestion {
  view: PedigreeView;
  leastWidth: number;
}

/** Large pedigrees are laid out beside the page. */
export const ancestorsApart = new LayoutWorker<AncestorQuestion, AncestorLayout>(
  () => new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' }),
  ({ view, leastWidth }) => layoutAncestors(view, leastWidth),
);
