import { collectAncestry, type Ancestry } from './ancestry.ts';
import type { Inbreeding } from './inbreeding.ts';
import { KinshipPasses, LANES } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';

/**
 * Kinships among some individuals in two linear passes over their ancestry for every eight of them, without a matrix among
 * the ancestors.
 *
 * @param individuals each once
 * @param tell told for every two of them, once, with their places in `individuals`
 */
export function kinshipByPasses(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  individuals: Int32Array,
  tell: (place: number, other: number, kinship: number) => void,
): void {
  const ancestry = collectAncestry(pedigree, inbreeding.order, individuals);
  const passes = new KinshipPasses(pedigree, inbreeding, ancestry);
  const local = ancestry.asked;
  const size = individuals.length;
  const rows = Int32Array.from(individuals.keys()).sort((a, b) => (local[a] as number) - (local[b] as number));
  const clutchOfLocal = clutchesUpTo(ancestry);
  for (let first = 0; first < size; first += LANES) {
    const last = Math.min(first + LANES, size) - 1;
    // Rows are sorted with ancestors first: no animal beyond the last row's clutch matters, and symmetry gives the rest.
    const clutches = clutchOfLocal(local[rows[last] as number] as number);
    passes.clear(clutches);
    for (let row = first; row <= last; row++)
      passes.values[(local[rows[row] as number] as number) * LANES + row - first] = 1;
    passes.run(clutches);
    for (let row = 0; row < last; row++) {
      const place = rows[row] as number;
      const from = (local[place] as number) * LANES - first;
      for (let column = Math.max(first, row + 1); column <= last; column++)
        tell(place, rows[column] as number, passes.values[from + column] as number);
    }
  }
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
