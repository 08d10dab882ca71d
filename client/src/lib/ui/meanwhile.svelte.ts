import { ProblemError } from '../api/problem.ts';

/** What of a record a form may change, and the version that it stands in. */
export interface Recorded<Fields> {
  readonly fields: Fields;
  readonly version: number;
}

/**
 * What a form began with, against what is recorded by now. What else is changed on the record stands in nobody's way; but where one of
 * these fields is no longer what the form began with, the first attempt to write is left to the register to refuse, and what was
 * recorded meanwhile is shown. Writing once more then goes on top of it.
 */
export class Meanwhile<Fields extends Record<string, string>> {
  readonly #now: () => Recorded<Fields>;
  #begun = $state.raw<Recorded<Fields>>() as Recorded<Fields>;

  /** `now`: what is recorded, as the page knows it. */
  constructor(now: () => Recorded<Fields>) {
    this.#now = now;
    this.#begun = now();
  }

  /** What the form began with. */
  get before(): Fields {
    return this.#begun.fields;
  }

  /** Whether any of the fields was recorded otherwise since. */
  get isOvertaken(): boolean {
    return Object.keys(this.before).some((field) => this.other(field) !== undefined);
  }

  /** Begins with what is recorded now. */
  begin(): Fields {
    this.#begun = this.#now();
    return { ...this.before };
  }

  /** What is recorded in a field by now; undefined where that is what the form began with. */
  other(field: keyof Fields): Fields[keyof Fields] | undefined {
    const recorded = this.#now().fields[field];
    return recorded === this.before[field] ? undefined : recorded;
  }

  /** The same in words. */
  theirs(field: keyof Fields, words = (recorded: string): string => recorded): string | undefined {
    const recorded = this.other(field);
    return recorded === undefined ? undefined : `Recorded meanwhile: ${words(recorded) || 'nothing'}`;
  }

  /** Writes at the version that the form stands on. Throws `ProblemError`. */
  async write<T>(send: (version: number) => Promise<T>, readAgain: () => unknown): Promise<T> {
    const { version } = this.isOvertaken ? this.#begun : this.#now();
    return unlessStale(
      () => send(version),
      async () => {
        await readAgain();
        this.#begun = { fields: this.before, version: this.#now().version };
      },
    );
  }
}

/** Writes; where somebody else was quicker, the record is read again before that is told. Throws `ProblemError`. */
export async function unlessStale<T>(write: () => Promise<T>, readAgain: () => unknown): Promise<T> {
  try {
    return await write();
  } catch (problem) {
    if (problem instanceof ProblemError && problem.status === 412) await readAgain();
    throw problem;
  }
}
