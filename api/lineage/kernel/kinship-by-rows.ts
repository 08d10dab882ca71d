import { collectAncestry } from './ancestry.ts';
import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import { KinshipPasses, LANES } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * The same figures as `kinshipMatrix`, one row after the other, for sets whose matrix is too large to hold. Eight rows are
 * computed at a time, at twice the work, since symmetry is not used.
 *
 * @param individuals different individuals in any order
 * @returns for each of them its kinships with all, in the order of `individuals`; the array is used again for the next row
 */
export function* kinshipByRows(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  individuals: Int32Array,
): Generator<Float64Array> {
  const ancestry = collectAncestry(pedigree, inbreeding.order, individuals);
  const passes = new KinshipPasses(pedigree, inbreeding, ancestry);
  const local = ancestry.asked;
  const clutches = ancestry.clutches.length;
  const row = new Float64Array(individuals.length);
  for (let first = 0; first < individuals.length; first += LANES) {
    const lanes = Math.min(LANES, individuals.length - first);
    passes.clear(clutches);
    for (let lane = 0; lane < lanes; lane++) passes.values[(local[first + lane] as number) * LANES + lane] = 1;
    passes.run(clutches);
    for (let lane = 0; lane < lanes; lane++) {
      for (let column = 0; column < row.length; column++)
        row[column] = passes.values[(local[column] as number) * LANES + lane] as number;
      // With itself from F, so that the diagonal and the coefficient never differ by a rounding.
      const self = individuals[first + lane] as number;
      row[first + lane] = 0.5 * (1 + inbreedingOf(pedigree, inbreeding, self).expected);
      yield row;
    }
  }
}
