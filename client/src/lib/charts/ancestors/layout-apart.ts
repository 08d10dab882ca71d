import type { AncestorLayout } from './ancestor-layout.ts';
import type { PedigreeView } from './pedigree-view.ts';

/** What the worker is asked. */
export interface LayoutQuestion {
  question: number;
  view: PedigreeView;
  leastWidth: number;
}

/** What it answers: the same layout that `layoutAncestors` gives. */
export interface LayoutAnswer {
  question: number;
  layout: AncestorLayout;
}

/** The worker of the page, started when it is first wanted; one is enough for all charts. */
let worker: Worker | null = null;
let asked = 0;

/** Starts the worker ahead of its first question, for who knows that a large pedigree is coming. */
export function readyWorker(): Worker | null {
  if (typeof Worker === 'undefined') return null;
  worker ??= new Worker(new URL('./layout.worker.ts', import.meta.url), { type: 'module' });
  return worker;
}

/**
 * Lays a pedigree out in a worker. Rejects where there is none or it fails; then `layoutAncestors` gives the same answer in the page.
 */
export function layoutApart(view: PedigreeView, leastWidth: number): Promise<AncestorLayout> {
  const running = readyWorker();
  if (!running) return Promise.reject(new Error('This browser has no workers.'));
  const question = ++asked;
  return new Promise((resolve, reject) => {
    const ended = new AbortController();
    const hear = ({ data }: MessageEvent<LayoutAnswer>): void => {
      if (data.question !== question) return;
      ended.abort();
      resolve(data.layout);
    };
    const fail = (): void => {
      ended.abort();
      running.terminate();
      if (worker === running) worker = null;
      reject(new Error('The worker failed.'));
    };
    running.addEventListener('message', hear, { signal: ended.signal });
    running.addEventListener('error', fail, { signal: ended.signal });
    running.postMessage({ question, view, leastWidth } satisfies LayoutQuestion);
  });
}
