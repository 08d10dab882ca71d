import type { Pair } from '../../../api/lineage/kernel/genome-flow.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/** The candidate pairs of a clutch. */
export function pairsOf({ pairStart, pairSire, pairDam, pairProbability }: Pedigree, clutch: number): Pair[] {
  const pairs: Pair[] = [];
  for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
    pairs.push({ a: pairSire[pair] ?? -1, b: pairDam[pair] ?? -1, probability: pairProbability[pair] ?? 0 });
  return pairs;
}

/** So many generations of brother with sister; clutch c is that of generation c. */
export function siblingLine(generations: number): Pedigree {
  const animals = 2 + 2 * generations;
  return {
    clutchOf: Int32Array.from({ length: animals }, (_, animal) => (animal >> 1) - 1),
    sourceOf: new Int32Array(animals).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from({ length: generations + 1 }, (_, clutch) => clutch),
    pairSire: Int32Array.from({ length: generations }, (_, clutch) => 2 * clutch),
    pairDam: Int32Array.from({ length: generations }, (_, clutch) => 2 * clutch + 1),
    pairProbability: new Float64Array(generations).fill(1),
  };
}
