import { Problem } from './problem.ts';

/** 503: too much of the same work is being done already. */
export class BusyProblem extends Problem {
  override readonly headers = { 'Retry-After': '5' };

  constructor() {
    super('busy', 503, 'Not now', 'The service is busy with work of this kind. Try again in 5 seconds.');
  }
}

/** Lets a number of heavy requests in at once, in this copy of the service. */
export class Gate {
  #inside = 0;

  constructor(private readonly most: number) {}

  /** Gives the way out, which may be called more than once. @throws BusyProblem when it is full */
  enter(): () => void {
    if (this.#inside >= this.most) throw new BusyProblem();
    this.#inside++;
    let isInside = true;
    return () => {
      if (isInside) this.#inside--;
      isInside = false;
    };
  }
}
