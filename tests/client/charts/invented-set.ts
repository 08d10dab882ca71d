import type { LineageSet } from '../../../client/src/lib/api/types.ts';

/** A generator of numbers from 0 to 1 that gives the same ones for the same seed. */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

interface Invented {
  seed: number;
  sources: number;
  /** First and last year; young hatch in about three of four. */
  from: number;
  to: number;
  /** Part of every year's genes that no named origin has. */
  others?: number;
}

/** An invented answer about a set, as the service gives it. */
export function inventedSet({ seed, sources, from, to, others = 0 }: Invented): LineageSet {
  const next = numbersFrom(seed);
  const shares = (): number[] => {
    const parts = Array.from({ length: sources }, () => (next() < 0.3 ? 0 : next()));
    parts[0] = (parts[0] ?? 0) + 0.1;
    const sum = parts.reduce((total, part) => total + part, 0);
    return parts.map((part) => (part / sum) * (1 - others));
  };
  const years: LineageSet['years'] = [];
  for (let year = from; year <= to; year++) {
    if (year !== from && year !== to && next() < 0.25) continue;
    const known = next() > 0.1;
    const [least, mean, greatest] = [next(), next(), next()].map((value) => value / 4).sort((a, b) => a - b);
    const animals = 1 + Math.floor(next() * 12);
    years.push({
      year,
      animals,
      inbreeding: {
        animals: known ? animals : 0,
        mean: known ? (mean ?? 0) : null,
        least: known ? (least ?? 0) : null,
        greatest: known ? (greatest ?? 0) : null,
      },
      geneDiversity: 0.5 + next() / 2,
      shares: shares(),
    });
  }
  const animals = years.reduce((sum, year) => sum + year.animals, 0);
  return {
    animals,
    nothingKnown: 0,
    inbreeding: { animals, mean: 0.05, least: 0, greatest: 0.25 },
    meanKinship: 0.125,
    geneDiversity: 0.875,
    founderGenomeEquivalents: 4,
    effectiveFounders: 6.2,
    effectiveAncestors: { effective: 4.8, items: [], picked: 9, unexplained: 0 },
    contributions: {
      items: shares().map((share, at) => ({
        source: {
          id: `s-${at}`,
          title: at % 2 === 0 ? `Import, about ${1990 + at}` : `Purchase at a fair in the spring of ${1990 + at}`,
          standing: standingAt(at),
          label: null,
          isPrivate: false,
        },
        standing: standingAt(at),
        share,
      })),
      standings: [{ standing: 'stated', share: 1 }],
      others: others > 0 ? 3 : 0,
      othersShare: others,
    },
    effectiveSize: { animals, increase: 0.02, effectiveSize: 25, standardError: 3, note: null },
    depth: { mean: 4, greatest: 7, full: 2, generationEquivalents: 3.1 },
    years,
    undated: 0,
    cautions: [],
    current: true,
    asOf: { revision: 1, at: '2026-01-01T00:00:00Z' },
  };
}

const standingAt = (place: number) => (['documented', 'stated', 'unknown'] as const)[place % 3] ?? 'unknown';
