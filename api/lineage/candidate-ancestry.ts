import type { CandidateAncestry } from './kernel/assignment-plan.ts';
import type { Pedigree } from './kernel/pedigree.ts';

/** What records are called; the same in every copy of the service, unlike their numbers. */
export interface FixedNames {
  readonly ofClutch: (clutch: number) => string;
  readonly ofIndividual: (individual: number) => string;
}

/**
 * Puts the clutches of an ancestry and their candidate pairs in an order that follows from the records alone, so that a seed draws the
 * same assignments wherever and whenever it is asked: clutches by the longest way down to them, then by name; pairs by the names of both.
 *
 * @param clutches those of the animal's ancestors and its own, parents first
 */
export function candidateAncestry(pedigree: Pedigree, clutches: Int32Array, names: FixedNames): CandidateAncestry {
  const { pairStart } = pedigree;
  const levels = levelsOf(pedigree, clutches);
  const sorted = Array.from(clutches, (clutch) => ({
    clutch,
    level: levels.get(clutch) ?? 0,
    name: names.ofClutch(clutch),
  })).sort((one, other) => one.level - other.level || compare(one.name, other.name));
  const start = new Int32Array(sorted.length + 1);
  const pairs: number[] = [];
  sorted.forEach(({ clutch }, at) => {
    const from = pairStart[clutch] ?? 0;
    const own = Array.from({ length: (pairStart[clutch + 1] ?? 0) - from }, (_, pair) => from + pair);
    for (const pair of own.length > 1 ? inOrder(pedigree, own, names) : own) pairs.push(pair);
    start[at + 1] = pairs.length;
  });
  return { clutches: Int32Array.from(sorted, ({ clutch }) => clutch), start, pairs: Int32Array.from(pairs) };
}

/** Generations on the longest way down to each clutch. */
function levelsOf({ clutchOf, pairStart, pairSire, pairDam }: Pedigree, clutches: Int32Array): Map<number, number> {
  const levels = new Map<number, number>();
  const below = (parent: number): number => (parent < 0 ? 0 : 1 + (levels.get(clutchOf[parent] ?? -1) ?? -1));
  for (const clutch of clutches) {
    let level = 0;
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      level = Math.max(level, below(pairSire[pair] ?? -1), below(pairDam[pair] ?? -1));
    levels.set(clutch, level);
  }
  return levels;
}

function inOrder({ pairSire, pairDam }: Pedigree, pairs: readonly number[], { ofIndividual }: FixedNames): number[] {
  const nameOf = (parent: number): string => (parent < 0 ? '' : ofIndividual(parent));
  return pairs
    .map((pair) => {
      const [one = '', other = ''] = [nameOf(pairSire[pair] ?? -1), nameOf(pairDam[pair] ?? -1)].sort(compare);
      return { pair, one, other };
    })
    .sort((a, b) => compare(a.one, b.one) || compare(a.other, b.other))
    .map(({ pair }) => pair);
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
