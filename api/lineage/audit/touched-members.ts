import type { Ancestry } from '../kernel/ancestry.ts';
import type { AuditInput } from './audit-input.ts';
import type { ClutchFindings } from './clutch-findings.ts';

/** A record that causes a flag, by its kind and dense number. */
export interface Cause {
  readonly kind: 'individual' | 'clutch' | 'source' | 'line';
  readonly number: number;
  /** Expected part of the gene pool of the living that came through it, 0 to 1; of all members where none lives. */
  readonly share: number;
  /** The animals from which it is handed down: itself, or those of a source that it holds for. Of a clutch all young are. */
  readonly enters?: readonly number[];
  /** Whether it touches only the animal itself, and none of its young. */
  readonly isAlone?: boolean;
}

/** How many members descend from a record, and since when. */
export interface Touched {
  readonly members: number;
  readonly living: number;
  /** Year in which the first of them hatched; null where none is dated to a year. */
  readonly since: number | null;
}

/** Members that hatched from one clutch, counted together, or one that stands for itself: a founder, or one with claims of its own. */
export interface MemberGroup {
  /** Local number of the clutch; −1 for a founder. */
  readonly clutch: number;
  /** The one animal that is counted for itself; −1 for young of a clutch together. */
  readonly animal: number;
  readonly bits: number;
  readonly members: number;
  readonly living: number;
  /** Year in which the first of them hatched, 0 for none. */
  readonly since: number;
}

/** Most records that are followed down the lineage at once: the bits of two words. */
export const FOLLOWED_MOST = 50;

/** Members by clutch: all young of one share what their lineage says, but those that carry flags by themselves. */
export function groupMembers(input: AuditInput, findings: ClutchFindings): MemberGroup[] {
  const groups = new Map<number, { -readonly [Field in keyof MemberGroup]: MemberGroup[Field] }>();
  input.members.forEach((member, place) => {
    const clutch = input.pedigree.clutchOf[member] as number;
    const isApart = clutch < 0 || input.verdicts.apart.has(member);
    const key = isApart ? -1 - member : clutch;
    let group = groups.get(key);
    if (!group) {
      const local = clutch < 0 ? -1 : (findings.localOf[clutch] as number);
      const { bits } = findings.of(member);
      group = { clutch: local, animal: isApart ? member : -1, bits, members: 0, living: 0, since: 0 };
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
 * Whether each animal of an ancestry is above a member with a flag, or is one: one pass upwards.
 *
 * @returns by local number
 */
export function aboveCarriers(ancestry: Ancestry, groups: readonly MemberGroup[], bit: number): Uint8Array {
  const { clutches, youngStart, parentStart, parents } = ancestry;
  const above = new Uint8Array(ancestry.animals.length);
  const carries = new Uint8Array(clutches.length);
  for (const { clutch, animal, bits } of groups) {
    if ((bits & bit) === 0) continue;
    if (clutch >= 0) carries[clutch] = 1;
    else above[ancestry.find(animal)] = 1;
  }
  for (let clutch = clutches.length - 1; clutch >= 0; clutch--) {
    let isAbove = carries[clutch] === 1;
    for (let young = youngStart[clutch] as number; !isAbove && young < (youngStart[clutch + 1] as number); young++)
      isAbove = above[young] === 1;
    if (!isAbove) continue;
    for (let link = parentStart[clutch] as number; link < (parentStart[clutch + 1] as number); link++)
      above[parents[link] as number] = 1;
  }
  return above;
}

/**
 * Counts the members with a flag that descend from each of some records, or are these themselves: one pass over the ancestry for all of
 * them. Where `isEnding`, lines of descent end at the first animal of another line, seen from the members.
 *
 * @param causes at most `FOLLOWED_MOST`
 */
export function countTouched(
  input: AuditInput,
  ancestry: Ancestry,
  findings: ClutchFindings,
  groups: readonly MemberGroup[],
  bit: number,
  causes: readonly Cause[],
  isEnding: boolean,
): Touched[] {
  const marks = new Descent(input, ancestry, findings, causes, isEnding);
  const counts = causes.map(() => ({ members: 0, living: 0, since: 0 }));
  const alone = new Map(causes.flatMap(({ isAlone, number }, place) => (isAlone ? [[number, place] as const] : [])));
  const count = (place: number, { members, living, since }: Omit<Touched, 'since'> & { since: number }): void => {
    const sum = counts[place];
    if (!sum) return;
    sum.members += members;
    sum.living += living;
    if (since > 0) sum.since = sum.since === 0 ? since : Math.min(sum.since, since);
  };
  for (const group of groups) {
    if ((group.bits & bit) === 0) continue;
    const own = marks.of(group);
    causes.forEach(({ kind }, place) => {
      if (kind === 'line' || isMarked(own, place)) count(place, group);
    });
  }
  if (alone.size > 0)
    input.members.forEach((member, at) => {
      const place = alone.get(member);
      if (place === undefined) return;
      count(place, { members: 1, living: input.living[at] as number, since: input.hatched[at] as number });
    });
  return counts.map(({ since, ...sum }) => ({ ...sum, since: since === 0 ? null : since }));
}

/** Which of some records each clutch of an ancestry descends from: a bit a record, two words a clutch. */
class Descent {
  readonly #input: AuditInput;
  readonly #findings: ClutchFindings;
  readonly #isEnding: boolean;
  readonly #words: Uint32Array;
  /** Records by the animals that hand them down, and by clutch. */
  readonly #entering = new Map<number, number[]>();
  readonly #ofClutch = new Map<number, number>();
  readonly #own = new Uint32Array(2);

  constructor(
    input: AuditInput,
    ancestry: Ancestry,
    findings: ClutchFindings,
    causes: readonly Cause[],
    isEnding: boolean,
  ) {
    this.#input = input;
    this.#findings = findings;
    this.#isEnding = isEnding;
    this.#words = new Uint32Array(2 * ancestry.clutches.length);
    causes.forEach(({ kind, number, enters = [] }, place) => {
      if (kind === 'clutch') this.#ofClutch.set(number, place);
      for (const animal of enters) this.#entering.set(animal, [...(this.#entering.get(animal) ?? []), place]);
    });
    ancestry.clutches.forEach((clutch, local) => this.#write(ancestry, clutch, local));
  }

  #write({ parentStart, parents, animals }: Ancestry, clutch: number, local: number): void {
    const here = this.#words.subarray(2 * local, 2 * local + 2);
    mark(here, this.#ofClutch.get(clutch));
    for (let link = parentStart[local] as number; link < (parentStart[local + 1] as number); link++) {
      const own = this.#carry(animals[parents[link] as number] as number);
      here[0] = (here[0] as number) | (own[0] as number);
      here[1] = (here[1] as number) | (own[1] as number);
    }
  }

  /** What an animal carries down; valid until the next one is asked about. */
  #carry(individual: number): Uint32Array {
    const own = this.#own.fill(0);
    for (const place of this.#entering.get(individual) ?? NONE) mark(own, place);
    if (this.#isEnding && this.#findings.isOutside(individual)) return own;
    const clutch = this.#input.pedigree.clutchOf[individual] as number;
    const local = clutch < 0 ? -1 : (this.#findings.localOf[clutch] as number);
    if (local < 0) return own;
    own[0] = (own[0] as number) | (this.#words[2 * local] as number);
    own[1] = (own[1] as number) | (this.#words[2 * local + 1] as number);
    return own;
  }

  of({ clutch, animal }: MemberGroup): Uint32Array {
    return clutch < 0 ? this.#carry(animal) : this.#words.subarray(2 * clutch, 2 * clutch + 2);
  }
}

const NONE: readonly number[] = [];

function mark(words: Uint32Array, place: number | undefined): void {
  if (place !== undefined) words[place >> 5] = (words[place >> 5] as number) | (1 << (place & 31));
}

function isMarked(words: Uint32Array, place: number): boolean {
  return ((words[place >> 5] as number) & (1 << (place & 31))) !== 0;
}
