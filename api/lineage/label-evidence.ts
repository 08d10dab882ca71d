import { FLAG_RECORDS_MOST } from '../provenance/flags.ts';
import type { LabelFindings, NamedRecord, SharedRecord } from '../provenance/label-findings.ts';
import { foldedLabel, sharesByStanding, type Label, type StandingShare } from '../provenance/standing.ts';
import { FounderStandings, joinedByStanding, labelOfLine } from './founder-standings.ts';
import type { GenomeFlow, Pair } from './kernel/genome-flow.ts';
import { originShares, type FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { RecordNames } from './record-names.ts';

/** A record by its kind and dense number, with the share that comes through it. */
interface DenseRecord {
  readonly kind: 'individual' | 'clutch' | 'source';
  readonly number: number;
  readonly share: number;
}

/** A label that founders carry, with their share. */
interface LabelShare {
  readonly label: string;
  readonly share: number;
  readonly sources: readonly DenseRecord[];
}

/** All that the lineage says about a label, still by dense numbers: names are asked for last, and only those shown. */
export interface LabelEvidence {
  readonly label: Label | null;
  /** How well founders stand under that label. */
  readonly founders: FounderStandings;
  /** The largest first, those of one source that stand alike together; they sum to 1. */
  readonly origins: readonly FounderShare[];
  readonly standings: readonly StandingShare[];
  readonly tracedShare: { readonly expected: number; readonly least: number };
  readonly founderLabels: readonly LabelShare[];
  /** Those of `founderLabels` that differ from the animal's own label. */
  readonly otherLabels: readonly LabelShare[];
  readonly untraced: readonly DenseRecord[];
  readonly gaps: readonly DenseRecord[];
  readonly outsiders: readonly DenseRecord[];
  readonly crossedLines: readonly string[];
  readonly uncertainClutches: readonly number[];
  readonly isProposalUncertain: boolean;
}

/** What the lineage of a recorded animal says about its label. */
export function labelEvidenceOf(snapshot: LineageSnapshot, individual: number): LabelEvidence {
  return gatherEvidence(snapshot, snapshot.flowTo(individual), snapshot.graph.lineOf[individual] ?? -1);
}

/**
 * What the lineage of proposed parents says about the label of their young. The young belong to a line where all parents
 * belong to that one; parents of several lines make a cross, and each of them comes from outside.
 */
export function labelEvidenceOfYoung(snapshot: LineageSnapshot, pairs: readonly Pair[]): LabelEvidence {
  const { lineOf, lines } = snapshot.graph;
  const parents = new Map<number, number>();
  for (const { a, b, probability } of pairs)
    for (const parent of [a, b]) parents.set(parent, (parents.get(parent) ?? 0) + probability / 2);
  const lineNumbers = [...new Set([...parents.keys()].map((parent) => lineOf[parent] ?? -1))];
  const only = lineNumbers.length === 1 ? (lineNumbers[0] ?? -1) : -1;
  const evidence = {
    ...gatherEvidence(snapshot, snapshot.flowToYoung(pairs), only),
    isProposalUncertain: pairs.length > 1,
  };
  const crossed = lineNumbers.filter((line) => line >= 0).sort((one, other) => one - other);
  if (crossed.length < 2) return evidence;
  const outsiders = [...parents].map(([number, share]): DenseRecord => ({ kind: 'individual', number, share }));
  const crossedLines = crossed.map((line) => lines[line]?.name ?? '');
  return { ...evidence, outsiders: largestFirst(outsiders), crossedLines };
}

function gatherEvidence(snapshot: LineageSnapshot, flow: GenomeFlow, line: number): LabelEvidence {
  const label = labelOfLine(snapshot.graph, line);
  const founders = new FounderStandings(snapshot.graph, label);
  const apart = originShares(snapshot.graph.pedigree, flow, founders.apart);
  const origins = joinedByStanding(apart, founders).sort((one, other) => other.share - one.share);
  const founderLabels = labelsOf(apart, founders);
  return {
    label,
    founders,
    origins,
    standings: sharesByStanding(origins.map((origin) => ({ standing: founders.of(origin), share: origin.share }))),
    ...tracedPart(flow, origins, founders),
    founderLabels,
    otherLabels: founderLabels.filter(({ label: other }) => foldedLabel(other) !== foldedLabel(label?.name ?? null)),
    gaps: origins.filter((origin) => origin.kind !== 'source' && founders.of(origin) === 'unknown').map(recordOf),
    outsiders: outsidersOf(snapshot, flow, line),
    crossedLines: [],
    uncertainClutches: flow.uncertainClutches(),
    isProposalUncertain: false,
  };
}

/** How much of the genome comes from founders whose papers name the label, and where the rest comes from. */
function tracedPart(
  flow: GenomeFlow,
  origins: readonly FounderShare[],
  founders: FounderStandings,
): Pick<LabelEvidence, 'tracedShare' | 'untraced'> {
  const traced = new Set(origins.filter((origin) => founders.traces(origin)));
  const expected = Math.min(
    1,
    [...traced].reduce((sum, { share }) => sum + share, 0),
  );
  const least = traced.size === 0 ? 0 : flow.leastShare((founder) => founders.tracesFounder(founder));
  const untraced = origins.filter((origin) => !traced.has(origin)).map(recordOf);
  return { tracedShare: { expected, least: Math.min(least, expected) }, untraced };
}

/** The labels that founders count under, those that differ only by case and spaces counted as one. */
function labelsOf(origins: readonly FounderShare[], founders: FounderStandings): LabelShare[] {
  const labels = new Map<string, { label: string; share: number; sources: DenseRecord[] }>();
  for (const origin of origins) {
    const carried = founders.carriedBy(origin);
    if (carried === null) continue;
    const { value, folded } = carried.claim;
    const entry = labels.get(folded ?? '') ?? { label: value, share: 0, sources: [] };
    entry.share += origin.share;
    entry.sources.push(carried.isOwn ? founderOf(origin) : recordOf(origin));
    labels.set(folded ?? '', entry);
  }
  return [...labels.values()].sort((one, other) => other.share - one.share);
}

/** The ancestors of another line that are nearest to the animal: through them its blood came in. */
function outsidersOf({ graph }: LineageSnapshot, flow: GenomeFlow, line: number): DenseRecord[] {
  if (line < 0) return [];
  const isOutside = (individual: number): boolean => {
    const other = graph.lineOf[individual] ?? -1;
    return other >= 0 && other !== line;
  };
  const { individuals } = flow.shares(isOutside);
  const outside = [...individuals].filter(([individual]) => isOutside(individual));
  return largestFirst(outside.map(([number, share]): DenseRecord => ({ kind: 'individual', number, share })));
}

function recordOf(origin: FounderShare): DenseRecord {
  switch (origin.kind) {
    case 'source':
      return { kind: 'source', number: origin.source, share: origin.share };
    case 'individual':
      return { kind: 'individual', number: origin.individual, share: origin.share };
    case 'unknown parent':
      return { kind: 'clutch', number: origin.clutch, share: origin.share };
  }
}

/** The founder itself, where it is told apart from its source. */
function founderOf(origin: FounderShare): DenseRecord {
  if (origin.kind !== 'source' || origin.founder === undefined) return recordOf(origin);
  return { kind: 'individual', number: origin.founder, share: origin.share };
}

function largestFirst(records: DenseRecord[]): DenseRecord[] {
  return records.sort((one, other) => other.share - one.share || one.number - other.number);
}

/** A label as an answer shows it; null for what came under the labels of private sources. */
interface ShownLabel extends Omit<LabelShare, 'label'> {
  readonly label: string | null;
}

/**
 * Labels as whoever asks may know them: the part of each that came from sources that they may see, and the rest together under no
 * label. The shares still sum to the same.
 */
export function shownLabels(labels: readonly LabelShare[], names: RecordNames): ShownLabel[] {
  const isPrivate = (source: DenseRecord): boolean => names.idOf('source', source.number).isPrivate;
  const shown = labels.flatMap(({ label, sources }): ShownLabel[] => {
    const seen = sources.filter((source) => !isPrivate(source));
    return seen.length === 0 ? [] : [{ label, share: sumOf(seen), sources: seen }];
  });
  const concealed = labels.flatMap(({ sources }) => sources.filter(isPrivate));
  if (concealed.length === 0) return shown;
  return [...shown, { label: null, share: sumOf(concealed), sources: concealed }];
}

const sumOf = (records: readonly DenseRecord[]): number => records.reduce((sum, { share }) => sum + share, 0);

/** A record beyond those that a flag names: it is only counted. */
const unnamed = { id: '', name: '', isPrivate: false };

/** The evidence as the flags are judged by it, with names. */
export function toFindings(snapshot: LineageSnapshot, evidence: LabelEvidence, names: RecordNames): LabelFindings {
  const { graph } = snapshot;
  const record = (kind: DenseRecord['kind'], number: number, place: number): NamedRecord =>
    place < FLAG_RECORDS_MOST ? names.record(kind, number) : { ...unnamed, kind };
  const named = ({ kind, number, share }: DenseRecord, place: number): SharedRecord => ({
    ...record(kind, number, place),
    share,
  });
  return {
    label: evidence.label,
    tracedShare: evidence.tracedShare,
    untraced: evidence.untraced.map(named),
    labelCount: evidence.founderLabels.length,
    founderLabels: shownLabels(evidence.founderLabels, names).map(({ label, share, sources }) => ({
      label,
      share,
      sources: sources.map(named),
    })),
    gaps: evidence.gaps.map((gap, place) => {
      const found = named(gap, place);
      return gap.kind === 'clutch' ? { ...found, name: `an unknown parent of the ${found.name}` } : found;
    }),
    outsiders: evidence.outsiders.map((record, place) => ({
      ...named(record, place),
      line: names.idOf('individual', record.number).isPrivate
        ? 'a line that is not told'
        : (graph.lines[graph.lineOf[record.number] ?? -1]?.name ?? 'no line'),
    })),
    crossedLines: evidence.crossedLines,
    uncertainClutches: evidence.uncertainClutches.map((number, place) => record('clutch', number, place)),
    isProposalUncertain: evidence.isProposalUncertain,
  };
}
