import type { Ancestry } from '../kernel/ancestry.ts';
import type { AuditInput } from './audit-input.ts';
import type { ClutchFindings } from './clutch-findings.ts';

/** A record that causes a flag, by its kind and dense number. */
export interface Cause {
  readonly kind: 'individual' | 'clutch' | 'source';
  readonly number: number;
  /** Expected part of the gene pool of the living that came through it, 0 to 1; of all members where none lives. */
  readonly share: number;
}

/** How many members descend from a record, and since when. */
export interface Touched {
  readonly members: number;
  readonly living: number;
  /** Year in which the first of them hatched; null where none is dated to a year. */
  readonly since: number | null;
}

/** Members that hatched from one clutch, or founders that stand for themselves, counted together. */
export interface MemberGroup {
  /** Local number of the clutch; −1 for a founder. */
  readonly clutch: number;
  /** The founder; −1 for young of a clutch. */
  readonly founder: number;
  readonly bits: number;
  readonly members: number;
  readonly living: number;
  /** Year in which the first of them hatched, 0 for none. */
  readonly since: number;
}

/** Most records that are followed down the lineage at once: the bits of two words. */
export const FOLLOWED_MOST = 50;

/** Members by clutch: all young of one share what their lineage says. */
export function groupMembers(input: AuditInput, findings: ClutchFindings): MemberGroup[] {
  const groups = new Map<number, { -readonly [Field in keyof MemberGroup]: MemberGroup[Field] }>();
  input.members.forEach((member, place) => {
    const clutch = input.pedigree.clutchOf[member] as number;
    const key = clutch < 0 ? -1 - member : clutch;
    let group = groups.get(key);
    if (!group) {
      const local = clutch < 0 ? -1 : (findings.localOf[clutch] as number);
      const { bits } = findings.of(member);
      group = { clutch: local, founder: clutch < 0 ? member : -1, bits, members: 0, living: 0, since: 0 };
      groups.set(key, group);
    }
    group.members++;
    group.living += input.living[place] as number;
    const year = input.hatched[place] as number;
    if (year > 0) group.since = group.since === 0 ? year : Math.min(group.since, year);
  });
  return [...groups.values()];
}

/**
 * Counts the members with a flag that descend from each of some records, or are these themselves: one pass over the ancestry for all of
 * them. Where `isEnding`, lines of descent end at the first animal of another line, seen from the members.
 *
 * @param causes at most `FOLLOWED_MOST`
 */
export function countTouched(
  { pedigree }: AuditInput,
  ancestry: Ancestry,
  findings: ClutchFindings,
  groups: readonly MemberGroup[],
  bit: number,
  causes: readonly Cause[],
  isEnding: boolean,
): Touched[] {
  const places = {
    individual: new Map<number, number>(),
    clutch: new Map<number, number>(),
    source: new Map<number, number>(),
  };
  causes.forEach(({ kind, number }, place) => places[kind].set(number, place));
  const words = new Uint32Array(2 * ancestry.clutches.length);
  const own = new Uint32Array(2);
  /** Writes into `own` what an animal carries down. */
  const carry = (individual: number): void => {
    own.fill(0);
    mark(own, places.individual.get(individual));
    if (isEnding && findings.isOutside(individual)) return;
    const clutch = pedigree.clutchOf[individual] as number;
    const local = clutch < 0 ? -1 : (findings.localOf[clutch] as number);
    if (local < 0) mark(own, places.source.get(pedigree.sourceOf[individual] as number));
    else {
      own[0] = (own[0] as number) | (words[2 * local] as number);
      own[1] = (own[1] as number) | (words[2 * local + 1] as number);
    }
  };
  ancestry.clutches.forEach((clutch, local) => {
    const here = words.subarray(2 * local, 2 * local + 2);
    mark(here, places.clutch.get(clutch));
    for (let link = ancestry.parentStart[local] as number; link < (ancestry.parentStart[local + 1] as number); link++) {
      carry(ancestry.animals[ancestry.parents[link] as number] as number);
      here[0] = (here[0] as number) | (own[0] as number);
      here[1] = (here[1] as number) | (own[1] as number);
    }
  });
  const counts = causes.map(() => ({ members: 0, living: 0, since: 0 }));
  for (const group of groups) {
    if ((group.bits & bit) === 0) continue;
    if (group.founder >= 0) carry(group.founder);
    else own.set(words.subarray(2 * group.clutch, 2 * group.clutch + 2));
    counts.forEach((count, place) => {
      if (!isMarked(own, place)) return;
      count.members += group.members;
      count.living += group.living;
      if (group.since > 0) count.since = count.since === 0 ? group.since : Math.min(count.since, group.since);
    });
  }
  return counts.map(({ since, ...count }) => ({ ...count, since: since === 0 ? null : since }));
}

function mark(words: Uint32Array, place: number | undefined): void {
  if (place !== undefined) words[place >> 5] = (words[place >> 5] as number) | (1 << (place & 31));
}

function isMarked(words: Uint32Array, place: number): boolean {
  return ((words[place >> 5] as number) & (1 << (place & 31))) !== 0;
}
