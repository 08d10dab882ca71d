import type { Pedigree } from './pedigree.ts';

/** How far the probabilities of one clutch may miss 1: rounding of a few dozen products, not a forgotten candidate. */
const SUM_TOLERANCE = 1e-9;

/**
 * Holds a pedigree against the promises of its type, in one linear pass. Loops are found by `orderPedigree`, not here.
 *
 * @throws RangeError naming the first individual, clutch or source that breaks a promise.
 */
export function validatePedigree(pedigree: Pedigree): void {
  requireLengths(pedigree);
  requireSources(pedigree);
  requireOrigins(pedigree);
  requirePairs(pedigree);
}

function requireLengths({ clutchOf, sourceOf, ...rest }: Pedigree): void {
  const { pairStart, pairSire, pairDam, pairProbability, baseKinship, founderInbreeding } = rest;
  if (sourceOf.length !== clutchOf.length) throw new RangeError('clutchOf and sourceOf differ in length.');
  if (pairDam.length !== pairSire.length || pairProbability.length !== pairSire.length)
    throw new RangeError('pairSire, pairDam and pairProbability differ in length.');
  if (founderInbreeding !== undefined && founderInbreeding.length !== baseKinship.length)
    throw new RangeError('founderInbreeding and baseKinship differ in length.');
  if (pairStart[0] !== 0) throw new RangeError('pairStart must begin with 0, also when there are no clutches.');
  if (pairStart[pairStart.length - 1] !== pairSire.length)
    throw new RangeError('pairStart must end with the number of pairs.');
}

function requireSources({ baseKinship, founderInbreeding, sourceKinships = [] }: Pedigree): void {
  baseKinship.forEach((kinship, source) => requireShare(kinship, `Base kinship of source ${source}`));
  founderInbreeding?.forEach((value, source) => requireShare(value, `Founder inbreeding of source ${source}`));
  const recorded = new Set<string>();
  for (const { a, b, kinship } of sourceKinships) {
    const name = `Kinship between sources ${a} and ${b}`;
    if (a === b) throw new RangeError(`${name}: a source's kinship with itself is its base kinship.`);
    if (!isIndex(a, baseKinship.length) || !isIndex(b, baseKinship.length))
      throw new RangeError(`${name}: no such source.`);
    requireShare(kinship, name);
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    if (recorded.has(key)) throw new RangeError(`${name} is recorded twice.`);
    recorded.add(key);
  }
}

function requireShare(value: number, name: string): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} is ${value}; it must lie between 0 and 1.`);
}

function isIndex(value: number, count: number): boolean {
  return Number.isInteger(value) && value >= 0 && value < count;
}

/*
 * The two passes below ask one short question of every row and put the answer into words elsewhere: a loop that also holds
 * the sentences is compiled to something five times as slow, and these are a million rows.
 */

function requireOrigins(pedigree: Pedigree): void {
  const { clutchOf, sourceOf, pairStart, baseKinship } = pedigree;
  const clutches = pairStart.length - 1;
  const sources = baseKinship.length;
  const individuals = clutchOf.length;
  for (let individual = 0; individual < individuals; individual++) {
    const clutch = clutchOf[individual] as number; // in range: both arrays have one entry an individual
    const source = sourceOf[individual] as number;
    if (!originHolds(clutch, source, clutches, sources)) refuseOrigin(individual, clutch, source, pedigree);
  }
}

/** Whether a clutch and a source exist or are −1, and at least one of them is −1. */
function originHolds(clutch: number, source: number, clutches: number, sources: number): boolean {
  return clutch >= -1 && clutch < clutches && source >= -1 && source < sources && (clutch < 0 || source < 0);
}

function refuseOrigin(individual: number, clutch: number, source: number, pedigree: Pedigree): never {
  if (clutch < -1 || clutch >= pedigree.pairStart.length - 1)
    throw new RangeError(`Individual ${individual} names clutch ${clutch}, which does not exist.`);
  if (source < -1 || source >= pedigree.baseKinship.length)
    throw new RangeError(`Individual ${individual} names source ${source}, which does not exist.`);
  throw new RangeError(`Individual ${individual} has both a clutch and a source; it can have come from only one.`);
}

function requirePairs({ clutchOf, pairStart, pairSire, pairDam, pairProbability }: Pedigree): void {
  const individuals = clutchOf.length;
  const clutches = pairStart.length - 1;
  for (let clutch = 0; clutch < clutches; clutch++) {
    const end = pairStart[clutch + 1] as number; // in range: the loop stops one before the last
    let sum = 0;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      const sire = pairSire[pair] as number; // checked just below, when pairStart does not rise
      const dam = pairDam[pair] as number;
      const probability = pairProbability[pair] as number;
      if (!pairHolds(sire, dam, probability, individuals)) refusePair(clutch, sire, dam, probability, individuals);
      sum += probability;
    }
    if (!(Math.abs(sum - 1) <= SUM_TOLERANCE))
      throw new RangeError(`The pair probabilities of clutch ${clutch} sum to ${sum}, not to 1.`);
  }
}

/** Whether both parents exist or are −1 and differ, and the probability is one. Written so that NaN and undefined fail. */
function pairHolds(sire: number, dam: number, probability: number, individuals: number): boolean {
  const known = sire >= -1 && sire < individuals && dam >= -1 && dam < individuals;
  return known && (sire !== dam || sire < 0) && probability > 0 && probability <= 1 + SUM_TOLERANCE;
}

function refusePair(clutch: number, sire: number, dam: number, probability: number, individuals: number): never {
  if (!(sire >= -1 && sire < individuals && dam >= -1 && dam < individuals))
    throw new RangeError(`Clutch ${clutch} names parents ${sire} and ${dam}, not both of which exist.`);
  if (sire === dam && sire >= 0)
    throw new RangeError(`Clutch ${clutch} has individual ${sire} as both parents of one pair.`);
  throw new RangeError(`Clutch ${clutch} has a pair of probability ${probability}; it must be above 0, at most 1.`);
}
