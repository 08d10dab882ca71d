import { standings, type Standing } from '../../../shared/vocabulary.ts';
import { calendarDay } from '../calendar-day.ts';
import { FounderStandings, labelOfLine } from '../founder-standings.ts';
import { collectAncestry } from '../kernel/ancestry.ts';
import { classShares } from '../kernel/class-shares.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import type { RecordNames } from '../record-names.ts';
import { parentsOf, statusOf } from '../register-graph.ts';
import type { AnimalsOverTime } from './animals-over-time.ts';
import type {
  AnimalColumnsView,
  ClutchColumnsView,
  LineOverTimeView,
  OverTimeSourceView,
  ParentColumnsView,
} from './line-over-time.view.ts';
import type { KeptBy } from './over-time-keepers.queries.ts';

/** A line over time as an answer shows it: what may not be seen keeps its place alone. */
export function lineOverTimeView(
  snapshot: LineageSnapshot,
  line: number,
  drawn: AnimalsOverTime,
  names: RecordNames,
  kept: KeptBy,
): LineOverTimeView {
  const founders = new FounderStandings(snapshot.graph, labelOfLine(snapshot.graph, line));
  const columns = new Columns(snapshot, line, drawn, names, founders);
  return {
    members: drawn.members,
    animals: columns.animals(kept),
    clutches: columns.clutches(),
    parents: parentColumns(drawn),
    sources: columns.sources(),
    keepers: [...kept.keepers],
    lines: columns.lines(),
    current: drawn.animals.every((animal) => snapshot.isCurrent(animal)),
    asOf: snapshot.asOf,
  };
}

class Columns {
  readonly #snapshot: LineageSnapshot;
  readonly #line: number;
  readonly #drawn: AnimalsOverTime;
  readonly #names: RecordNames;
  readonly #founders: FounderStandings;
  /** One of the young of each clutch: all share the same parents. */
  readonly #youngOf: ReadonlyMap<number, number>;
  /** Dense numbers of sources and other lines, to their places in the answer. */
  readonly #sources = new Map<number, number>();
  readonly #lines = new Map<number, number>();

  constructor(
    snapshot: LineageSnapshot,
    line: number,
    drawn: AnimalsOverTime,
    names: RecordNames,
    founders: FounderStandings,
  ) {
    this.#snapshot = snapshot;
    this.#line = line;
    this.#drawn = drawn;
    this.#names = names;
    this.#founders = founders;
    const { clutchOf } = snapshot.graph.pedigree;
    this.#youngOf = new Map(drawn.animals.map((animal) => [clutchOf[animal] ?? -1, animal]));
  }

  animals({ keepers, keeperOf }: KeptBy): AnimalColumnsView {
    const keeperPlaces = new Map(keepers.map(({ id }, place) => [id, place]));
    const columns: AnimalColumnsView = {
      ...{ id: [], number: [], code: [], sex: [], status: [], clutch: [], source: [], keeper: [], line: [] },
      ...{ hatched: [], earliest: [], latest: [], inbreeding: [], standing: [] },
    };
    for (const animal of this.#drawn.animals) {
      const ref = this.#names.refOf(animal);
      const name = this.#names.individual(animal);
      columns.id.push(ref.id);
      columns.number.push(ref.number);
      columns.code.push(ref.code);
      columns.sex.push(ref.sex);
      columns.status.push(ref.isPrivate ? 'unknown' : statusOf(this.#snapshot.graph, animal));
      columns.clutch.push(this.#drawn.clutchPlaceOf(animal));
      columns.source.push(this.#sourceOf(animal));
      columns.keeper.push(keeperPlaces.get(keeperOf.get(ref.id) ?? '') ?? -1);
      columns.line.push(ref.isPrivate ? -1 : this.#otherLineOf(animal));
      columns.hatched.push(name?.hatched ?? null);
      columns.earliest.push(calendarDay(name?.hatched_earliest));
      columns.latest.push(calendarDay(name?.hatched_latest));
      columns.inbreeding.push(ref.isPrivate ? null : this.#inbreedingOf(animal));
      columns.standing.push(ref.isPrivate ? null : this.#standingOf(animal));
    }
    return columns;
  }

  clutches(): ClutchColumnsView {
    const sharesOf = this.#shares();
    const columns: ClutchColumnsView = {
      ...{ id: [], code: [], laid: [], earliest: [], latest: [], inbreedingLeast: [], inbreedingGreatest: [] },
      ...{ unknownSire: [], unknownDam: [] },
      standings: { documented: [], corroborated: [], stated: [], 'by-looks': [], disputed: [], unknown: [] },
    };
    for (const clutch of this.#drawn.clutches) {
      const { id, isPrivate } = this.#names.idOf('clutch', clutch);
      const name = this.#names.clutch(clutch);
      columns.id.push(id);
      columns.code.push(name?.code ?? null);
      columns.laid.push(name?.laid ?? null);
      columns.earliest.push(calendarDay(name?.laid_earliest));
      columns.latest.push(calendarDay(name?.laid_latest));
      const young = this.#youngOf.get(clutch) ?? -1;
      const inbreeding = isPrivate || this.#snapshot.isNothingKnown(young) ? null : this.#snapshot.inbreedingOf(young);
      columns.inbreedingLeast.push(inbreeding && rounded(inbreeding.least));
      columns.inbreedingGreatest.push(inbreeding && rounded(inbreeding.greatest));
      columns.unknownSire.push(rounded(this.#unknownOn(clutch, 'sires')));
      columns.unknownDam.push(rounded(this.#unknownOn(clutch, 'dams')));
      const shares = isPrivate ? null : sharesOf(young);
      standings.forEach((standing, at) => columns.standings[standing].push(rounded(shares?.[at] ?? 0)));
    }
    return columns;
  }

  sources(): OverTimeSourceView[] {
    return [...this.#sources.keys()].map((source) => {
      const { id, isPrivate } = this.#names.idOf('source', source);
      const name = this.#names.source(source);
      return {
        id,
        title: this.#names.sourceTitle(source),
        date: name?.date ?? null,
        earliest: calendarDay(name?.date_earliest),
        latest: calendarDay(name?.date_latest),
        standing: isPrivate ? 'unknown' : this.#founders.ofSource(source),
      };
    });
  }

  lines(): string[] {
    return [...this.#lines.keys()].map((line) => this.#snapshot.graph.lines[line]?.name ?? '');
  }

  /** Gives the genome shares of an animal by standing, under the label of the line: one pass over the whole ancestry. */
  #shares(): (animal: number) => Float64Array {
    const { graph, inbreeding } = this.#snapshot;
    const { clutches } = collectAncestry(graph.pedigree, inbreeding.order, this.#drawn.animals);
    const classOf = new Map<number, number>();
    return classShares(graph.pedigree, clutches, standings.length, (founder) => {
      const known = classOf.get(founder) ?? standings.indexOf(this.#standingOfFounder(founder));
      classOf.set(founder, known);
      return known;
    });
  }

  #standingOfFounder(founder: number): Standing {
    return founder < 0 ? 'unknown' : this.#founders.ofFounder(founder);
  }

  #standingOf(animal: number): Standing | null {
    const { clutchOf } = this.#snapshot.graph.pedigree;
    return (clutchOf[animal] ?? -1) >= 0 ? null : this.#standingOfFounder(animal);
  }

  #inbreedingOf(animal: number): number | null {
    return this.#snapshot.isNothingKnown(animal) ? null : rounded(this.#snapshot.inbreedingOf(animal).expected);
  }

  #unknownOn(clutch: number, side: 'sires' | 'dams'): number {
    const parents = parentsOf(this.#snapshot.graph, clutch);
    if (parents.mode === 'pairs') return 0;
    return parents[side].find(({ individual }) => individual < 0)?.probability ?? 0;
  }

  #sourceOf(animal: number): number {
    const source = this.#snapshot.graph.pedigree.sourceOf[animal] ?? -1;
    return source < 0 ? -1 : placeIn(this.#sources, source);
  }

  #otherLineOf(animal: number): number {
    const line = this.#snapshot.graph.lineOf[animal] ?? -1;
    return line < 0 || line === this.#line ? -1 : placeIn(this.#lines, line);
  }
}

function parentColumns(drawn: AnimalsOverTime): ParentColumnsView {
  const columns: ParentColumnsView = { clutch: [], animal: [], role: [], probability: [] };
  drawn.links.forEach((links, clutch) => {
    for (const { parent, role, probability } of links) {
      columns.clutch.push(clutch);
      columns.animal.push(drawn.placeOf(parent));
      columns.role.push(role);
      columns.probability.push(rounded(probability));
    }
  });
  return columns;
}

/** Place of a number in a list of those met so far, which it is added to where it is new. */
function placeIn(met: Map<number, number>, number: number): number {
  const place = met.get(number) ?? met.size;
  met.set(number, place);
  return place;
}

/** To six decimals: nobody sees more in a drawing, and an answer is half as long. */
function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
