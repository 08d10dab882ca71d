import type { Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../lineage/kernel/kinship.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { measureHolding, type HoldingMeasures } from './holding.ts';
import { findSwaps, type Swap } from './swaps.ts';

/** What two keepers have, and what of it may go. All animals by dense numbers, in the order in which equals are told. */
export interface ExchangeSide {
  readonly animals: Int32Array;
  /** Those of them that may be proposed. */
  readonly mayGo: Int32Array;
}

/** An exchange to be measured, and how many better ones are wanted. */
export interface ExchangeQuestion {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly matrixBytes: number | undefined;
  readonly one: ExchangeSide;
  readonly other: ExchangeSide;
  /** Animals that the first gives, and that it takes; both may be empty. */
  readonly give: Int32Array;
  readonly take: Int32Array;
  readonly proposals: number;
  /** n: sex of each animal by a number of its own; only animals of one sex are exchanged for each other where it is given. */
  readonly sexes: Uint8Array | null;
}

/** Both holdings, measured. */
export interface Both {
  readonly one: HoldingMeasures;
  readonly other: HoldingMeasures;
}

/** An exchange of one animal for another, by dense numbers. */
export interface ProposedSwap extends Swap {
  readonly after: Both;
}

/** What an exchange does for both, and which ones of one for one would help both. */
export interface ExchangeFigures {
  readonly before: Both;
  /** Null where nothing is given nor taken. */
  readonly after: Both | null;
  readonly proposals: readonly ProposedSwap[];
  readonly tried: number;
  readonly helping: number;
}

/** Measures both holdings before and after, and tries every exchange of one animal for one. */
export function exchangeFigures(question: ExchangeQuestion): ExchangeFigures {
  const { pedigree, inbreeding, one, other, give, take, proposals } = question;
  const measured = (first: Int32Array, second: Int32Array): Both => ({
    one: measureHolding(pedigree, inbreeding, first),
    other: measureHolding(pedigree, inbreeding, second),
  });
  const exchanged = (given: Int32Array, taken: Int32Array): Both =>
    measured(after(one.animals, given, taken), after(other.animals, taken, given));
  const { best, tried, helping } = proposals === 0 ? { best: [], tried: 0, helping: 0 } : swapsBetween(question);
  return {
    before: measured(one.animals, other.animals),
    after: give.length + take.length === 0 ? null : exchanged(give, take),
    proposals: best.map((swap) => ({
      ...swap,
      after: exchanged(Int32Array.of(swap.give), Int32Array.of(swap.take)),
    })),
    tried,
    helping,
  };
}

function after(animals: Int32Array, goes: Int32Array, comes: Int32Array): Int32Array {
  const gone = new Set(goes);
  return Int32Array.from([...animals.filter((animal) => !gone.has(animal)), ...comes]);
}

/** The best exchanges by dense numbers. */
function swapsBetween({
  pedigree,
  inbreeding,
  matrixBytes,
  one,
  other,
  proposals,
  sexes,
}: ExchangeQuestion): ReturnType<typeof findSwaps> {
  const all = Int32Array.from([...one.animals, ...other.animals]);
  const options = matrixBytes === undefined ? {} : { sweepBytes: matrixBytes };
  const kinship = kinshipMatrix(pedigree, inbreeding, all, options);
  const placeOf = new Map(Array.from(all, (animal, place) => [animal, place]));
  const places = (animals: Int32Array): number[] => Array.from(animals, (animal) => placeOf.get(animal) ?? -1);
  const sexAt = (place: number): number | undefined => sexes?.[all[place] ?? -1];
  const found = findSwaps(
    {
      size: all.length,
      kinship,
      one: places(one.animals),
      other: places(other.animals),
      mayGo: { one: places(one.mayGo), other: places(other.mayGo) },
      fits: (give, take) => sexAt(give) === sexAt(take),
    },
    proposals,
  );
  const best = found.best.map((swap) => ({ ...swap, give: all[swap.give] ?? -1, take: all[swap.take] ?? -1 }));
  return { ...found, best };
}
