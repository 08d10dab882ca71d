import { sharesByStanding, standingOfSource, type StandingShare } from '../provenance/standing.ts';
import type { FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

/** Parts of a gene pool that come from recorded sources, by their dense numbers. */
export interface SourceShares {
  readonly sources: Int32Array;
  /** Each above 0, at most 1, in the order of `sources`. */
  readonly shares: Float64Array;
}

/** The sources among all origins of a set, so that what an answer cuts off still counts by its standing. */
export function sourceSharesOf(origins: readonly FounderShare[]): SourceShares {
  const found = origins.flatMap((origin) => (origin.kind === 'source' ? [origin] : []));
  return {
    sources: Int32Array.from(found, ({ source }) => source),
    shares: Float64Array.from(found, ({ share }) => share),
  };
}

/**
 * How much of a gene pool stands how well, best first: founders of a source as its label stands, founders of unknown origin and unknown
 * parents as unknown. The shares sum to 1; empty for an empty set.
 *
 * @param animals how many animals the set has
 */
export function setStandings(
  { graph }: LineageSnapshot,
  { sources, shares }: SourceShares,
  animals: number,
): StandingShare[] {
  if (animals === 0) return [];
  const known = Array.from(sources, (source, place) => ({
    standing: standingOfSource({ labelAsReceived: graph.sources[source]?.labelAsReceived ?? null }),
    share: shares[place] ?? 0,
  }));
  const rest = 1 - known.reduce((sum, { share }) => sum + share, 0);
  // what rounding leaves comes from nobody
  return sharesByStanding(rest > 1e-12 ? [...known, { standing: 'unknown', share: rest }] : known);
}
