/** Males and females that a group can be put together from, by their places in lists. */
export interface GroupPool {
  /** Kinship of each male with each female, by rows of males. */
  readonly kinship: Float64Array;
  /** Mean kinship of each male with the living of the line. */
  readonly maleMeans: readonly number[];
  readonly femaleMeans: readonly number[];
}

/** Places of the animals of a group. */
export interface ChosenGroup {
  readonly males: readonly number[];
  readonly females: readonly number[];
  /** Mean kinship of the young's parents with the line + weight · mean kinship of sire and dam: the least there is. */
  readonly cost: number;
}

/** Most ways to choose one side that are gone through. */
export const CHOICES_MOST = 30_000;

/** Kinships are sums in floating point: full siblings must not miss a limit of ¼ by the last digit. */
export const ROUNDING = 1e-12;

/** In how many ways `chosen` of `all` can be taken. */
export function choices(all: number, chosen: number): number {
  let ways = 1;
  for (let step = 1; step <= chosen; step++) ways = (ways * (all - chosen + step)) / step;
  return Math.round(ways);
}

/**
 * The best group of a given size, where every sire is as likely as every other to be the father, and every dam to be the mother: of all
 * groups the one with the least ½(mean m of the males + mean m of the females) + w · mean φ(male, female). For a given choice of one side
 * each animal of the other side costs by itself, so that its best are simply the cheapest: every choice of the side with fewer ways
 * is gone through, and the answer is exact. Of equal groups the one that stands first in the lists.
 *
 * @param most greatest kinship that any male of the group may have with any of its females, 0 to 1
 * @returns null where a side has too few animals, or no group keeps to `most`
 * @throws RangeError where the smaller side can be chosen in more than `CHOICES_MOST` ways
 */
export function chooseGroup(
  pool: GroupPool,
  males: number,
  females: number,
  weight: number,
  most = 1,
): ChosenGroup | null {
  const [maleCount, femaleCount] = [pool.maleMeans.length, pool.femaleMeans.length];
  if (males < 1 || females < 1 || males > maleCount || females > femaleCount) return null;
  const ways = [choices(maleCount, males), choices(femaleCount, females)] as const;
  if (Math.min(...ways) > CHOICES_MOST) throw new RangeError('There are too many ways to choose this group.');
  const isByMales = ways[0] <= ways[1];
  const fixed = isByMales ? { means: pool.maleMeans, size: males } : { means: pool.femaleMeans, size: females };
  const open = isByMales ? { means: pool.femaleMeans, size: females } : { means: pool.maleMeans, size: males };
  const kinship = (one: number, other: number): number =>
    (isByMales ? pool.kinship[one * femaleCount + other] : pool.kinship[other * femaleCount + one]) ?? 0;
  let best: { one: number[]; other: number[]; cost: number } | null = null;
  for (const one of subsets(fixed.means.length, fixed.size)) {
    const costs = open.means.flatMap((mean, place) => {
      const kinships = one.map((member) => kinship(member, place));
      if (kinships.some((value) => value > most + ROUNDING)) return [];
      return [{ place, cost: mean / 2 + (weight * kinships.reduce((sum, value) => sum + value, 0)) / one.length }];
    });
    if (costs.length < open.size) continue;
    costs.sort((a, b) => a.cost - b.cost || a.place - b.place);
    const cheapest = costs.slice(0, open.size);
    const cost =
      one.reduce((sum, member) => sum + (fixed.means[member] ?? 0), 0) / (2 * one.length) +
      cheapest.reduce((sum, { cost: own }) => sum + own, 0) / cheapest.length;
    if (best && cost >= best.cost - 1e-12) continue;
    best = { one: [...one], other: cheapest.map(({ place }) => place).sort((a, b) => a - b), cost };
  }
  if (!best) return null;
  const { one, other, cost } = best;
  return isByMales ? { males: one, females: other, cost } : { males: other, females: one, cost };
}

/** Every choice of `size` places out of `count`, in order; the array given is the same each time. */
function* subsets(count: number, size: number): Generator<readonly number[]> {
  const places = Array.from({ length: size }, (_, place) => place);
  for (;;) {
    yield places;
    let last = size - 1;
    while (last >= 0 && (places[last] ?? 0) === count - size + last) last--;
    if (last < 0) return;
    places[last] = (places[last] ?? 0) + 1;
    for (let place = last + 1; place < size; place++) places[place] = (places[place - 1] ?? 0) + 1;
  }
}
