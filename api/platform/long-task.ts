import type { MessagePort } from 'node:worker_threads';

/** How far a long task has come; `done` of `total`, in steps of its own. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** What reaches a thread: the input of its task, and where progress is told if somebody listens. */
export interface LongTaskMessage<Input> {
  readonly input: Input;
  readonly port: MessagePort | null;
}

/** A module that a thread runs, by its place; the types are those of its `longTask`. */
export interface LongTaskModule<Input, Result> {
  readonly filename: string;
  /** Never filled: it only carries the types from where a task is named to where its answer is read. */
  readonly types?: { readonly input: Input; readonly result: Result };
}

/**
 * Names a task by the file that makes it with `longTask` as its default export.
 *
 * @param file path from the naming module, ending in .ts
 * @param from `import.meta.url` of the naming module
 */
export function longTaskModule<Input, Result>(file: string, from: string): LongTaskModule<Input, Result> {
  const url = new URL(file, from);
  // Node 20 reads no TypeScript in a thread: what runs from its source, as tests do, uses the build
  if (from.endsWith('.ts')) url.pathname = url.pathname.replace('/api/', '/dist/api/');
  url.pathname = url.pathname.replace(/\.ts$/, '.js');
  return { filename: url.href };
}

/**
 * Makes the default export of a task's module. The task runs in a thread of its own and must only read what it is given.
 *
 * @param work gets the input and a function that tells progress, which costs a message: tell it some dozen times at most
 */
export function longTask<Input, Result>(
  work: (input: Input, tell: (progress: Progress) => void) => Result | Promise<Result>,
): (message: LongTaskMessage<Input>) => Promise<Result> {
  return async ({ input, port }) => {
    try {
      return await work(input, (progress) => port?.postMessage(progress));
    } finally {
      port?.close();
    }
  };
}
