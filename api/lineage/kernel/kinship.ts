import { collectAncestry, type Ancestry } from './ancestry.ts';
import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import { KinshipPasses, LANES } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * Expected kinships φ among some individuals (twice them is the relationship matrix A).
 *
 * Only their ancestors are visited: two linear passes for every eight animals, no matrix among the ancestors.
 *
 * @param individuals any numbers of individuals, in any order; one may stand there twice
 * @returns n × n in row-major order, symmetric, rows as in `individuals`; ½(1+F) where row and column are one animal.
 * @throws RangeError for an individual that does not exist.
 */
export function kinshipMatrix(pedigree: Pedigree, inbreeding: Inbreeding, individuals: Int32Array): Float64Array {
  const size = individuals.length;
  const matrix = new Float64Array(size * size);
  const ancestry = collectAncestry(pedigree, inbreeding.order, individuals);
  const passes = new KinshipPasses(pedigree, inbreeding, ancestry);
  const local = ancestry.asked;
  const rows = Int32Array.from(individuals.keys()).sort((a, b) => (local[a] as number) - (local[b] as number));
  const selves = Float64Array.from(
    individuals,
    (individual) => 0.5 * (1 + inbreedingOf(pedigree, inbreeding, individual).expected),
  );
  const clutchOfLocal = clutchesUpTo(ancestry);
  for (let first = 0; first < size; first += LANES) {
    const last = Math.min(first + LANES, size) - 1;
    // Rows are sorted with ancestors first: no animal beyond the last row's clutch matters, and symmetry gives the rest.
    const clutches = clutchOfLocal(local[rows[last] as number] as number);
    passes.clear(clutches);
    for (let row = first; row <= last; row++)
      passes.values[(local[rows[row] as number] as number) * LANES + row - first] = 1;
    passes.run(clutches);
    for (let row = 0; row <= last; row++) {
      const place = rows[row] as number;
      const from = (local[place] as number) * LANES;
      for (let column = Math.max(first, row); column <= last; column++) {
        const other = rows[column] as number;
        // With itself from F, so that the diagonal and the coefficient never differ by a rounding.
        const same = individuals[place] === individuals[other];
        const kinship = same ? selves[place] : passes.values[from + column - first];
        matrix[place * size + other] = matrix[other * size + place] = kinship as number;
      }
    }
  }
  return matrix;
}

/** For a local number: how many clutches must be visited so that this animal is among the young visited. */
function clutchesUpTo({ youngStart }: Ancestry): (local: number) => number {
  return (local) => {
    let low = 0;
    let high = youngStart.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((youngStart[middle] as number) > local) high = middle;
      else low = middle + 1;
    }
    return low;
  };
}
