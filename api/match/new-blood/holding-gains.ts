import { classShares } from '../../lineage/kernel/class-shares.ts';
import { collectAncestry } from '../../lineage/kernel/ancestry.ts';
import { inbreedingOf, type Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import { kinshipByRows } from '../../lineage/kernel/kinship-by-rows.ts';
import { meanKinshipOf } from '../../lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { diversityGain } from '../mates/diversity-gain.ts';
import { measureHolding, type HoldingMeasures } from './holding.ts';

/** An animal with its sex, by a number of its own for each sex. */
export interface SexedAnimals {
  readonly animals: Int32Array;
  readonly sexes: Uint8Array;
}

/** A holding, and who might be added to it. */
export interface GainsQuestion {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  /** Living animals of the line that are held; each once. */
  readonly holding: Int32Array;
  /** Living animals of the whole line. */
  readonly line: Int32Array;
  /** Those of the holding that may breed, in the order in which equals are told. */
  readonly partners: SexedAnimals;
  /** Who might be added; of no sex yet (`unsexed`) may be the mate of anybody. */
  readonly candidates: SexedAnimals;
  readonly unsexed: number;
  /** Whether candidates belong to the holding already, so that only young of them add anything; by place. */
  readonly isHeld: Uint8Array;
  /** Greatest kinship of a candidate and its partner. */
  readonly kinshipTo: number;
}

/** What each candidate would add; all arrays in the order of the candidates. */
export interface Gains {
  readonly holding: HoldingMeasures;
  readonly line: HoldingMeasures;
  /** Mean kinship of each with the holding, itself included where it is held; NaN without a holding. */
  readonly meanKinship: Float64Array;
  /** Mean kinship of each with the living of the line. */
  readonly lineMeanKinship: Float64Array;
  /** What it adds to the gene diversity of the holding; NaN where it is held already, or nothing is. */
  readonly gain: Float64Array;
  /** Place of the partner with whom one young adds most, −1 without any. */
  readonly partner: Int32Array;
  readonly partnerKinship: Float64Array;
  /** What that young adds; NaN without a partner. */
  readonly youngGain: Float64Array;
  /** Expected share of its genome from recorded founders of which the holding has nothing. */
  readonly lacking: Float64Array;
  /** Expected share of its genome from parents nobody knows. */
  readonly unknown: Float64Array;
}

/** Half-sibs have a kinship of 1/8 exactly, yet sums of it miss the last digit. */
const ROUNDING = 1e-12;

/**
 * What each of some animals, or one young of it with the best partner of the holding, adds to the gene diversity of a holding. Exact: mean
 * kinships by passes over the ancestry (Colleau 2002), a pass over it for every eight partners.
 */
export function gainsOf(question: GainsQuestion): Gains {
  const { pedigree, inbreeding, holding, line, candidates } = question;
  const measures = measureHolding(pedigree, inbreeding, holding);
  const all = Int32Array.from([...question.partners.animals, ...candidates.animals]);
  const means = meanKinshipOf(pedigree, inbreeding, holding, all);
  const partnerMeans = means.subarray(0, question.partners.animals.length);
  const own = means.slice(question.partners.animals.length);
  const living = { count: holding.length, meanKinship: measures.diversity?.meanKinship ?? 0 };
  const isEmpty = holding.length === 0;
  const gain = Float64Array.from(candidates.animals, (animal, place) =>
    isEmpty || question.isHeld[place] === 1
      ? NaN
      : diversityGain(living, own[place] ?? 0, inbreedingOf(pedigree, inbreeding, animal).expected),
  );
  return {
    holding: measures,
    line: measureHolding(pedigree, inbreeding, line),
    meanKinship: isEmpty ? own.fill(NaN) : own,
    lineMeanKinship: meanKinshipOf(pedigree, inbreeding, line, candidates.animals),
    gain,
    ...bestPartners(question, all, (partner, place, kinship) =>
      diversityGain(living, ((partnerMeans[partner] ?? 0) + (own[place] ?? 0)) / 2, kinship),
    ),
    ...foreignShares(question, measures),
  };
}

/** For each candidate the partner with whom one young adds most; of equals the first. */
function bestPartners(
  { pedigree, inbreeding, partners, candidates, unsexed, kinshipTo }: GainsQuestion,
  all: Int32Array,
  gainOf: (partner: number, candidate: number, kinship: number) => number,
): Pick<Gains, 'partner' | 'partnerKinship' | 'youngGain'> {
  const count = candidates.animals.length;
  const partner = new Int32Array(count).fill(-1);
  const partnerKinship = new Float64Array(count).fill(NaN);
  const youngGain = new Float64Array(count).fill(NaN);
  const first = partners.animals.length;
  let at = 0;
  // the rows of the partners come first; those of the candidates are never computed
  for (const row of first === 0 || count === 0 ? [] : kinshipByRows(pedigree, inbreeding, all)) {
    for (let place = 0; place < count; place++) {
      const [sex, other] = [candidates.sexes[place], partners.sexes[at]];
      if (sex === other && sex !== unsexed) continue;
      if (candidates.animals[place] === partners.animals[at]) continue;
      const kinship = row[first + place] ?? 0;
      if (kinship > kinshipTo + ROUNDING) continue;
      const gain = gainOf(at, place, kinship);
      if ((partner[place] ?? -1) >= 0 && gain <= (youngGain[place] ?? 0) + ROUNDING) continue;
      partner[place] = at;
      partnerKinship[place] = kinship;
      youngGain[place] = gain;
    }
    if (++at === first) break;
  }
  return { partner, partnerKinship, youngGain };
}

/** Shares that come from recorded founders of which the holding has nothing, and from parents nobody knows. */
function foreignShares(
  { pedigree, inbreeding, candidates }: GainsQuestion,
  { founders }: HoldingMeasures,
): Pick<Gains, 'lacking' | 'unknown'> {
  const has = new Set(founders);
  const ancestry = collectAncestry(pedigree, inbreeding.order, candidates.animals);
  const shares = classShares(pedigree, ancestry.clutches, 3, (founder) => (founder < 0 ? 2 : has.has(founder) ? 0 : 1));
  const lacking = new Float64Array(candidates.animals.length);
  const unknown = new Float64Array(candidates.animals.length);
  candidates.animals.forEach((animal, place) => {
    const [, foreign = 0, nobody = 0] = shares(animal);
    lacking[place] = foreign;
    unknown[place] = nobody;
  });
  return { lacking, unknown };
}
