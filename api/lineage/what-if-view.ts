import { sharesByStanding } from '../provenance/standing.ts';
import type { AnimalFigures, WhatIf } from './kernel/what-if.ts';
import type { FounderShare } from './kernel/shares.ts';
import { joinedByStanding, type FounderStandings } from './founder-standings.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { originView, wantOrigins } from './origin-views.ts';
import { WantedNames, type RecordNames } from './record-names.ts';
import { parentsOf } from './register-graph.ts';
import type {
  AssumableClutchView,
  AssumableSourceView,
  WhatIfDifferenceView,
  WhatIfFiguresView,
  WhatIfShareView,
  WhatIfView,
} from './what-if.view.ts';

/** Over how many generations completeness is told, as for the animal itself. */
export const COMPLETENESS_GENERATIONS = 5;
const SHARES_MOST = 50;
const CLUTCHES_MOST = 20;
/** Differences below it are roundings. */
const NO_DIFFERENCE = 1e-12;

/** What an answer will name: chosen before names are read. */
export interface WhatIfChoice {
  readonly shares: readonly ShareChange[];
  readonly sources: readonly number[];
  /** Uncertain clutches, the youngest first. */
  readonly clutches: readonly number[];
  readonly otherClutches: number;
}

interface ShareChange {
  readonly origin: FounderShare;
  readonly recorded: number;
  readonly assumed: number;
}

/** Chooses what an answer shows, of figures as recorded and as assumed. */
export function chooseShown(
  { recorded, assumed }: WhatIf,
  founders: FounderStandings,
  uncertainClutches: readonly number[],
): WhatIfChoice {
  const bySize = [...recorded.shares].sort((one, other) => other.share - one.share);
  return {
    shares: shareChanges(recorded.shares, assumed.shares, founders).slice(0, SHARES_MOST),
    sources: [...new Set(bySize.flatMap((origin) => (origin.kind === 'source' ? [origin.source] : [])))].slice(
      0,
      SHARES_MOST,
    ),
    clutches: uncertainClutches.slice(0, CLUTCHES_MOST),
    otherClutches: Math.max(0, uncertainClutches.length - CLUTCHES_MOST),
  };
}

function shareChanges(
  recorded: readonly FounderShare[],
  assumed: readonly FounderShare[],
  founders: FounderStandings,
): ShareChange[] {
  const changes = new Map<string, ShareChange>();
  const keyOf = (origin: FounderShare): string => {
    if (origin.kind === 'source') return `source ${origin.source} ${founders.of(origin)}`;
    return origin.kind === 'individual' ? `individual ${origin.individual}` : `clutch ${origin.clutch}`;
  };
  for (const origin of joinedByStanding(recorded, founders))
    changes.set(keyOf(origin), { origin, recorded: origin.share, assumed: 0 });
  for (const origin of joinedByStanding(assumed, founders)) {
    const known = changes.get(keyOf(origin)) ?? { origin, recorded: 0 };
    changes.set(keyOf(origin), { ...known, assumed: origin.share });
  }
  return [...changes.values()].sort(
    (one, other) => Math.max(other.recorded, other.assumed) - Math.max(one.recorded, one.assumed),
  );
}

/** The names that an answer needs. */
export function wantedBy({ graph }: LineageSnapshot, { shares, sources, clutches }: WhatIfChoice): WantedNames {
  const wanted = new WantedNames();
  wantOrigins(
    wanted,
    shares.map(({ origin }) => origin),
  );
  for (const source of sources) wanted.sources.add(source);
  for (const clutch of clutches) {
    wanted.clutches.add(clutch);
    const parents = parentsOf(graph, clutch);
    const animals =
      parents.mode === 'pairs'
        ? parents.pairs.flatMap(({ a, b }) => [a, b])
        : [...parents.sires, ...parents.dams].map(({ individual }) => individual);
    for (const animal of animals) if (animal >= 0) wanted.individuals.add(animal);
  }
  return wanted;
}

/** The answer. */
export function whatIfView(
  snapshot: LineageSnapshot,
  founders: FounderStandings,
  { recorded, assumed }: WhatIf,
  choice: WhatIfChoice,
  names: RecordNames,
): WhatIfView {
  return {
    recorded: figuresView(founders, recorded),
    assumed: figuresView(founders, assumed),
    difference: differenceView(recorded, assumed),
    shares: choice.shares.map(({ origin, ...shares }): WhatIfShareView => ({
      ...originView(snapshot, founders, origin, names),
      ...shares,
      difference: difference(shares.recorded, shares.assumed),
    })),
    sources: choice.sources.map((source) => sourceView(snapshot, source, names)),
    clutches: choice.clutches.map((clutch) => clutchView(snapshot, clutch, names)),
    otherClutches: choice.otherClutches,
    asOf: snapshot.asOf,
  };
}

function figuresView(founders: FounderStandings, figures: AnimalFigures): WhatIfFiguresView {
  const { inbreeding, nothingKnown, bothParentsKnown, completeness, shares, ...others } = figures;
  return {
    ...others,
    inbreeding: { ...inbreeding, nothingKnown, bothParentsKnown },
    completeness: { generations: COMPLETENESS_GENERATIONS, index: completeness },
    standings: sharesByStanding(shares.map((origin) => ({ standing: founders.of(origin), share: origin.share }))),
  };
}

function differenceView(recorded: AnimalFigures, assumed: AnimalFigures): WhatIfDifferenceView {
  const of = (name: 'ancestralInbreeding' | 'depth' | 'fullDepth' | 'generationEquivalents' | 'completeness'): number =>
    difference(recorded[name], assumed[name]);
  return {
    inbreeding: difference(recorded.inbreeding.expected, assumed.inbreeding.expected),
    inbreedingLeast: difference(recorded.inbreeding.least, assumed.inbreeding.least),
    inbreedingGreatest: difference(recorded.inbreeding.greatest, assumed.inbreeding.greatest),
    ancestralInbreeding: of('ancestralInbreeding'),
    meanKinship:
      recorded.meanKinship === null || assumed.meanKinship === null
        ? null
        : difference(recorded.meanKinship, assumed.meanKinship),
    depth: of('depth'),
    fullDepth: of('fullDepth'),
    generationEquivalents: of('generationEquivalents'),
    completeness: of('completeness'),
  };
}

function difference(recorded: number, assumed: number): number {
  return Math.abs(assumed - recorded) < NO_DIFFERENCE ? 0 : assumed - recorded;
}

function sourceView({ graph }: LineageSnapshot, source: number, names: RecordNames): AssumableSourceView {
  const { id, isPrivate } = names.idOf('source', source);
  const baseKinship = isPrivate ? null : (graph.sources[source]?.baseKinship ?? null);
  return { id, isPrivate, title: names.sourceTitle(source), baseKinship };
}

function clutchView({ graph }: LineageSnapshot, clutch: number, names: RecordNames): AssumableClutchView {
  const parents = parentsOf(graph, clutch);
  const named = { ...names.idOf('clutch', clutch), title: names.clutchTitle(clutch) };
  if (parents.mode === 'pairs') {
    const pairs = parents.pairs.map(({ a, b, probability }) => ({ a: names.ref(a), b: names.ref(b), probability }));
    return { ...named, sires: null, dams: null, pairs };
  }
  const side = (name: 'sires' | 'dams') =>
    parents[name].map(({ individual, probability }) => ({ animal: names.ref(individual), probability }));
  return { ...named, sires: side('sires'), dams: side('dams'), pairs: null };
}
