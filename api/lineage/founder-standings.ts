import type { Standing } from '../../shared/vocabulary.ts';
import type { ClaimFacts } from '../provenance/claim-facts.ts';
import {
  claimReceived,
  isTraceable,
  labelCarried,
  saidOfSource,
  standingUnder,
  tracesLabel,
  type Label,
  type LabelClaim,
} from '../provenance/standing.ts';
import type { FounderShare } from './kernel/shares.ts';
import type { ClaimsOfRecords } from './register-claims.ts';
import type { RegisterGraph, SourceNode } from './register-graph.ts';

/** The label that a line gives; null without a line. */
export function labelOfLine({ lines }: RegisterGraph, line: number): Label | null {
  const node = line < 0 ? undefined : lines[line];
  return node ? { name: node.name, kind: node.labelKind } : null;
}

/**
 * How well founders stand under one label, by their own claims and those of their sources. What it finds out of a source it keeps, so that
 * many founders of few sources cost little.
 */
export class FounderStandings {
  readonly label: Label | null;
  readonly #graph: RegisterGraph;
  readonly #bySource = new Map<number, { standing: Standing; traces: boolean }>();

  constructor(graph: RegisterGraph, label: Label | null) {
    this.#graph = graph;
    this.label = label;
  }

  /** Founders that may stand otherwise than the others of their source: those with claims of their own. */
  get apart(): ReadonlyMap<number, readonly ClaimFacts[]> {
    return this.#graph.claims.individual;
  }

  /** How well an origin stands; parents that nobody knows are unknown. */
  of(origin: FounderShare): Standing {
    if (origin.kind === 'unknown parent') return 'unknown';
    const founder = origin.kind === 'individual' ? origin.individual : origin.founder;
    return founder === undefined ? this.#ofSource(this.#sourceOf(origin)).standing : this.ofFounder(founder);
  }

  /** How well a founder stands. */
  ofFounder(founder: number): Standing {
    if (!this.apart.has(founder)) return this.#ofSource(this.#graph.pedigree.sourceOf[founder] ?? -1).standing;
    return standingUnder(this.label, this.saidOfFounder(founder));
  }

  /** How well a source stands by its own claims. */
  ofSource(source: number): Standing {
    return this.#ofSource(source).standing;
  }

  /** Whether an origin is traced to papers that name the label. */
  traces(origin: FounderShare): boolean {
    if (origin.kind === 'unknown parent') return false;
    const founder = origin.kind === 'individual' ? origin.individual : origin.founder;
    return founder === undefined ? this.#ofSource(this.#sourceOf(origin)).traces : this.tracesFounder(founder);
  }

  /** Whether a founder is traced to papers that name the label. */
  tracesFounder(founder: number): boolean {
    if (!this.apart.has(founder)) return this.#ofSource(this.#graph.pedigree.sourceOf[founder] ?? -1).traces;
    return tracesLabel(this.label?.name ?? null, this.saidOfFounder(founder));
  }

  /** The label that an origin counts under beside others, and whether it is a claim about the founder itself; null without any. */
  carriedBy(origin: FounderShare): { claim: LabelClaim; isOwn: boolean } | null {
    if (origin.kind === 'unknown parent') return null;
    const founder = origin.kind === 'individual' ? origin.individual : origin.founder;
    const said = founder === undefined ? this.saidOfSource(this.#sourceOf(origin)) : this.saidOfFounder(founder);
    const claim = labelCarried(this.label?.name ?? null, said);
    if (claim === null) return null;
    const own = founder === undefined ? [] : (this.apart.get(founder) ?? []);
    return { claim, isOwn: own.some((one) => one === claim) };
  }

  /** All that is said of a founder: its own claims, then what is said of its source. */
  saidOfFounder(founder: number): readonly LabelClaim[] {
    const own = this.apart.get(founder) ?? [];
    return [...own, ...this.saidOfSource(this.#graph.pedigree.sourceOf[founder] ?? -1)];
  }

  saidOfSource(source: number): readonly LabelClaim[] {
    return saidOf(this.#graph, source);
  }

  #sourceOf(origin: FounderShare): number {
    return origin.kind === 'source' ? origin.source : -1;
  }

  #ofSource(source: number): { standing: Standing; traces: boolean } {
    const known = this.#bySource.get(source);
    if (known) return known;
    const said = this.saidOfSource(source);
    const found = {
      standing: standingUnder(this.label, said),
      traces: tracesLabel(this.label?.name ?? null, said),
    };
    this.#bySource.set(source, found);
    return found;
  }
}

/** What a source came under is folded once for as long as its node stays. */
const received = new WeakMap<SourceNode, LabelClaim | null>();

function saidOf({ sources, claims }: RegisterGraph, source: number): readonly LabelClaim[] {
  const node = source < 0 ? undefined : sources[source];
  if (!node) return [];
  let word = received.get(node);
  if (word === undefined) {
    word = claimReceived(node.labelAsReceived);
    received.set(node, word);
  }
  return saidOfSource(word, claims.source.get(source) ?? []);
}

/** Folded labels that some claim of each state traces, so that lines of other labels cost nothing. */
const traceable = new WeakMap<ClaimsOfRecords, ReadonlySet<string>>();

/** The labels, folded, that claims of founders or sources name with `corroborated` or better. */
export function traceableLabels({ claims }: RegisterGraph): ReadonlySet<string> {
  const known = traceable.get(claims);
  if (known) return known;
  const labels = new Set<string>();
  for (const held of [claims.source, claims.individual])
    for (const list of held.values())
      for (const { folded, standing } of list) if (folded !== null && isTraceable(standing)) labels.add(folded);
  traceable.set(claims, labels);
  return labels;
}

/**
 * Founders of one source that stand alike are told together: those that stand otherwise than their source by its own claims under one of
 * them. The order stays that of the first of each.
 */
export function joinedByStanding(origins: readonly FounderShare[], standings: FounderStandings): FounderShare[] {
  if (!origins.some((origin) => origin.kind === 'source' && origin.founder !== undefined)) return [...origins];
  const joined = new Map<string, FounderShare>();
  origins.forEach((origin, place) => {
    const key = origin.kind === 'source' ? `${origin.source} ${standings.of(origin)}` : `at ${place}`;
    const known = joined.get(key);
    // what all others of the source are told by tells this one too
    const alike = origin.kind === 'source' && standings.of(origin) === standings.ofSource(origin.source);
    const kept = alike ? { kind: 'source' as const, source: origin.source, share: origin.share } : origin;
    joined.set(key, known ? { ...known, share: known.share + origin.share } : kept);
  });
  return [...joined.values()];
}
