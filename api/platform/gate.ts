import { Problem } from './problem.ts';
import { say } from './say.ts';

/** 503: too much of the same work is being done already. */
export class BusyProblem extends Problem {
  override readonly headers = { 'Retry-After': '5' };

  constructor() {
    super('busy', 503, say`Not now`, say`The service is busy with work of this kind. Try again in 5 seconds.`);
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

/** Lets a number of heavy pieces of work be done at once; the others wait for their turn, in order. */
export class Turns {
  #inside = 0;
  readonly #waiting: (() => void)[] = [];

  constructor(private readonly most: number) {}

  /** Does the work when its turn has come, and gives what it gave. */
  async take<Result>(work: () => Promise<Result>): Promise<Result> {
    if (this.#inside >= this.most) await new Promise<void>((resolve) => this.#waiting.push(resolve));
    else this.#inside++;
    try {
      return await work();
    } finally {
      // the place goes to the next one, or becomes free
      const next = this.#waiting.shift();
      if (next) next();
      else this.#inside--;
    }
  }
}
