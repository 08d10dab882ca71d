import type { Today } from '../api/types.ts';

/** How many things are due: a clutch, a group of clutch-mates to sex, an offer, a paper and an odd record count one each. */
export function dueInAll({ hatching, leavingWater, sexing, transfers, reviews, warnings }: Today): number {
  // of animals that are not shown nobody knows which are of one clutch
  const groups = sexing.groups.length + (sexing.total - sexing.shown);
  return hatching.total + leavingWater.total + groups + transfers.total + reviews.total + warnings.total;
}
