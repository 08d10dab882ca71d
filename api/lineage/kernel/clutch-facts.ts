import type { Pedigree } from './pedigree.ts';

/** Founders as `writeFacts` needs them. */
export interface FounderKinds {
  /** k: 1 for a source whose animals were collected in the wild. */
  readonly wild: Uint8Array;
}

/** What follows from a clutch's parents besides inbreeding, one entry a clutch; the young all share it. */
export interface ClutchFacts {
  /** m: generations on the longest recorded path to a founder. */
  readonly depth: Int32Array;
  /** m: generations back in which every ancestor is known for certain to be a recorded one. */
  readonly fullDepth: Int32Array;
  /** m: Σ (½)^g over known ancestors g generations back (Maignel, Boichard & Verrier 1996), expected over candidates. */
  readonly equivalents: Float64Array;
  /** m: filial generation (CITES Resolution Conf. 10.16), −1 where it cannot be known. */
  readonly filial: Int32Array;
}

/** Facts about parents without a clutch. */
const FOUNDER = -1;

/**
 * Writes the facts of some clutches, in one pass over their pairs.
 *
 * @param facts written in place; those of the clutches that their parents hatched from must be right already
 * @param clutches parents first
 */
export function writeFacts(
  pedigree: Pedigree,
  founders: FounderKinds,
  facts: ClutchFacts,
  clutches: ArrayLike<number>,
): void {
  for (let place = 0; place < clutches.length; place++) {
    const clutch = clutches[place] as number;
    writeDepths(pedigree, facts, clutch);
    facts.filial[clutch] = filialOf(pedigree, founders, facts.filial, clutch);
  }
}

function writeDepths(pedigree: Pedigree, facts: ClutchFacts, clutch: number): void {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  let deepest = 0;
  let shallowest = Infinity;
  let sum = 0;
  const end = pairStart[clutch + 1] as number;
  for (let pair = pairStart[clutch] as number; pair < end; pair++)
    for (let side = 0; side < 2; side++) {
      const parent = (side === 0 ? pairSire[pair] : pairDam[pair]) as number;
      if (parent < 0) {
        shallowest = -1;
        continue;
      }
      const from = clutchOf[parent] as number;
      const isFounder = from <= FOUNDER;
      deepest = Math.max(deepest, isFounder ? 1 : 1 + (facts.depth[from] as number));
      shallowest = Math.min(shallowest, isFounder ? 0 : (facts.fullDepth[from] as number));
      sum += 0.5 * (pairProbability[pair] as number) * (isFounder ? 1 : 1 + (facts.equivalents[from] as number));
    }
  facts.depth[clutch] = deepest;
  facts.fullDepth[clutch] = 1 + shallowest;
  facts.equivalents[clutch] = sum;
}

/** One more than the least of the parents; −1 where candidates disagree or an origin leaves it open. */
function filialOf(
  { clutchOf, sourceOf, pairStart, pairSire, pairDam }: Pedigree,
  { wild }: FounderKinds,
  filial: Int32Array,
  clutch: number,
): number {
  const of = (parent: number): number => {
    if (parent < 0) return -1;
    const from = clutchOf[parent] as number;
    if (from > FOUNDER) return filial[from] as number;
    const source = sourceOf[parent] as number;
    return source >= 0 && wild[source] === 1 ? 0 : -1;
  };
  let agreed = -2;
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
    const sire = of(pairSire[pair] as number);
    const dam = of(pairDam[pair] as number);
    let generation: number;
    if (sire === 0 || dam === 0)
      generation = 1; // whatever the other is, no parent can be nearer the wild
    else generation = sire < 0 || dam < 0 ? -1 : 1 + Math.min(sire, dam);
    if (agreed === -2) agreed = generation;
    else if (agreed !== generation) return -1;
  }
  return agreed;
}

/** For facts that ask nothing of founders. */
export const NO_FOUNDER_KINDS: FounderKinds = {
  wild: new Uint8Array(0),
};

/** Facts of so many clutches, all 0. */
export function emptyFacts(clutches: number): ClutchFacts {
  return {
    depth: new Int32Array(clutches),
    fullDepth: new Int32Array(clutches),
    equivalents: new Float64Array(clutches),
    filial: new Int32Array(clutches),
  };
}
