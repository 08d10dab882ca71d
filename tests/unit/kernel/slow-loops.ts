import { inbreedingOf, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { sourceKinship } from '../../../api/lineage/kernel/sources.ts';

/** A loop as a test writes it: where it meets and the animals on both ways up, as one text. */
export interface SlowLoop {
  readonly key: string;
  readonly part: number;
  readonly steps: number;
}

/** Places of the two frogs that nobody knows, among the animals of a path. */
const UNKNOWN = { first: -1, second: -2 } as const;

/**
 * Every loop above one clutch: all ways up from each of two parents through every animal that may be one, and of these all pairs that share no
 * animal before they meet (Wright 1922). Odds are those of each clutch on the way; of one that both ways lead through, those of the two together.
 */
export function slowLoops(pedigree: Pedigree, inbreeding: Inbreeding, clutch: number): SlowLoop[] {
  const found: SlowLoop[] = [];
  for (const [key, odds] of couplesOf(pedigree, clutch)) {
    const [sire = -1, dam = -1] = key.split(' ').map(Number);
    if (sire < 0 || dam < 0) continue;
    for (const one of waysUp(pedigree, sire))
      for (const other of waysUp(pedigree, dam)) {
        const kinship = kinshipAtTop(pedigree, inbreeding, one, other);
        const together = kinship === 0 ? 0 : oddsOf(pedigree, one, other);
        if (together === 0) continue;
        const steps = one.length + other.length - 2;
        found.push({
          key: `${one.join(' ')} | ${other.join(' ')}`,
          part: odds * together * 0.5 ** steps * kinship,
          steps,
        });
      }
  }
  return found;
}

/** The pairs of a clutch as they are named, each once. */
function couplesOf({ pairStart, pairSire, pairDam, pairProbability }: Pedigree, clutch: number): Map<string, number> {
  const couples = new Map<string, number>();
  for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
    const [sire = -1, dam = -1] = [pairSire[pair], pairDam[pair]];
    const key = `${sire < 0 ? UNKNOWN.first : sire} ${dam < 0 ? UNKNOWN.second : dam}`;
    couples.set(key, (couples.get(key) ?? 0) + (pairProbability[pair] ?? NaN));
  }
  return couples;
}

function waysUp(pedigree: Pedigree, from: number): number[][] {
  const clutch = pedigree.clutchOf[from] ?? -1;
  if (from < 0 || clutch < 0) return [[from]];
  const parents = new Set([...couplesOf(pedigree, clutch).keys()].flatMap((key) => key.split(' ').map(Number)));
  return [[from], ...[...parents].flatMap((parent) => waysUp(pedigree, parent).map((way) => [from, ...way]))];
}

/** How akin the tops of two ways are, 0 where the ways are no loop. */
function kinshipAtTop(pedigree: Pedigree, inbreeding: Inbreeding, one: number[], other: number[]): number {
  const [top = -1, second = -1] = [one.at(-1), other.at(-1)];
  const shared = one.filter((animal) => animal >= 0 && other.includes(animal));
  if (top < 0 || second < 0) {
    const mates = [one, other].map((way) => pedigree.clutchOf[way.at(-2) ?? -1]);
    return top === second && mates[0] === mates[1] && shared.length === 0 ? 0.5 : 0;
  }
  if (top === second) return shared.length === 1 ? 0.5 * (1 + inbreedingOf(pedigree, inbreeding, top).expected) : 0;
  if (shared.length > 0 || (pedigree.clutchOf[top] ?? 0) >= 0 || (pedigree.clutchOf[second] ?? 0) >= 0) return 0;
  const [a = -1, b = -1] = [pedigree.sourceOf[top], pedigree.sourceOf[second]];
  return a < 0 || b < 0 ? 0 : sourceKinship(pedigree, a, b);
}

/** Probability that all animals on two ways are the parents of those before them. */
function oddsOf(pedigree: Pedigree, one: number[], other: number[]): number {
  const wanted = new Map<number, Set<number>>();
  for (const way of [one, other])
    for (let place = 0; place + 1 < way.length; place++) {
      const clutch = pedigree.clutchOf[way[place] ?? -1] ?? -1;
      wanted.set(clutch, (wanted.get(clutch) ?? new Set()).add(way[place + 1] ?? NaN));
    }
  let odds = 1;
  for (const [clutch, parents] of wanted) {
    let sum = 0;
    for (const [key, probability] of couplesOf(pedigree, clutch)) {
      const couple = key.split(' ').map(Number);
      if ([...parents].every((parent) => couple.includes(parent))) sum += probability;
    }
    odds *= sum;
  }
  return odds;
}
