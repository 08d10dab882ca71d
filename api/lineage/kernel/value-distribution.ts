/** A value with the probability of it. */
export interface ValueShare {
  readonly value: number;
  readonly share: number;
}

/** Values from `from` to `to` taken together. The bins stand side by side; the last one has its `to` in it. */
export interface ValueBin {
  readonly from: number;
  readonly to: number;
  readonly share: number;
}

/** A distribution of values from 0 to 1. */
export interface Distribution {
  readonly mean: number;
  /** How far the mean may be off by chance, one standard deviation of it; 0 where nothing was left to chance. */
  readonly standardError: number;
  readonly standardDeviation: number;
  /** The least and the greatest value there is, or that was drawn. */
  readonly least: number;
  readonly greatest: number;
  /** The least value that is not exceeded with each of some probabilities. */
  readonly quantiles: readonly { readonly probability: number; readonly value: number }[];
  /** The values one by one, the least first, where they are few; else null. */
  readonly values: readonly ValueShare[] | null;
  /** Where they are many: bins as wide as each other in the square root of the value; else null. */
  readonly bins: readonly ValueBin[] | null;
}

/** So many different values are told one by one. */
const VALUES_MOST = 32;
const BINS = 40;
const PROBABILITIES = [0.05, 0.25, 0.5, 0.75, 0.95];

/**
 * Describes a distribution.
 *
 * @param odds how likely, or how often drawn, each value is, in any unit
 * @param samples how many values were drawn, 2 at least; null where the odds are exact
 */
export function distributionOf(odds: ReadonlyMap<number, number>, samples: number | null): Distribution {
  const sorted = [...odds].sort(([one], [other]) => one - other);
  const total = sorted.reduce((sum, [, odd]) => sum + odd, 0);
  const values = sorted.map(([value, odd]): ValueShare => ({ value, share: odd / total }));
  const mean = values.reduce((sum, { value, share }) => sum + value * share, 0);
  const variance = values.reduce((sum, { value, share }) => sum + share * (value - mean) ** 2, 0);
  const unbiased = samples === null ? variance : (variance * samples) / (samples - 1);
  const isFew = values.length <= VALUES_MOST;
  return {
    mean,
    standardError: samples === null ? 0 : Math.sqrt(unbiased / samples),
    standardDeviation: Math.sqrt(unbiased),
    least: values[0]?.value ?? 0,
    greatest: values.at(-1)?.value ?? 0,
    quantiles: PROBABILITIES.map((probability) => ({ probability, value: quantile(values, probability) })),
    values: isFew ? values : null,
    bins: isFew ? null : binsOf(values),
  };
}

function quantile(values: readonly ValueShare[], probability: number): number {
  let sum = 0;
  for (const { value, share } of values) {
    sum += share;
    // a sum of shares may miss the probability by its rounding
    if (sum >= probability - 1e-12) return value;
  }
  return values.at(-1)?.value ?? 0;
}

function binsOf(values: readonly ValueShare[]): ValueBin[] {
  const least = values[0]?.value ?? 0;
  const greatest = values.at(-1)?.value ?? 0;
  const first = Math.sqrt(least);
  const width = (Math.sqrt(greatest) - first) / BINS;
  const shares = new Float64Array(BINS);
  for (const { value, share } of values) {
    const bin = Math.min(BINS - 1, Math.floor((Math.sqrt(value) - first) / width));
    shares[bin] = (shares[bin] ?? 0) + share;
  }
  const edge = (bin: number): number => (bin === 0 ? least : bin === BINS ? greatest : (first + bin * width) ** 2);
  return Array.from(shares, (share, bin) => ({ from: edge(bin), to: edge(bin + 1), share }));
}
