import { standings, type Standing } from '../../shared/vocabulary.ts';
import { sharesByStanding, type StandingShare } from '../provenance/standing.ts';
import { FounderStandings, labelOfLine } from './founder-standings.ts';
import { classShares } from './kernel/class-shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

type SharesOf = (individual: number) => Float64Array;

/** How well an animal and its ancestors stand, each under the label of its own line: one pass over the ancestry for each line. */
export class ChartStandings {
  readonly #snapshot: LineageSnapshot;
  readonly #root: number;
  readonly #clutches: Int32Array;
  readonly #byLine = new Map<number, SharesOf>();

  constructor(snapshot: LineageSnapshot, root: number) {
    this.#snapshot = snapshot;
    this.#root = root;
    this.#clutches = snapshot.flowTo(root).clutches;
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
