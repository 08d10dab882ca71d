import { inbreedingOf, type Inbreeding } from './inbreeding.ts';
import { kinshipByPasses } from './kinship-by-passes.ts';
import { ChosenSweep } from './kinship-by-sweep.ts';
import { LANES } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';

/** How `kinshipMatrix` may go about it; the result is the same to 1e-12. */
export interface KinshipOptions {
  /** `auto`, the default, takes the cheaper one for each component. */
  readonly method?: 'auto' | 'passes' | 'sweep';
  /** Most bytes that `auto` lets the matrix of a sweep take; 512 MiB unless said otherwise. */
  readonly sweepBytes?: number;
}

type Tell = (row: number, column: number, kinship: number) => void;

const DEFAULT_SWEEP_BYTES = 512 * 2 ** 20;
/** So many animals are done in passes before a sweep has so much as found out what it would cost. */
const ALWAYS_PASSES = 2 * LANES;
/** What two passes cost in one clutch, in row elements of a sweep: some 130 ns to ½ ns, measured. */
const PASSES_COST = 260;

/**
 * Expected kinships φ among some individuals (twice them is the relationship matrix A).
 *
 * Only their ancestors are visited, in linear passes for every eight animals or by a sweep that keeps a column for each of
 * them, whichever is cheaper for a family.
 *
 * @param individuals any numbers of individuals, in any order; one may stand there twice
 * @returns n × n in row-major order, symmetric, rows as in `individuals`; ½(1+F) where row and column are one animal.
 * @throws RangeError for an individual that does not exist.
 */
export function kinshipMatrix(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  individuals: Int32Array,
  options: KinshipOptions = {},
): Float64Array {
  const different = Int32Array.from(new Set(individuals));
  if (different.length < individuals.length) return repeated(pedigree, inbreeding, individuals, different, options);
  const size = individuals.length;
  const matrix = new Float64Array(size * size);
  individuals.forEach((individual, place) => {
    // With itself from F, so that the diagonal and the coefficient never differ by a rounding.
    matrix[place * size + place] = 0.5 * (1 + inbreedingOf(pedigree, inbreeding, individual).expected);
  });
  const fill: Tell = (row, column, kinship) => {
    matrix[row * size + column] = matrix[column * size + row] = kinship;
  };
  const method = options.method ?? (size <= ALWAYS_PASSES ? 'passes' : 'auto');
  if (method === 'passes') kinshipByPasses(pedigree, inbreeding, individuals, fill);
  else byFamilies(pedigree, inbreeding, individuals, options, fill);
  return matrix;
}

/** Each family by the method that pays there. */
function byFamilies(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  individuals: Int32Array,
  { method = 'auto', sweepBytes = DEFAULT_SWEEP_BYTES }: KinshipOptions,
  tell: Tell,
): void {
  const sweep = new ChosenSweep(pedigree, inbreeding.order, individuals);
  const pays = (component: number, members: number): boolean => {
    const passes = Math.ceil(members / LANES) * PASSES_COST * sweep.size(component);
    return sweep.bytes(component) <= sweepBytes && sweep.elements(component) < passes;
  };
  const swept: number[] = [];
  sweep.components().forEach((places, component) => {
    if (places.length < 2) return;
    if (method === 'sweep' || pays(component, places.length)) {
      swept.push(component);
      return;
    }
    const some = Int32Array.from(places, (place) => individuals[place] as number);
    kinshipByPasses(pedigree, inbreeding, some, (one, other, kinship) =>
      tell(places[one] as number, places[other] as number, kinship),
    );
  });
  sweep.sweep(swept, tell);
}

/** The matrix where some individuals stand more than once. */
function repeated(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  individuals: Int32Array,
  different: Int32Array,
  options: KinshipOptions,
): Float64Array {
  const few = kinshipMatrix(pedigree, inbreeding, different, options);
  const placeOf = new Map(Array.from(different, (individual, place) => [individual, place]));
  const places = Int32Array.from(individuals, (individual) => placeOf.get(individual) as number); // each is among them
  const size = individuals.length;
  const matrix = new Float64Array(size * size);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++)
      matrix[row * size + column] = few[
        (places[row] as number) * different.length + (places[column] as number)
      ] as number;
  return matrix;
}
