import type { Pedigree } from './pedigree.ts';

/** Animals among which kinships are asked for. They are individuals 0 .. count−1. */
export interface ChosenYoung {
  readonly count: number;
  /** m: the first chosen young of a clutch, −1 if it has none. */
  readonly firstYoung: Int32Array;
  /** count: the next chosen young of the same clutch, −1 after the last; of no meaning for founders. */
  readonly nextYoung: Int32Array;
}

/** The same, and who wants to know when a frontier sweep passes by. */
export interface Chosen extends ChosenYoung {
  /**
   * Told for each of them once, parents first: its kinships with those told before it in the same component.
   *
   * @param kinships they stand from place `start` on, in the order in which they were told; read them at once
   */
  tell(individual: number, kinships: Float64Array, start: number): void;
}

/** Chains the first so many individuals of a pedigree by their clutches. */
export function chainChosen(pedigree: Pedigree, count: number): ChosenYoung {
  const firstYoung = new Int32Array(pedigree.pairStart.length - 1).fill(-1);
  const nextYoung = new Int32Array(count).fill(-1);
  for (let individual = count - 1; individual >= 0; individual--) {
    const clutch = pedigree.clutchOf[individual] as number;
    if (clutch < 0) continue;
    nextYoung[individual] = firstYoung[clutch] as number;
    firstYoung[clutch] = individual;
  }
  return { count, firstYoung, nextYoung };
}
