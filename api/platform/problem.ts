import { say } from './say.ts';
/** One thing that is wrong: where it stands (a JSON pointer, or the row and column of a sheet) and what to do about it. */
export interface ProblemError {
  readonly pointer?: string;
  readonly row?: number;
  readonly column?: string;
  readonly detail: string;
}

/** Something the service will not do, told as RFC 9457 tells it. Thrown where it is known; one filter answers with it. */
export class Problem extends Error {
  readonly slug: string;
  readonly status: number;
  readonly title: string;
  readonly errors: readonly ProblemError[] | undefined;
  readonly extra: Readonly<Record<string, unknown>>;
  /** Header fields that the answer carries besides. */
  readonly headers: Readonly<Record<string, string>> = {};

  constructor(
    slug: string,
    status: number,
    title: string,
    detail: string,
    errors?: readonly ProblemError[],
    extra: Record<string, unknown> = {},
  ) {
    super(detail);
    this.slug = slug;
    this.status = status;
    this.title = title;
    this.errors = errors;
    this.extra = extra;
  }
}

/** 404: there is no such record. `what` is a word of the trade ("animal", "clutch"). */
export class NotFoundProblem extends Problem {
  constructor(what: string, id: string) {
    super('not-found', 404, say`Not found`, say`There is no ${what} with the id ${id}.`);
  }
}

/** 422: the request says something that the register cannot take; each error names its field. */
export class InvalidProblem extends Problem {
  constructor(detail: string, errors: readonly ProblemError[], extra?: Record<string, unknown>) {
    super('invalid', 422, say`Not valid`, detail, errors, extra);
  }
}

/** 409: a rule of the register stands against it as things are now. */
export class ConflictProblem extends Problem {
  constructor(detail: string, extra?: Record<string, unknown>, errors?: readonly ProblemError[]) {
    super('conflict', 409, say`Against a rule`, detail, errors, extra);
  }
}

/** 409: the same request, under the same Idempotency-Key, came before and has no answer yet. It is no refusal: a program asks again. */
export class StillAtWorkProblem extends Problem {
  override readonly headers = { 'Retry-After': '2' };

  constructor() {
    super(
      'still-at-work',
      409,
      say`Still at work`,
      say`The same request is still being worked on. Ask again in a moment.`,
    );
  }
}

/** 409: an animal would become its own ancestor. `members` name the animals of the loop, in order, `advice` says what to do. */
export class LoopProblem extends Problem {
  constructor(members: readonly string[], advice = say`Check which of these parents is wrong.`) {
    super(
      'loop',
      409,
      say`An animal cannot be its own ancestor`,
      say`That would close a loop in the lineage: ${[...members, members[0] ?? ''].join(' → ')}. ${advice}`,
      undefined,
      { members },
    );
  }
}

/** 412: somebody changed the record since it was read; the answer carries the record as it is now. */
export class StaleProblem extends Problem {
  constructor(current: unknown) {
    super(
      'stale',
      412,
      say`Changed meanwhile`,
      say`Somebody changed this record after you read it. Look at it again, then decide.`,
      undefined,
      {
        current,
      },
    );
  }
}

/** 428: a change must say which version of the record it was made from. */
export class PreconditionRequiredProblem extends Problem {
  constructor() {
    super(
      'precondition-required',
      428,
      say`If-Match is needed`,
      say`Send the ETag of the record that you read in the If-Match header.`,
    );
  }
}
