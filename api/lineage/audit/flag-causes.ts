import type { FlagCode } from '../../../shared/vocabulary.ts';
import type { Ancestry } from '../kernel/ancestry.ts';
import type { GenePool } from '../kernel/gene-pool.ts';
import type { AuditInput } from './audit-input.ts';
import type { ClutchFindings } from './clutch-findings.ts';
import { bitOf, isOfUnknownOrigin, verdictOf } from './founder-verdicts.ts';
import type { Cause } from './touched-members.ts';

/** Where the gene pool of a line begins, and what it came through that is uncertain or of another line. */
export interface PoolOrigins {
  /** By source: part of the pool. */
  readonly sources: ReadonlyMap<number, number>;
  readonly founders: readonly PoolFounder[];
  /** Clutches of which a parent is unknown. */
  readonly unknownParents: readonly Cause[];
  /** Clutches with more than one candidate pair, with the part of the pool that came through them. */
  readonly uncertain: readonly Cause[];
  /** The animals of other lines that are nearest to the members, with the part that came through them. */
  readonly outsiders: readonly Cause[];
  /** Members that hatched in captivity and carry flags by themselves. */
  readonly bearers: readonly Bearer[];
}

/** A founder of the ancestry. */
interface PoolFounder {
  readonly individual: number;
  /** Part of the pool that comes from it. */
  readonly share: number;
  /** The same, without what came through animals of other lines. */
  readonly inside: number;
  /** Whether any member descends from it without an animal of another line between, or is it. */
  readonly isInside: boolean;
}

/** A member with flags that are its own. */
interface Bearer {
  readonly individual: number;
  readonly bits: number;
  readonly share: number;
}

/**
 * Gathers from a gene pool all that flags may be caused by.
 *
 * @param pool of the living members, or of all where none lives
 * @param counted 1 for the members that the pool is of
 */
export function poolOrigins(
  { pedigree, members }: AuditInput,
  ancestry: Ancestry,
  findings: ClutchFindings,
  pool: GenePool,
  counted: Uint8Array,
): PoolOrigins {
  const { sourceOf, pairStart } = pedigree;
  const insideLine = flowInside(ancestry, findings, members, counted);
  const sources = new Map<number, number>();
  const founders = Array.from({ length: ancestry.founders }, (_, local): PoolFounder => {
    const individual = ancestry.animals[local] as number;
    const share = pool.through[local] as number;
    const source = sourceOf[individual] as number;
    if (source >= 0) sources.set(source, (sources.get(source) ?? 0) + share);
    return {
      individual,
      share,
      inside: insideLine.through[local] as number,
      isInside: insideLine.reached[local] === 1,
    };
  });
  const unknownParents: Cause[] = [];
  const uncertain: Cause[] = [];
  ancestry.clutches.forEach((clutch, local) => {
    const unknown = hasUnknownParent(ancestry, local);
    const share = (pool.unknownFirst[local] as number) + (pool.unknownSecond[local] as number);
    if (unknown) unknownParents.push({ kind: 'clutch', number: clutch, share });
    if ((pairStart[clutch + 1] as number) - (pairStart[clutch] as number) > 1)
      uncertain.push({ kind: 'clutch', number: clutch, share: pool.ofClutch[local] as number });
  });
  const outsiders: Cause[] = [];
  ancestry.animals.forEach((number, local) => {
    if (insideLine.reached[local] === 1 && findings.isOutside(number))
      outsiders.push({ kind: 'individual', number, enters: [number], share: insideLine.through[local] as number });
  });
  return {
    sources,
    founders,
    unknownParents,
    uncertain,
    outsiders,
    bearers: bearersOf(members, ancestry, findings, pool),
  };
}

function bearersOf(members: Int32Array, ancestry: Ancestry, findings: ClutchFindings, pool: GenePool): Bearer[] {
  const bearers: Bearer[] = [];
  for (const individual of members) {
    const bits = findings.ownBits(individual);
    if (bits !== 0) bearers.push({ individual, bits, share: pool.through[ancestry.find(individual)] as number });
  }
  return bearers;
}

function hasUnknownParent({ parentStart, weights }: Ancestry, local: number): boolean {
  let known = 0;
  for (let link = parentStart[local] as number; link < (parentStart[local + 1] as number); link++)
    known += weights[link] as number;
  return known < 1 - 1e-12;
}

/**
 * The records that cause a flag, those with the largest part of the pool first: the same that members with it name.
 *
 * @param isAbove whether a founder is an ancestor of a member with the flag, or is one
 */
export function causesOf(
  code: FlagCode,
  input: AuditInput,
  findings: ClutchFindings,
  origins: PoolOrigins,
  isAbove: (founder: number) => boolean,
): Cause[] {
  const found = (): Cause[] => {
    switch (code) {
      case 'outside-line':
        return [...origins.outsiders];
      case 'parents-uncertain':
        return [...origins.uncertain];
      case 'origin-gap':
      case 'label-beyond-evidence':
        return [...founderCauses(code, input, findings, origins, isAbove), ...origins.unknownParents];
      default:
        return [
          ...founderCauses(code, input, findings, origins, isAbove),
          ...origins.bearers
            .filter(({ bits }) => (bits & bitOf(code)) !== 0)
            .map(({ individual, share }): Cause => ({ kind: 'individual', number: individual, share, isAlone: true })),
          ...((input.verdicts.ofLine & bitOf(code)) !== 0
            ? [{ kind: 'line' as const, number: input.line, share: 1 }]
            : []),
        ];
    }
  };
  return found().sort((one, other) => other.share - one.share || one.number - other.number);
}

/** The sources and founders by which founders cause a flag, with the parts of those founders that do. */
function founderCauses(
  code: FlagCode,
  input: AuditInput,
  findings: ClutchFindings,
  { founders }: PoolOrigins,
  isAbove: (founder: number) => boolean,
): Cause[] {
  const causes = new Map<string, { kind: 'source' | 'individual'; number: number; share: number; enters: number[] }>();
  for (const founder of founders) {
    if (!isAbove(founder.individual) || (code === 'label-changed' && !founder.isInside)) continue;
    const share = code === 'label-changed' ? founder.inside : founder.share;
    for (const kind of recordsRaising(code, input, findings, founder.individual)) {
      const number = kind === 'source' ? (input.pedigree.sourceOf[founder.individual] as number) : founder.individual;
      const cause = causes.get(`${kind} ${number}`) ?? { kind, number, share: 0, enters: [] };
      causes.set(`${kind} ${number}`, cause);
      cause.share += share;
      cause.enters.push(founder.individual);
    }
  }
  return [...causes.values()];
}

/** Whether it is the source of a founder or the founder itself, or both, that raise a flag. */
function recordsRaising(
  code: FlagCode,
  { pedigree, verdicts }: AuditInput,
  findings: ClutchFindings,
  founder: number,
): readonly ('source' | 'individual')[] {
  const source = pedigree.sourceOf[founder] as number;
  const row = verdictOf(verdicts, pedigree, founder);
  const origin = source < 0 ? 'individual' : 'source';
  switch (code) {
    case 'origin-gap':
      return isOfUnknownOrigin(verdicts, pedigree, founder) ? ['individual'] : [];
    case 'label-beyond-evidence':
      return verdicts.traces[row] === 1 ? [] : [origin];
    case 'mixed-labels':
      if ((verdicts.labels[row] ?? -1) < 0) return [];
      return [verdicts.isOwnLabel[row] === 1 ? 'individual' : origin];
    case 'label-changed':
      return findings.isRelabelled(founder) ? ['source'] : [];
    default: {
      const isRaised = (of: number): boolean => ((verdicts.flags[of] ?? 0) & bitOf(code)) !== 0;
      const own = verdicts.apart.get(founder) ?? -1;
      return [...(isRaised(source) ? ['source' as const] : []), ...(isRaised(own) ? ['individual' as const] : [])];
    }
  }
}

/**
 * Parts of the gene pool of some members by the animals that they came through, seen from the members and no further than the first
 * animal of another line.
 *
 * @param counted 1 for the members that the parts are told of; what only the others came through is reached, with a part of 0
 * @returns by local number: the part, and 1 where any member comes from it
 */
function flowInside(
  ancestry: Ancestry,
  findings: ClutchFindings,
  members: Int32Array,
  counted: Uint8Array,
): { readonly through: Float64Array; readonly reached: Uint8Array } {
  const { animals, clutches, youngStart, parentStart, parents, weights } = ancestry;
  const through = new Float64Array(animals.length);
  const reached = new Uint8Array(animals.length);
  const count = counted.reduce((sum, one) => sum + one, 0);
  members.forEach((member, place) => {
    const local = ancestry.find(member);
    if (counted[place] === 1) through[local] = (through[local] as number) + 1 / count;
    reached[local] = 1;
  });
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let sum = 0;
    let isReached = false;
    for (let young = youngStart[clutch] as number; young < (youngStart[clutch + 1] as number); young++) {
      if (findings.isOutside(animals[young] as number)) continue;
      sum += through[young] as number;
      isReached ||= reached[young] === 1;
    }
    if (!isReached) continue;
    for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++) {
      const parent = parents[link] as number;
      through[parent] = (through[parent] as number) + (weights[link] as number) * sum;
      reached[parent] = 1;
    }
  }
  return { through, reached };
}
