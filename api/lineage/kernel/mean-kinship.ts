import { collectAncestry, type Ancestry } from './ancestry.ts';
import { FounderKinship } from './founder-kinship.ts';
import type { Inbreeding } from './inbreeding.ts';
import { mendelianVariance } from './kinship-passes.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf, sourcesWithKinship } from './sources.ts';

/**
 * Mean kinship of every individual with the members of a set, itself included where it is one of them
 * (Ballou & Lacy 1995), in two linear passes over the register without a matrix (Colleau 2002).
 *
 * @param members individuals, each once
 * @returns n values, 0 to 1; all 0 for an empty set.
 */
export function meanKinship(pedigree: Pedigree, inbreeding: Inbreeding, members: Int32Array): Float64Array {
  const coefficient = new Float64Array(pedigree.clutchOf.length);
  for (const member of members) {
    if (member < 0 || member >= coefficient.length) throw new RangeError(`There is no individual ${member}.`);
    coefficient[member] = (coefficient[member] as number) + 1 / members.length;
  }
  const sums = sumUp(pedigree, inbreeding, coefficient);
  applyToFounders(pedigree, coefficient);
  passDown(pedigree, inbreeding, coefficient, sums);
  return coefficient;
}

/**
 * The same for some individuals only. Visits the ancestors of the members and of those asked about, nobody else: a line of
 * some hundred animals costs the same in a register of any size.
 *
 * @param members individuals, each once
 * @param targets individuals; members or others
 * @returns one value a target, 0 to 1; all 0 for an empty set.
 * @throws RangeError for an individual that does not exist.
 */
export function meanKinshipOf(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  members: Int32Array,
  targets: Int32Array,
): Float64Array {
  const everybody = new Int32Array(members.length + targets.length);
  everybody.set(members);
  everybody.set(targets, members.length);
  const ancestry = collectAncestry(pedigree, inbreeding.order, everybody);
  const values = new Float64Array(ancestry.animals.length);
  for (let place = 0; place < members.length; place++) {
    const member = ancestry.asked[place] as number;
    values[member] = (values[member] as number) + 1 / members.length;
  }
  const sums = passUpAncestry(ancestry, values);
  new FounderKinship(pedigree, ancestry, 1).apply(values);
  passDownAncestry(ancestry, inbreeding, values, sums);
  return Float64Array.from(targets, (_, place) => values[ancestry.asked[members.length + place] as number] as number);
}

/** Runs coefficients of an ancestry from young to parents; returns their sum in each of its clutches. */
function passUpAncestry(ancestry: Ancestry, values: Float64Array): Float64Array {
  const { clutches, youngStart, parentStart, parents, weights } = ancestry;
  const sums = new Float64Array(clutches.length);
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let sum = 0;
    const youngEnd = youngStart[clutch + 1] as number;
    for (let young = youngStart[clutch] as number; young < youngEnd; young++) sum += values[young] as number;
    sums[clutch] = sum;
    const linkEnd = parentStart[clutch + 1] as number;
    for (let link = parentStart[clutch] as number; link < linkEnd; link++) {
      const parent = parents[link] as number;
      values[parent] = (values[parent] as number) + (weights[link] as number) * sum;
    }
  }
  return sums;
}

/** Turns coefficients of an ancestry into values, parents first; those of the founders are values already. */
function passDownAncestry(ancestry: Ancestry, inbreeding: Inbreeding, values: Float64Array, sums: Float64Array): void {
  const { clutches, youngStart, parentStart, parents, weights } = ancestry;
  for (let local = 0; local < clutches.length; local++) {
    const clutch = clutches[local] as number;
    let through = (inbreeding.clutchResidual[clutch] as number) * (sums[local] as number);
    const linkEnd = parentStart[local + 1] as number;
    for (let link = parentStart[local] as number; link < linkEnd; link++)
      through += (weights[link] as number) * (values[parents[link] as number] as number);
    const mendelian = mendelianVariance(inbreeding, clutch);
    const youngEnd = youngStart[local + 1] as number;
    for (let young = youngStart[local] as number; young < youngEnd; young++)
      values[young] = through + mendelian * (values[young] as number);
  }
}

/** Runs coefficients from young to parents; returns their sum in each clutch. */
function sumUp(pedigree: Pedigree, { order }: Inbreeding, coefficient: Float64Array): Float64Array {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const sums = new Float64Array(order.clutches.length);
  const add = (individual: number, share: number): void => {
    if (individual < 0) return;
    coefficient[individual] = (coefficient[individual] as number) + share;
    const clutch = clutchOf[individual] as number;
    if (clutch >= 0) sums[clutch] = (sums[clutch] as number) + share;
  };
  for (let individual = 0; individual < clutchOf.length; individual++) {
    const clutch = clutchOf[individual] as number;
    if (clutch >= 0) sums[clutch] = (sums[clutch] as number) + (coefficient[individual] as number);
  }
  for (let position = order.clutches.length - 1; position >= 0; position--) {
    const clutch = order.clutches[position] as number;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const share = 0.5 * (pairProbability[pair] as number) * (sums[clutch] as number);
      add(pairSire[pair] as number, share);
      add(pairDam[pair] as number, share);
    }
  }
  return sums;
}

function applyToFounders(pedigree: Pedigree, coefficient: Float64Array): void {
  const { clutchOf, sourceOf, baseKinship, sourceKinships = [] } = pedigree;
  const isNode = sourcesWithKinship(pedigree);
  const pooled = new Float64Array(baseKinship.length);
  for (let individual = 0; individual < sourceOf.length; individual++) {
    const source = sourceOf[individual] as number;
    if (source >= 0) pooled[source] = (pooled[source] as number) + (coefficient[individual] as number);
  }
  const kin = pooled.map((sum, source) => sum * (baseKinship[source] as number));
  for (const { a, b, kinship } of sourceKinships) {
    kin[a] = (kin[a] as number) + kinship * (pooled[b] as number);
    kin[b] = (kin[b] as number) + kinship * (pooled[a] as number);
  }
  for (let individual = 0; individual < clutchOf.length; individual++) {
    if ((clutchOf[individual] as number) >= 0) continue;
    const source = sourceOf[individual] as number;
    const self = 0.5 * (1 + founderInbreedingOf(pedigree, individual));
    const own = coefficient[individual] as number;
    if (source < 0 || isNode[source] === 0) coefficient[individual] = self * own;
    else coefficient[individual] = (self - (baseKinship[source] as number)) * own + (kin[source] as number);
  }
}

/** Runs values from parents to young: a founder's coefficient is its value already, others are turned into theirs. */
function passDown(pedigree: Pedigree, inbreeding: Inbreeding, value: Float64Array, sums: Float64Array): void {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const mendelian = Float64Array.from(sums, (_, clutch) => mendelianVariance(inbreeding, clutch));
  const valueOf = (individual: number): number => {
    if (individual < 0) return 0;
    const clutch = clutchOf[individual] as number;
    const own = value[individual] as number;
    return clutch < 0 ? own : (sums[clutch] as number) + (mendelian[clutch] as number) * own;
  };
  for (const clutch of inbreeding.order.clutches) {
    let through = (inbreeding.clutchResidual[clutch] as number) * (sums[clutch] as number);
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const share = 0.5 * (pairProbability[pair] as number);
      through += share * (valueOf(pairSire[pair] as number) + valueOf(pairDam[pair] as number));
    }
    sums[clutch] = through;
  }
  for (let individual = 0; individual < clutchOf.length; individual++) value[individual] = valueOf(individual);
}
