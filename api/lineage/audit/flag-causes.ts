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
  /** Founders of unknown origin. */
  readonly founders: readonly Cause[];
  /** Founders with claims of their own; the part of one from a source counts under that as well. */
  readonly apart: readonly Cause[];
  /** Clutches of which a parent is unknown. */
  readonly unknownParents: readonly Cause[];
  /** Clutches with more than one candidate pair, with the part of the pool that came through them. */
  readonly uncertain: readonly Cause[];
  /** The animals of other lines that are nearest to the members, with the part that came through them. */
  readonly outsiders: readonly Cause[];
}

/**
 * Gathers from a gene pool all that flags may be caused by.
 *
 * @param pool of the living members, or of all where none lives
 * @param outsiders as `outsideParts` finds them
 */
export function poolOrigins(
  { pedigree, verdicts }: AuditInput,
  ancestry: Ancestry,
  pool: GenePool,
  outsiders: readonly Cause[],
): PoolOrigins {
  const { sourceOf, pairStart } = pedigree;
  const sources = new Map<number, number>();
  const founders: Cause[] = [];
  const apart: Cause[] = [];
  for (let founder = 0; founder < ancestry.founders; founder++) {
    const individual = ancestry.animals[founder] as number;
    const share = pool.through[founder] as number;
    const source = sourceOf[individual] as number;
    if (source >= 0) sources.set(source, (sources.get(source) ?? 0) + share);
    if (verdicts.apart.has(individual)) apart.push({ kind: 'individual', number: individual, share });
    if (isOfUnknownOrigin(verdicts, pedigree, individual))
      founders.push({ kind: 'individual', number: individual, share });
  }
  const unknownParents: Cause[] = [];
  const uncertain: Cause[] = [];
  ancestry.clutches.forEach((clutch, local) => {
    const unknown = hasUnknownParent(ancestry, local);
    const share = (pool.unknownFirst[local] as number) + (pool.unknownSecond[local] as number);
    if (unknown) unknownParents.push({ kind: 'clutch', number: clutch, share });
    if ((pairStart[clutch + 1] as number) - (pairStart[clutch] as number) > 1)
      uncertain.push({ kind: 'clutch', number: clutch, share: pool.ofClutch[local] as number });
  });
  return { sources, founders, apart, unknownParents, uncertain, outsiders };
}

function hasUnknownParent({ parentStart, weights }: Ancestry, local: number): boolean {
  let known = 0;
  for (let link = parentStart[local] as number; link < (parentStart[local + 1] as number); link++)
    known += weights[link] as number;
  return known < 1 - 1e-12;
}

/** The records that cause a flag, those with the largest part of the pool first. */
export function causesOf(code: FlagCode, input: AuditInput, origins: PoolOrigins): Cause[] {
  const { pedigree, verdicts } = input;
  const { traces, labels, flags } = verdicts;
  const apart = (chosen: (row: number) => boolean): Cause[] =>
    origins.apart.filter(({ number }) => chosen(verdictOf(verdicts, pedigree, number)));
  const bySource = (chosen: (source: number) => boolean): Cause[] =>
    [...origins.sources].flatMap(([number, share]): Cause[] =>
      chosen(number) ? [{ kind: 'source', number, share }] : [],
    );
  const found = (): Cause[] => {
    switch (code) {
      case 'origin-gap':
        return [...origins.founders, ...origins.unknownParents];
      case 'label-beyond-evidence':
        return [
          ...bySource((source) => traces[source] !== 1),
          ...apart((row) => traces[row] !== 1).filter(({ number }) => (pedigree.sourceOf[number] as number) < 0),
          ...origins.founders,
          ...origins.unknownParents,
        ];
      case 'mixed-labels':
        return bySource((source) => (labels[source] ?? -1) >= 0);
      case 'outside-line':
        return [...origins.outsiders];
      case 'parents-uncertain':
        return [...origins.uncertain];
      default: {
        const isRaised = (row: number): boolean => ((flags[row] ?? 0) & bitOf(code)) !== 0;
        return [...bySource(isRaised), ...apart(isRaised)];
      }
    }
  };
  return found().sort((one, other) => other.share - one.share || one.number - other.number);
}

/**
 * Parts of the gene pool of some members by the first animal of another line that they came through, seen from the members. Further
 * animals of other lines behind it are not told.
 *
 * @param counted 1 for the members that the parts are told of; what only the others came through is there with a part of 0
 */
export function outsideParts(
  ancestry: Ancestry,
  findings: ClutchFindings,
  members: Int32Array,
  counted: Uint8Array,
): Cause[] {
  const { animals, clutches, youngStart, parentStart, parents, weights } = ancestry;
  const through = new Float64Array(animals.length);
  const reached = new Uint8Array(animals.length);
  const count = counted.reduce((sum, one) => sum + one, 0);
  members.forEach((member, place) => {
    const local = ancestry.find(member);
    if (counted[place] === 1) through[local] = (through[local] as number) + 1 / count;
    reached[local] = 1;
  });
  const isOutside = Uint8Array.from(animals, (animal) => (findings.isOutside(animal) ? 1 : 0));
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let sum = 0;
    let isReached = false;
    for (let young = youngStart[clutch] as number; young < (youngStart[clutch + 1] as number); young++) {
      if (isOutside[young] === 1) continue;
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
  const found: Cause[] = [];
  animals.forEach((number, local) => {
    if (isOutside[local] === 1 && reached[local] === 1)
      found.push({ kind: 'individual', number, share: through[local] as number });
  });
  return found;
}
