import { standings, type Standing } from '../../shared/vocabulary.ts';
import { sharesByStanding, type StandingShare } from '../provenance/standing.ts';
import { FounderStandings, labelOfLine } from './founder-standings.ts';
import { collectAncestry } from './kernel/ancestry.ts';
import { classShares } from './kernel/class-shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

type SharesOf = (individual: number) => Float64Array;

/** How well some animals and their ancestors stand, each under the label of its own line: one pass over all their ancestry for each line. */
export class ChartStandings {
  readonly #snapshot: LineageSnapshot;
  readonly #root: number;
  readonly #clutches: Int32Array;
  readonly #byLine = new Map<number, SharesOf>();

  /**
   * @param root the animal that the chart is of
   * @param others animals that are not among its ancestors
   */
  constructor(snapshot: LineageSnapshot, root: number, others: readonly number[] = []) {
    this.#snapshot = snapshot;
    this.#root = root;
    const { graph, inbreeding } = snapshot;
    this.#clutches =
      others.length === 0
        ? snapshot.flowTo(root).clutches
        : collectAncestry(graph.pedigree, inbreeding.order, [root, ...others]).clutches;
  }

  /** Expected genome shares of one of them by standing, best first; they sum to 1. */
  of(individual: number): StandingShare[] {
    const line = this.#snapshot.graph.lineOf[individual] ?? -1;
    const sharesOf = this.#byLine.get(line) ?? this.#underLine(line);
    this.#byLine.set(line, sharesOf);
    const shares = sharesOf(individual);
    return sharesByStanding(standings.map((standing, place) => ({ standing, share: shares[place] ?? 0 })));
  }

  /** How well a source stands under the label of the animal whose ancestors are drawn. */
  ofSource(source: number): Standing {
    const { graph } = this.#snapshot;
    return new FounderStandings(graph, labelOfLine(graph, graph.lineOf[this.#root] ?? -1)).ofSource(source);
  }

  #underLine(line: number): SharesOf {
    const { graph } = this.#snapshot;
    const founders = new FounderStandings(graph, labelOfLine(graph, line));
    return classShares(graph.pedigree, this.#clutches, standings.length, (founder) =>
      standings.indexOf(founder < 0 ? 'unknown' : founders.ofFounder(founder)),
    );
  }
}
