import type { Plan } from '../api/types.ts';
import { percent, percentRange } from '../ui/figures.ts';

/** The best plan under one weight, per pair. */
export interface TradeOffPoint {
  readonly weight: number;
  /** Mean F of the young, 0 to 1. */
  readonly inbreeding: number;
  /** Mean kinship of the young with the line, 0 to 1. */
  readonly meanKinship: number;
  readonly moves: number;
  readonly isOptimal: boolean;
}

/** Between what the plans under a weight lie; both ends are the same where that is known. */
export interface WeightEffect {
  /** The measured weights at or next to it. */
  readonly below: TradeOffPoint | null;
  readonly above: TradeOffPoint | null;
}

/** Weights that the slider stands still at. */
export const weightSteps = [0, 0.1, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 16, 32, 100] as const;

/** The place on the slider next to a weight. */
export function stepOf(weight: number): number {
  const distances = weightSteps.map((step) => Math.abs(Math.log2(step + 0.05) - Math.log2(weight + 0.05)));
  return distances.indexOf(Math.min(...distances));
}

/** The points of a plan's trade-off by weight, per pair. */
export function tradeOffPoints({ tradeOff, pairs }: Pick<Plan, 'tradeOff' | 'pairs'>): TradeOffPoint[] {
  const count = Math.max(1, pairs.length);
  return tradeOff
    .map(({ weight, meanKinship, kinship, moves, isOptimal }) => ({
      weight,
      inbreeding: kinship / count,
      meanKinship: meanKinship / count,
      moves,
      isOptimal,
    }))
    .sort((one, other) => one.weight - other.weight);
}

/**
 * What is known of a weight: the best plans under it lie between those under the measured weights next to it, since with a greater
 * weight F never rises and mean kinship never falls.
 */
export function effectOf(points: readonly TradeOffPoint[], weight: number): WeightEffect {
  return {
    below: points.findLast((point) => point.weight <= weight + 1e-9) ?? null,
    above: points.find((point) => point.weight >= weight - 1e-9) ?? null,
  };
}

/** The effect in a sentence without its end: `mean F of the young 7.7 %, mean kinship with the line 16.4 %`. */
export function effectInWords({ below, above }: WeightEffect): string {
  const isRough = [below, above].some((point) => point?.isOptimal === false);
  if (below && above) {
    const inbreeding = percentRange(above.inbreeding, below.inbreeding);
    const kinship = percentRange(below.meanKinship, above.meanKinship);
    return isRough
      ? `mean F of the young about ${inbreeding}, mean kinship with the line about ${kinship}`
      : `mean F of the young ${inbreeding}, mean kinship with the line ${kinship}`;
  }
  if (below) {
    const [inbreeding, kinship] = [percent(below.inbreeding), percent(below.meanKinship)];
    return isRough
      ? `mean F of the young about ${inbreeding} or less, mean kinship with the line about ${kinship} or more`
      : `mean F of the young ${inbreeding} or less, mean kinship with the line ${kinship} or more`;
  }
  return 'nothing is known of it yet';
}
