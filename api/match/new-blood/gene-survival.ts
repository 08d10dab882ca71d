import { collectAncestry } from '../../lineage/kernel/ancestry.ts';
import { dropGenes } from '../../lineage/kernel/gene-drop.ts';
import { orderPedigree } from '../../lineage/kernel/order.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';

/** How much of the genes of some founders is still there. */
export interface GeneSurvival {
  /** Expected share of their genes, two a founder, that some carrier still has; 0 to 1. */
  readonly kept: number;
  /** Standard error of it; 0 where every way of descent was counted. */
  readonly standardError: number;
  readonly isExact: boolean;
}

/** Ways of descent up to which all are counted, and how many are drawn beyond. */
const COUNTED_MOST = 2 ** 14;
const SAMPLES = 10_000;

/**
 * The share of some founders' genes that carriers still have, by gene dropping (MacCluer et al. 1986) through nothing but what lies between
 * the founders and the carriers: other parents count as nobody known, since they can hand down nothing of these founders. Every founder
 * counts as having two genes of its own.
 *
 * @param founders at least one
 * @param carriers founders or descendants of them
 */
export function geneSurvival(
  pedigree: Pedigree,
  founders: readonly number[],
  clutches: Int32Array,
  carriers: readonly number[],
): GeneSurvival {
  if (carriers.length === 0) return { kept: 0, standardError: 0, isExact: true };
  const { between, localOf } = pedigreeBetween(pedigree, founders, clutches, carriers);
  const order = orderPedigree(between);
  const ancestry = collectAncestry(
    between,
    order,
    carriers.map((carrier) => localOf.get(carrier) ?? -1),
  );
  const isOfFounders = new Set(founders.map((founder) => ancestry.find(localOf.get(founder) ?? -1)));
  const measure = ({ genes }: { genes: Int32Array }, into: Float64Array): void => {
    const seen = new Set<number>();
    for (const local of ancestry.asked)
      for (const gene of [genes[2 * local] ?? -1, genes[2 * local + 1] ?? -1])
        if (gene < genes.length && isOfFounders.has(gene >> 1)) seen.add(gene);
    into[0] = seen.size / (2 * founders.length);
  };
  const options = { exactUpTo: COUNTED_MOST, samples: SAMPLES };
  const { means, standardErrors, isExact } = dropGenes(between, ancestry, 'all different', 1, measure, options);
  return { kept: Math.min(1, means[0] ?? 0), standardError: standardErrors[0] ?? 0, isExact };
}

/** The pedigree from the founders to the carriers, numbered anew. */
function pedigreeBetween(
  { clutchOf, pairStart, pairSire, pairDam, pairProbability }: Pedigree,
  founders: readonly number[],
  clutches: Int32Array,
  carriers: readonly number[],
): { between: Pedigree; localOf: ReadonlyMap<number, number> } {
  const own = new Set(founders);
  const inside = new Set(clutches);
  const clutchIn = (animal: number): number => {
    const clutch = own.has(animal) || animal < 0 ? -1 : (clutchOf[animal] ?? -1);
    return inside.has(clutch) ? clutch : -1;
  };
  const descends = (animal: number): boolean => own.has(animal) || clutchIn(animal) >= 0;
  const pairsOf = (clutch: number): { sire: number; dam: number; probability: number }[] =>
    Array.from({ length: (pairStart[clutch + 1] ?? 0) - (pairStart[clutch] ?? 0) }, (_, place) => {
      const pair = (pairStart[clutch] ?? 0) + place;
      const [sire, dam] = [pairSire[pair] ?? -1, pairDam[pair] ?? -1];
      return { sire, dam, probability: pairProbability[pair] ?? 0 };
    });
  const localOf = new Map(carriers.map((carrier, place) => [carrier, place]));
  const localClutch = new Map<number, number>();
  const animals = [...carriers];
  for (let place = 0; place < animals.length; place++) {
    const clutch = clutchIn(animals[place] ?? -1);
    if (clutch < 0 || localClutch.has(clutch)) continue;
    localClutch.set(clutch, localClutch.size);
    for (const { sire, dam } of pairsOf(clutch))
      for (const parent of [sire, dam])
        if (descends(parent) && !localOf.has(parent)) localOf.set(parent, animals.push(parent) - 1);
  }
  const pairs = [...localClutch.keys()].map(pairsOf);
  const starts = [0];
  for (const list of pairs) starts.push((starts.at(-1) ?? 0) + list.length);
  const all = pairs.flat();
  const between: Pedigree = {
    clutchOf: Int32Array.from(animals, (animal) => localClutch.get(clutchIn(animal)) ?? -1),
    sourceOf: new Int32Array(animals.length).fill(-1),
    baseKinship: new Float64Array(0),
    pairStart: Int32Array.from(starts),
    pairSire: Int32Array.from(all, ({ sire }) => localOf.get(sire) ?? -1),
    pairDam: Int32Array.from(all, ({ dam }) => localOf.get(dam) ?? -1),
    pairProbability: Float64Array.from(all, ({ probability }) => probability),
  };
  return { between, localOf };
}
