import type { SeededRandom } from '../../lineage/kernel/seeded-random.ts';

/**
 * Genes of some animals at some loci: those of locus l in copy k (0 or 1) of animal i at l · stride + 2i + k, so that a locus lies together.
 */
export interface GeneTable {
  readonly genes: Int32Array;
  readonly stride: number;
}

/** Room for the genes of so many animals. */
export function geneTable(animals: number, loci: number): GeneTable {
  return { genes: new Int32Array(2 * animals * loci), stride: 2 * animals };
}

/**
 * Passes genes on from parents to young, each of a parent's two with probability ½, every locus on its own (Mendel).
 *
 * @param from genes of the parents
 * @param to where the genes of the young go; may be the same table where parents stand before their young
 * @param parents for each copy of `to` the place of the parent that it comes from; filled from `first` to `end`
 * @param bits working space, one word a copy of `to`
 * @param first first copy that is passed on
 * @param end copy after the last one
 */
export function passOn(
  from: GeneTable,
  to: GeneTable,
  parents: Int32Array,
  bits: Uint32Array,
  { first, end, loci }: { readonly first: number; readonly end: number; readonly loci: number },
  random: SeededRandom,
): void {
  for (let locus = 0; locus < loci; locus++) {
    if ((locus & 31) === 0) for (let copy = first; copy < end; copy++) bits[copy] = random.bits();
    passOnLocus(from, to, parents, bits, locus, first, end);
  }
}

function passOnLocus(
  { genes: source, stride: sourceStride }: GeneTable,
  { genes, stride }: GeneTable,
  parents: Int32Array,
  bits: Uint32Array,
  locus: number,
  first: number,
  end: number,
): void {
  const shift = locus & 31;
  const sourceAt = locus * sourceStride;
  const at = locus * stride;
  for (let copy = first; copy < end; copy++) {
    const which = ((bits[copy] as number) >>> shift) & 1;
    genes[at + copy] = source[sourceAt + 2 * (parents[copy] as number) + which] as number;
  }
}
