import { candidateAncestry } from '../../lineage/candidate-ancestry.ts';
import { AS_RECORDED, copyAncestry, type AncestryCopy } from '../../lineage/kernel/ancestry-copy.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';

/** The ancestry of some animals as a pedigree of its own, numbered so that the records alone decide the order. */
export interface FixedAncestry {
  /** Founders first, then clutch by clutch, parents first. */
  readonly pedigree: Pedigree;
  /** Number of each of its animals in the register. */
  readonly animals: Int32Array;
  /** Number of each of its clutches in the register. */
  readonly clutches: Int32Array;
  /** Number of an animal within it, −1 where it has no part in it. */
  readonly find: (individual: number) => number;
}

/**
 * Copies the ancestry of some animals in an order that registry numbers decide, so that a seed means the same in every copy of the
 * service, whose dense numbers differ. Costs what the ancestors cost.
 *
 * @param serials n: registry number of each individual
 * @param clutchesMost null is given where there are more clutches
 */
export function fixedAncestry(
  register: Pedigree,
  serials: Float64Array,
  individuals: Iterable<number>,
  clutchesMost: number,
): FixedAncestry | null {
  const copy = copyAncestry(register, individuals, AS_RECORDED, clutchesMost);
  if (copy === null) return null;
  const { pedigree } = copy;
  const serialOf = (animal: number): number => serials[copy.animals[animal] ?? -1] ?? 0;
  const eldest = new Float64Array(copy.clutches.length).fill(Infinity);
  pedigree.clutchOf.forEach((clutch, animal) => {
    if (clutch >= 0) eldest[clutch] = Math.min(eldest[clutch] ?? Infinity, serialOf(animal));
  });
  const ordered = candidateAncestry(pedigree, copy.order.clutches, {
    ofClutch: (clutch) => sortable(eldest[clutch] ?? 0),
    ofIndividual: (animal) => sortable(serialOf(animal)),
  });
  const placeOf = new Int32Array(ordered.clutches.length);
  ordered.clutches.forEach((clutch, place) => (placeOf[clutch] = place));
  const rankOf = (animal: number): number => {
    const clutch = pedigree.clutchOf[animal] ?? -1;
    return clutch < 0 ? -1 : (placeOf[clutch] ?? -1);
  };
  const animals = Int32Array.from(copy.animals.keys()).sort(
    (one, other) => rankOf(one) - rankOf(other) || serialOf(one) - serialOf(other),
  );
  return renumbered(copy, animals, ordered);
}

function renumbered(
  copy: AncestryCopy,
  animals: Int32Array,
  { clutches, start, pairs }: { readonly clutches: Int32Array; readonly start: Int32Array; readonly pairs: Int32Array },
): FixedAncestry {
  const { pedigree } = copy;
  const numberOf = new Int32Array(animals.length);
  animals.forEach((animal, number) => (numberOf[animal] = number));
  const clutchNumber = new Int32Array(clutches.length);
  clutches.forEach((clutch, number) => (clutchNumber[clutch] = number));
  const parentOf = (animal: number | undefined): number =>
    animal === undefined || animal < 0 ? -1 : (numberOf[animal] ?? -1);
  return {
    pedigree: {
      ...pedigree,
      clutchOf: animals.map((animal) => {
        const clutch = pedigree.clutchOf[animal] ?? -1;
        return clutch < 0 ? -1 : (clutchNumber[clutch] ?? -1);
      }),
      sourceOf: animals.map((animal) => pedigree.sourceOf[animal] ?? -1),
      pairStart: start,
      pairSire: pairs.map((pair) => parentOf(pedigree.pairSire[pair])),
      pairDam: pairs.map((pair) => parentOf(pedigree.pairDam[pair])),
      pairProbability: Float64Array.from(pairs, (pair) => pedigree.pairProbability[pair] ?? 0),
    },
    animals: animals.map((animal) => copy.animals[animal] ?? -1),
    clutches: clutches.map((clutch) => copy.clutches[clutch] ?? -1),
    find: (individual) => parentOf(copy.find(individual)),
  };
}

/** Numbers as texts that sort as they do. */
function sortable(serial: number): string {
  return String(serial).padStart(16, '0');
}
