import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { ancestorChart, CHART_NODES_MOST, type AncestorChart } from './ancestor-chart.ts';
import { calendarDay } from './calendar-day.ts';
import { ChartStandings } from './chart-standings.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type {
  ClutchNodeView,
  IndividualNodeView,
  PedigreeEdgeView,
  PedigreeView,
  SourceNodeView,
} from './pedigree.view.ts';
import { resolveAnimal } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { parentsOf, statusOf } from './register-graph.ts';
import { Snapshots } from './snapshots.service.ts';

/** Most joint pairs that a clutch of a chart lists. */
const PAIRS_MOST = 50;

/** Draws up the ancestors of one animal as nodes and edges. */
@Injectable()
export class PedigreeChartService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * The ancestors of an animal over 1 to 12 generations, withdrawn ones too.
   *
   * @throws NotFoundProblem if there is no such animal
   */
  async get(id: string, generations: number): Promise<PedigreeView> {
    const snapshot = await this.snapshots.current();
    const root = await resolveAnimal(this.dataSource.manager, snapshot, id);
    const chart = ancestorChart(snapshot.graph, root, generations);
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wantedBy(chart));
    const idOf = (node: string): string => {
      const { kind, number } = chart.graph.getNodeAttributes(node);
      return names.idOf(kind, number).id;
    };
    const standings = new ChartStandings(snapshot, root);
    const view = {
      individual: (number: number) => individualNode(snapshot, chart, standings, number, names),
      clutch: (number: number) => clutchNode(snapshot, number, names),
      source: (number: number) => sourceNode(snapshot, standings, number, names),
    };
    return {
      root: snapshot.idOf(root),
      nodes: chart.graph
        .mapNodes((_, { kind, number }) => view[kind](number))
        .sort((one, other) => inOrder(one.id, other.id)),
      edges: chart.graph
        .mapEdges((_, { kind, role, probability }, from, to): PedigreeEdgeView => ({
          from: idOf(from),
          to: idOf(to),
          kind,
          ...(role ? { role } : {}),
          ...(probability === undefined ? {} : { probability }),
        }))
        .sort((one, other) => inOrder(one.from, other.from) || inOrder(one.to, other.to)),
      truncated: chart.truncated,
      nodeLimit: CHART_NODES_MOST,
    };
  }
}

function wantedBy({ graph }: AncestorChart): WantedNames {
  const wanted = new WantedNames();
  const kinds = { individual: wanted.individuals, clutch: wanted.clutches, source: wanted.sources };
  graph.forEachNode((_, { kind, number }) => kinds[kind].add(number));
  return wanted;
}

function individualNode(
  snapshot: LineageSnapshot,
  chart: AncestorChart,
  standings: ChartStandings,
  number: number,
  names: RecordNames,
): IndividualNodeView {
  const { graph } = snapshot;
  const clutch = graph.pedigree.clutchOf[number] ?? -1;
  const place = {
    kind: 'individual' as const,
    unknownOrigin: clutch < 0 && (graph.pedigree.sourceOf[number] ?? -1) < 0,
    hasMoreAncestors: clutch >= 0 && !chart.graph.hasNode(snapshot.clutchIdOf(clutch)),
  };
  const ref = names.refOf(number);
  if (ref.isPrivate) return { ...place, ...ref, ...nothingShown };
  const name = names.individual(number);
  return {
    ...place,
    ...ref,
    status: statusOf(graph, number),
    hatched: name?.hatched ?? null,
    earliest: calendarDay(name?.hatched_earliest),
    latest: calendarDay(name?.hatched_latest),
    line: graph.lines[graph.lineOf[number] ?? -1]?.name ?? null,
    species: name?.species ?? null,
    withdrawn: graph.withdrawn[number] === 1,
    standings: standings.of(number),
    inbreeding: snapshot.isNothingKnown(number) ? null : snapshot.inbreedingOf(number).expected,
  };
}

/** What a node of a private animal says beside its place in the graph. */
const nothingShown = {
  status: 'unknown' as const,
  hatched: null,
  earliest: null,
  latest: null,
  line: null,
  species: null,
  withdrawn: false,
  standings: [],
  inbreeding: null,
};

function clutchNode({ graph }: LineageSnapshot, number: number, names: RecordNames): ClutchNodeView {
  const name = names.clutch(number);
  const parents = parentsOf(graph, number);
  const idOf = (individual: number): string => names.idOf('individual', individual).id;
  const unknownOn = (side: 'sires' | 'dams'): number =>
    parents.mode === 'pairs' ? 0 : (parents[side].find(({ individual }) => individual < 0)?.probability ?? 0);
  const likeliest =
    parents.mode === 'lists'
      ? null
      : [...parents.pairs].sort((one, other) => other.probability - one.probability).slice(0, PAIRS_MOST);
  return {
    kind: 'clutch',
    ...names.idOf('clutch', number),
    title: names.clutchTitle(number),
    laid: name?.laid ?? null,
    earliest: calendarDay(name?.laid_earliest),
    latest: calendarDay(name?.laid_latest),
    pairs: likeliest?.map(({ a, b, probability }) => ({ a: idOf(a), b: idOf(b), probability })) ?? null,
    unknownSire: unknownOn('sires'),
    unknownDam: unknownOn('dams'),
  };
}

function sourceNode(
  { graph }: LineageSnapshot,
  standings: ChartStandings,
  number: number,
  names: RecordNames,
): SourceNodeView {
  const name = names.source(number);
  const ref = names.idOf('source', number);
  const source = ref.isPrivate ? undefined : graph.sources[number];
  return {
    kind: 'source',
    ...ref,
    title: names.sourceTitle(number),
    sourceKind: source?.kind ?? 'unknown',
    label: source?.labelAsReceived ?? null,
    date: name?.date ?? null,
    earliest: calendarDay(name?.date_earliest),
    latest: calendarDay(name?.date_latest),
    standing: source ? standings.ofSource(number) : 'unknown',
    baseKinship: source?.baseKinship ?? 0,
  };
}

function inOrder(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
