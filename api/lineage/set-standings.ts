import { sharesByStanding, type StandingShare } from '../provenance/standing.ts';
import { FounderStandings, labelOfLine } from './founder-standings.ts';
import type { FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { RegisterGraph } from './register-graph.ts';

/** Parts of a gene pool that come from recorded sources, and from founders that may stand otherwise than their source. */
export interface SourceShares {
  readonly sources: Int32Array;
  /** Each above 0, at most 1, in the order of `sources`. */
  readonly shares: Float64Array;
  /** Founders with claims of their own, and the part that comes from each: of its source's part, where it has a source. */
  readonly apart: Int32Array;
  readonly apartShares: Float64Array;
}

/**
 * The sources among all origins of a set, so that what an answer cuts off still counts by its standing.
 *
 * @param apart parts that come from founders with claims of their own
 */
export function sourceSharesOf(origins: readonly FounderShare[], apart: ReadonlyMap<number, number>): SourceShares {
  const found = origins.flatMap((origin) => (origin.kind === 'source' ? [origin] : []));
  return {
    sources: Int32Array.from(found, ({ source }) => source),
    shares: Float64Array.from(found, ({ share }) => share),
    apart: Int32Array.from(apart.keys()),
    apartShares: Float64Array.from(apart.values()),
  };
}

/** How founders stand for a set: under the label of its line where all of it belongs to one, else by their own best. */
export function standingsForSet(graph: RegisterGraph, members: Int32Array): FounderStandings {
  const line = graph.lineOf[members[0] ?? -1] ?? -1;
  const isOfOne = members.every((member) => graph.lineOf[member] === line);
  return new FounderStandings(graph, isOfOne ? labelOfLine(graph, line) : null);
}

/**
 * How much of a gene pool stands how well, best first: founders of a source as it stands, those with claims of their own as they do,
 * founders of unknown origin and unknown parents as unknown. The shares sum to 1; empty for an empty set.
 *
 * @param animals how many animals the set has
 */
export function setStandings(
  { graph }: LineageSnapshot,
  founders: FounderStandings,
  { sources, shares, apart, apartShares }: SourceShares,
  animals: number,
): StandingShare[] {
  if (animals === 0) return [];
  const bySource = new Map(Array.from(sources, (source, place) => [source, shares[place] ?? 0]));
  const parts: StandingShare[] = [];
  apart.forEach((founder, place) => {
    const share = apartShares[place] ?? 0;
    const source = graph.pedigree.sourceOf[founder] ?? -1;
    if (source >= 0) bySource.set(source, Math.max(0, (bySource.get(source) ?? 0) - share));
    parts.push({ standing: founders.ofFounder(founder), share });
  });
  // what rounding leaves comes from nobody
  for (const [source, share] of bySource)
    if (share > ROUNDING) parts.push({ standing: founders.ofSource(source), share });
  const rest = 1 - parts.reduce((sum, { share }) => sum + share, 0);
  return sharesByStanding(rest > ROUNDING ? [...parts, { standing: 'unknown', share: rest }] : parts);
}

const ROUNDING = 1e-12;
