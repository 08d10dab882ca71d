import type { Pedigree } from './pedigree.ts';

/** A possible parent of a clutch, by local number of an ancestry. */
interface PossibleParent {
  readonly parent: number;
  /** Probability that it is one, Σ p over the pairs that name it. */
  odds: number;
}

/** A frog nobody knows: the one that the pairs name first (the sire where sexes are known), or the other. */
interface UnknownParent {
  readonly isFirst: boolean;
  readonly odds: number;
}

/** Two known animals that may be the parents of a clutch together, in either order. */
interface PossibleCouple {
  readonly one: number;
  readonly other: number;
  odds: number;
}

/** Whoever may be the parents of a clutch: each animal once, however many pairs name it, and each ordered couple once. */
export class ClutchParents {
  readonly known: readonly PossibleParent[];
  readonly unknown: readonly UnknownParent[];
  readonly #couplesOf: () => Map<string, PossibleCouple>;
  #couples: readonly PossibleCouple[] | undefined;

  /** @param localOf local number of an individual, −1 for a frog nobody knows */
  constructor(pedigree: Pedigree, clutch: number, localOf: (individual: number) => number) {
    const { pairStart, pairSire, pairDam, pairProbability } = pedigree;
    const parents = new Map<number, PossibleParent>();
    const unknown = { first: 0, second: 0 };
    const add = (parent: number, odds: number, place: keyof typeof unknown): void => {
      const known = parents.get(parent);
      if (parent < 0) unknown[place] += odds;
      else if (known) known.odds += odds;
      else parents.set(parent, { parent, odds });
    };
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const odds = pairProbability[pair] as number;
      add(localOf(pairSire[pair] as number), odds, 'first');
      add(localOf(pairDam[pair] as number), odds, 'second');
    }
    this.known = [...parents.values()];
    this.#couplesOf = () => gatherCouples(pedigree, clutch, localOf);
    this.unknown = [
      { isFirst: true, odds: unknown.first },
      { isFirst: false, odds: unknown.second },
    ].filter(({ odds }) => odds > 0);
  }

  /** Made when first wanted, for long lists of candidates have very many. */
  get couples(): readonly PossibleCouple[] {
    return (this.#couples ??= [...this.#couplesOf().values()]);
  }
}

function gatherCouples(
  { pairStart, pairSire, pairDam, pairProbability }: Pedigree,
  clutch: number,
  localOf: (individual: number) => number,
): Map<string, PossibleCouple> {
  const couples = new Map<string, PossibleCouple>();
  const add = (one: number, other: number, odds: number): void => {
    const known = couples.get(`${one} ${other}`);
    if (known) known.odds += odds;
    else couples.set(`${one} ${other}`, { one, other, odds });
  };
  for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
    const odds = pairProbability[pair] as number;
    const [first, second] = [localOf(pairSire[pair] as number), localOf(pairDam[pair] as number)];
    if (first < 0 || second < 0) continue;
    add(first, second, odds);
    add(second, first, odds);
  }
  return couples;
}
