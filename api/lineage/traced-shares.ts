import { foldedLabel } from '../provenance/standing.ts';
import { FounderStandings, labelOfLine, traceableLabels } from './founder-standings.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

/** What is known of the animals of one line. */
interface LineTracing {
  readonly founders: FounderStandings;
  /** Expected traced share under the line's label by clutch, filled as it is asked for. */
  readonly shares: Map<number, number>;
}

/**
 * Tells how much of an animal is expected to come from founders whose papers name its label, 0 to 1, for many animals of one state:
 * each clutch is computed once for each label that its descendants carry, and lines whose label no paper traces cost nothing.
 */
export class TracedShares {
  readonly #snapshot: LineageSnapshot;
  readonly #lines = new Map<number, LineTracing | null>();

  constructor(snapshot: LineageSnapshot) {
    this.#snapshot = snapshot;
  }

  of(individual: number): number {
    const { pedigree, lineOf } = this.#snapshot.graph;
    const tracing = this.#tracingOf(lineOf[individual] ?? -1);
    if (tracing === null) return 0;
    const clutch = pedigree.clutchOf[individual] ?? -1;
    if (clutch < 0) return tracing.founders.tracesFounder(individual) ? 1 : 0;
    return this.#ofClutch(tracing, clutch);
  }

  #tracingOf(line: number): LineTracing | null {
    const known = this.#lines.get(line);
    if (known !== undefined) return known;
    const { graph } = this.#snapshot;
    const label = labelOfLine(graph, line);
    const folded = foldedLabel(label?.name ?? null);
    const tracing =
      folded !== null && traceableLabels(graph).has(folded)
        ? { founders: new FounderStandings(graph, label), shares: new Map<number, number>() }
        : null;
    this.#lines.set(line, tracing);
    return tracing;
  }

  /** Climbs to what is not known yet, and comes down adding it up. */
  #ofClutch(tracing: LineTracing, asked: number): number {
    const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = this.#snapshot.graph.pedigree;
    const { shares, founders } = tracing;
    const waiting = [asked];
    for (let clutch = waiting.at(-1); clutch !== undefined; clutch = waiting.at(-1)) {
      let sum = 0;
      const before = waiting.length;
      const add = (parent: number, half: number): void => {
        if (parent < 0) return;
        const from = clutchOf[parent] ?? -1;
        const share = from < 0 ? (founders.tracesFounder(parent) ? 1 : 0) : shares.get(from);
        if (share === undefined) waiting.push(from);
        else sum += half * share;
      };
      for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
        const half = 0.5 * (pairProbability[pair] ?? 0);
        add(pairSire[pair] ?? -1, half);
        add(pairDam[pair] ?? -1, half);
      }
      if (waiting.length > before) continue;
      shares.set(clutch, Math.min(1, sum));
      waiting.pop();
    }
    return shares.get(asked) ?? 0;
  }
}
