import type { BreedingScheme } from './breeding-scheme.ts';

/** Rounds over all places after which exchanging ends, whether or not something could still be gained. */
const ROUNDS_MOST = 50;
/** Gains below this are roundings. */
const LEAST_GAIN = 1e-12;

/**
 * Exchanges dams between places of a scheme, two at a time, as long as that lowers what the matings cost together.
 *
 * @param sires animals in the places of sires
 * @param dams animals in the places of dams, and behind them any that wait for one; changed
 * @param cost of a mating of a sire with a dam, 0 at least
 */
export function exchangeDams(
  scheme: BreedingScheme,
  sires: Int32Array,
  dams: Int32Array,
  cost: (sire: number, dam: number) => number,
): void {
  const clutchesOf = clutchesOfDams(scheme);
  const costAt = (place: number, dam: number): number => {
    let sum = 0;
    for (const clutch of clutchesOf[place] ?? []) {
      const from = scheme.sireStart[clutch] ?? 0;
      const to = scheme.sireStart[clutch + 1] ?? 0;
      for (let at = from; at < to; at++) sum += cost(sires[scheme.siresOf[at] ?? -1] ?? -1, dam) / (to - from);
    }
    return sum;
  };
  let hasGained = true;
  for (let round = 0; round < ROUNDS_MOST && hasGained; round++) {
    hasGained = false;
    for (let one = 0; one < dams.length; one++) if (exchangeBest(dams, one, costAt)) hasGained = true;
  }
}

/** Exchanges the dam of one place for that of the place where it gains most; nothing can be gained where she costs nothing. */
function exchangeBest(dams: Int32Array, one: number, costAt: (place: number, dam: number) => number): boolean {
  const own = dams[one] as number; // as many as there are places, or more
  const ownCost = costAt(one, own);
  if (ownCost === 0) return false;
  let best = -1;
  let mostGained = LEAST_GAIN;
  for (let other = 0; other < dams.length; other++) {
    if (other === one) continue;
    const theirs = dams[other] as number;
    const before = ownCost + costAt(other, theirs);
    const gained = before - costAt(one, theirs) - costAt(other, own);
    if (gained > mostGained) {
      mostGained = gained;
      best = other;
    }
  }
  if (best < 0) return false;
  dams[one] = dams[best] as number;
  dams[best] = own;
  return true;
}

function clutchesOfDams({ dams, damOf }: BreedingScheme): number[][] {
  const clutches: number[][] = Array.from({ length: dams }, () => []);
  damOf.forEach((place, clutch) => clutches[place]?.push(clutch));
  return clutches;
}
