import { ancestralInbreeding } from './ancestral-inbreeding.ts';
import { AS_RECORDED, copyAncestry, type AncestryCopy, type Assumptions } from './ancestry-copy.ts';
import { completenessIndex } from './completeness.ts';
import { pedigreeDepth } from './depth.ts';
import { filialGeneration } from './filial-generation.ts';
import { GenomeFlow } from './genome-flow.ts';
import { computeInbreeding, inbreedingOf, type InbreedingOptions, type InbreedingRange } from './inbreeding.ts';
import { meanKinshipOf } from './mean-kinship.ts';
import type { Pedigree } from './pedigree.ts';
import { originShares, type FounderShare } from './shares.ts';

/** Of whom figures are wanted, and what they rest on besides the pedigree. */
export interface FiguresAsked {
  readonly individual: number;
  /** The living animals of its line, with whom mean kinship is taken. */
  readonly living: Int32Array;
  /** k: 1 for a source whose animals were collected in the wild. */
  readonly wild: Uint8Array;
  /** Over how many generations completeness is told. */
  readonly generations: number;
  /** Founders that are told apart from the others of their source; left out: none. */
  readonly apart?: ReadonlySet<number>;
}

/** Figures of one animal, as the register tells them. */
export interface AnimalFigures {
  readonly inbreeding: InbreedingRange;
  /** Probability that both parents are recorded animals. */
  readonly bothParentsKnown: number;
  /** Whether neither a source nor any parent is known. */
  readonly nothingKnown: boolean;
  /** Ballou's recursion. */
  readonly ancestralInbreeding: number;
  /** With the living, null where there are none. */
  readonly meanKinship: number | null;
  readonly depth: number;
  readonly fullDepth: number;
  readonly generationEquivalents: number;
  readonly completeness: number;
  /** Null where it cannot be known. */
  readonly filialGeneration: number | null;
  readonly shares: readonly FounderShare[];
}

/** The same figures as recorded and under assumptions. */
export interface WhatIf {
  readonly recorded: AnimalFigures;
  readonly assumed: AnimalFigures;
}

/**
 * Figures of an animal as recorded and under assumptions, computed alike from copies of its ancestry. The register stays as it is.
 *
 * @param clutchesMost null is given where the ancestry has more clutches
 * @param options how the inbreeding of the copies may be computed
 * @throws LoopError with numbers of the register, where an animal would be its own ancestor under the assumptions
 */
export function whatIf(
  register: Pedigree,
  asked: FiguresAsked,
  assumptions: Assumptions,
  clutchesMost = Infinity,
  options: InbreedingOptions = {},
): WhatIf | null {
  const individuals = [asked.individual, ...asked.living];
  const recorded = copyAncestry(register, individuals, AS_RECORDED, clutchesMost);
  const assumed = copyAncestry(register, individuals, assumptions, clutchesMost);
  if (recorded === null || assumed === null) return null;
  return { recorded: figuresIn(recorded, asked, options), assumed: figuresIn(assumed, asked, options) };
}

function figuresIn(
  copy: AncestryCopy,
  { individual, living, wild, generations, apart }: FiguresAsked,
  options: InbreedingOptions,
): AnimalFigures {
  const { pedigree, order, find } = copy;
  const animal = find(individual);
  const inbreeding = computeInbreeding(pedigree, { ...options, order });
  const depth = pedigreeDepth(pedigree, order);
  const flow = new GenomeFlow(pedigree, order, new Int32Array(copy.clutches.length).fill(-1), animal);
  const generation = filialGeneration(pedigree, order, wild)[animal] as number;
  const means = living.length > 0 ? meanKinshipOf(pedigree, inbreeding, living.map(find), Int32Array.of(animal)) : null;
  return {
    inbreeding: inbreedingOf(pedigree, inbreeding, animal),
    ...whatIsKnown(pedigree, animal),
    ancestralInbreeding: ancestralInbreeding(pedigree, inbreeding, flow.clutches).at(-1) ?? 0,
    meanKinship: means === null ? null : (means[0] as number),
    depth: depth.depth[animal] as number,
    fullDepth: depth.fullDepth[animal] as number,
    generationEquivalents: depth.generationEquivalents[animal] as number,
    completeness: completenessIndex(pedigree, order, animal, generations),
    filialGeneration: generation < 0 ? null : generation,
    shares: originShares(pedigree, flow, {
      has: (founder) => apart?.has(copy.animals[founder] as number) ?? false,
    }).map((origin) => inRegisterNumbers(copy, origin)),
  };
}

function whatIsKnown(
  { clutchOf, sourceOf, pairStart, pairSire, pairDam, pairProbability }: Pedigree,
  animal: number,
): Pick<AnimalFigures, 'bothParentsKnown' | 'nothingKnown'> {
  const clutch = clutchOf[animal] as number;
  if (clutch < 0) return { bothParentsKnown: 0, nothingKnown: (sourceOf[animal] as number) < 0 };
  let bothParentsKnown = 0;
  let nothingKnown = true;
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
    const sire = pairSire[pair] as number;
    const dam = pairDam[pair] as number;
    if (sire >= 0 || dam >= 0) nothingKnown = false;
    if (sire >= 0 && dam >= 0) bothParentsKnown += pairProbability[pair] as number;
  }
  return { bothParentsKnown, nothingKnown };
}

function inRegisterNumbers({ animals, clutches }: AncestryCopy, origin: FounderShare): FounderShare {
  if (origin.kind === 'individual') return { ...origin, individual: animals[origin.individual] as number };
  if (origin.kind === 'unknown parent') return { ...origin, clutch: clutches[origin.clutch] as number };
  if (origin.founder !== undefined) return { ...origin, founder: animals[origin.founder] as number };
  return origin;
}
