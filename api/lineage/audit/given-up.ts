import type { Request } from 'express';
import { Problem } from '../../platform/problem.ts';

/** A signal that ends a computation once the connection of a request closes before its answer was sent. */
export function signalOf(request: Request): AbortSignal {
  const controller = new AbortController();
  request.res?.once('close', () => {
    if (!request.res?.writableFinished) controller.abort();
  });
  return controller.signal;
}

/** 503: nobody waited for the answer any more. */
export class GivenUpProblem extends Problem {
  constructor() {
    super('unavailable', 503, 'Given up', 'The connection was closed, and the computation was given up.');
  }
}
