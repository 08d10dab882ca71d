import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';

/** How much of the genome of an animal comes from one source, 0 to 1: as it is expected, and at least, whoever the parents were. */
export interface SourceShare {
  readonly expected: number;
  readonly least: number;
}

/**
 * The shares that one source has in every animal: half from each parent, averaged over the candidate pairs; at least what the pair gives that
 * gives least. One pass over all clutches, linear in their pairs.
 *
 * @param order parents first
 * @param source 0 .. k−1
 * @returns what gives the share of an animal, −1 for one that nobody knows
 */
export function sourceShares(
  pedigree: Pedigree,
  order: Pick<PedigreeOrder, 'clutches'>,
  source: number,
): (individual: number) => SourceShare {
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const expected = new Float64Array(pairStart.length - 1);
  const least = new Float64Array(pairStart.length - 1);
  const of = (shares: Float64Array, individual: number): number => {
    if (individual < 0) return 0;
    const clutch = clutchOf[individual] as number;
    return clutch >= 0 ? (shares[clutch] as number) : sourceOf[individual] === source ? 1 : 0;
  };
  for (const clutch of order.clutches) {
    let sum = 0;
    let lowest = 1;
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const [sire, dam] = [pairSire[pair] as number, pairDam[pair] as number];
      sum += 0.5 * (pairProbability[pair] as number) * (of(expected, sire) + of(expected, dam));
      lowest = Math.min(lowest, 0.5 * (of(least, sire) + of(least, dam)));
    }
    expected[clutch] = sum;
    least[clutch] = Math.min(lowest, sum); // rounding must not lift the least above the expected
  }
  return (individual) => ({ expected: of(expected, individual), least: of(least, individual) });
}
