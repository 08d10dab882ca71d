/** Thrown when an animal would be its own ancestor. Such a pedigree has no order in which parents come first. */
export class LoopError extends Error {
  /** The members of one loop: each is a candidate parent of the next, and the last of the first. */
  readonly individuals: readonly number[];

  constructor(individuals: readonly number[]) {
    super(`Individuals ${individuals.join(' > ')} form a loop: each would be an ancestor of itself.`);
    this.name = 'LoopError';
    this.individuals = individuals;
  }
}
