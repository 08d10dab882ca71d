import type { ClaimFacts } from '../provenance/claim-facts.ts';
import type { ClaimSubject } from './claim-rows.queries.ts';

/** The claims in force of each source, animal and line, by its dense number; one without any is not among them. */
export interface ClaimsOfRecords {
  readonly source: ReadonlyMap<number, readonly ClaimFacts[]>;
  readonly individual: ReadonlyMap<number, readonly ClaimFacts[]>;
  readonly line: ReadonlyMap<number, readonly ClaimFacts[]>;
}

type Held = Record<ClaimSubject, Map<number, readonly ClaimFacts[]>>;

/** The claims in memory, led from one state to the next: what was shown of a state never changes. */
export class RegisterClaims {
  #held: Held;
  #isShown = false;

  constructor(claims?: ClaimsOfRecords) {
    this.#held = {
      source: new Map(claims?.source),
      individual: new Map(claims?.individual),
      line: new Map(claims?.line),
    };
  }

  /** Forgets the claims of records that are about to be read again. */
  clear(subject: ClaimSubject, numbers: Iterable<number>): void {
    for (const number of numbers) if (this.#held[subject].has(number)) this.#writable(subject).delete(number);
  }

  add(subject: ClaimSubject, number: number, claim: ClaimFacts): void {
    const held = this.#writable(subject);
    held.set(number, [...(held.get(number) ?? []), claim]);
  }

  show(): ClaimsOfRecords {
    this.#isShown = true;
    return this.#held;
  }

  #writable(subject: ClaimSubject): Map<number, readonly ClaimFacts[]> {
    if (this.#isShown) {
      const { source, individual, line } = this.#held;
      this.#held = { source: new Map(source), individual: new Map(individual), line: new Map(line) };
      this.#isShown = false;
    }
    return this.#held[subject];
  }
}
