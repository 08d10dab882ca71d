import type { SheetCandidate, SheetPair } from './sheet-animals.queries.ts';
import { say } from '../../platform/say.ts';

/** What a sheet says of the parents of a clutch. */
export interface ParentsOut {
  readonly sire: string;
  readonly dam: string;
  readonly parents: string;
  /** What no column can say, for the notes; else empty. */
  readonly note: string;
}

/** Odds that differ by less than this were meant to be equal. */
const tolerance = 1e-9;

/**
 * The cells of a clutch's parents. An unknown parent and one that may not be seen are both `?`, with their odds together. Pairs of a group are
 * told as a group where every two of it are equally likely; other odds go into the notes, since a sheet has no way to say them.
 *
 * @param nameOf what the sheet calls an animal
 */
export function parentsOut(
  candidates: readonly SheetCandidate[],
  pairs: readonly SheetPair[],
  nameOf: (id: string, number: string) => string,
): ParentsOut {
  const side = (role: 'sire' | 'dam'): string =>
    sideOut(
      candidates.filter((one) => one.role === role),
      nameOf,
    );
  return { sire: side('sire'), dam: side('dam'), ...pairsOut(pairs, nameOf) };
}

const compare = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

type NameOf = (id: string, number: string) => string;

function sideOut(candidates: readonly SheetCandidate[], nameOf: NameOf): string {
  const odds = new Map<string, number>();
  for (const { parentId, number, probability } of candidates) {
    const name = parentId === null || number === null ? '?' : nameOf(parentId, number);
    odds.set(name, (odds.get(name) ?? 0) + probability);
  }
  const [first = 0] = odds.values();
  const areEqual = [...odds.values()].every((each) => Math.abs(each - first) < tolerance);
  // by odds, then by name, so that the same candidates always make the same cell
  const inOrder = [...odds].sort(([a, x], [b, y]) => y - x || compare(a, b));
  return inOrder.map(([name, each]) => (areEqual ? name : `${name}:${decimal(each)}`)).join('/');
}

/** As many digits as are needed, and never with an exponent. */
const decimal = (odds: number): string => odds.toFixed(15).replace(/0+$/, '');

function pairsOut(pairs: readonly SheetPair[], nameOf: NameOf): { parents: string; note: string } {
  const names = new Set<string>();
  const told: string[] = [];
  for (const { aId, aNumber, bId, bNumber, probability } of pairs) {
    if (aId === null || aNumber === null || bId === null || bNumber === null) return { parents: '', note: '' };
    const [a = '', b = ''] = [nameOf(aId, aNumber), nameOf(bId, bNumber)].sort(compare);
    names.add(a).add(b);
    told.push(`${a} × ${b} ${decimal(probability)}`);
  }
  const [first] = pairs;
  const all = (names.size * (names.size - 1)) / 2;
  const areEqual = pairs.every(({ probability }) => Math.abs(probability - (first?.probability ?? 0)) < tolerance);
  const isGroup = pairs.length === all && areEqual;
  return {
    parents: [...names].sort(compare).join('/'),
    note: isGroup ? '' : say`odds of the parents: ${told.sort(compare).join(', ')}`,
  };
}
