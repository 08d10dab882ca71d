import { foldedLabel, tracesLabel } from '../provenance/standing.ts';
import { originShares } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { SourceNode } from './register-graph.ts';

const byLabel = new WeakMap<readonly SourceNode[], ReadonlyMap<string, readonly number[]>>();

/** Sources by the label that they came with, as it is compared; a list of sources is never changed, so each is gone through once. */
function sourcesByLabel(sources: readonly SourceNode[]): ReadonlyMap<string, readonly number[]> {
  const known = byLabel.get(sources);
  if (known) return known;
  const found = new Map<string, number[]>();
  sources.forEach(({ labelAsReceived }, number) => {
    const label = foldedLabel(labelAsReceived) ?? '';
    const same = found.get(label) ?? [];
    same.push(number);
    found.set(label, same);
  });
  byLabel.set(sources, found);
  return found;
}

/**
 * Tells how much of an animal is expected to come from founders whose papers name its label, 0 to 1, for many animals of one state:
 * clutch-mates of one line share the work, and lines whose label no source traces cost nothing.
 */
export class TracedShares {
  readonly #snapshot: LineageSnapshot;
  readonly #tracing = new Map<number, ReadonlySet<number>>();
  readonly #ofMates = new Map<string, number>();

  constructor(snapshot: LineageSnapshot) {
    this.#snapshot = snapshot;
  }

  of(individual: number): number {
    const { pedigree, lineOf } = this.#snapshot.graph;
    const line = lineOf[individual] ?? -1;
    const sources = line < 0 ? null : this.#sourcesTracing(line);
    if (sources === null || sources.size === 0) return 0;
    const clutch = pedigree.clutchOf[individual] ?? -1;
    if (clutch < 0) return sources.has(pedigree.sourceOf[individual] ?? -1) ? 1 : 0;
    const mates = `${clutch} ${line}`;
    const known = this.#ofMates.get(mates) ?? this.#share(individual, sources);
    this.#ofMates.set(mates, known);
    return known;
  }

  /** Sources whose label is a line's own and stands well enough. */
  #sourcesTracing(line: number): ReadonlySet<number> {
    const { sources, lines } = this.#snapshot.graph;
    const label = lines[line]?.name ?? null;
    const labelled = label === null ? [] : (sourcesByLabel(sources).get(foldedLabel(label) ?? '') ?? []);
    const known =
      this.#tracing.get(line) ??
      new Set(labelled.filter((number) => tracesLabel(sources[number] ?? { labelAsReceived: null }, label)));
    this.#tracing.set(line, known);
    return known;
  }

  #share(individual: number, sources: ReadonlySet<number>): number {
    const { pedigree } = this.#snapshot.graph;
    return originShares(pedigree, this.#snapshot.flowTo(individual)).reduce(
      (sum, origin) => (origin.kind === 'source' && sources.has(origin.source) ? sum + origin.share : sum),
      0,
    );
  }
}
