import type { Request } from 'express';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/**
 * A signal that ends a computation once the connection of a request closes before its answer was sent; it is given at once where that
 * has happened already, while it was found out who asks.
 */
export function signalOf({ res }: Request): AbortSignal {
  const controller = new AbortController();
  const giveUp = (): void => {
    if (!res?.writableFinished) controller.abort();
  };
  if (res?.closed) giveUp();
  else res?.once('close', giveUp);
  return controller.signal;
}

/** 503: nobody waited for the answer any more. */
export class GivenUpProblem extends Problem {
  constructor() {
    super('unavailable', 503, say`Given up`, say`The connection was closed, and the computation was given up.`);
  }
}
