import { FLAG_RECORDS_MOST } from '../provenance/flags.ts';
import type { Claimant, LabelFindings, NamedRecord, SharedRecord } from '../provenance/label-findings.ts';
import type { ClaimFacts } from '../provenance/claim-facts.ts';
import { claimsNaming, foldedLabel, sharesByStanding, type Label, type StandingShare } from '../provenance/standing.ts';
import { FounderStandings, joinedByStanding, labelOfLine } from './founder-standings.ts';
import type { GenomeFlow, Pair } from './kernel/genome-flow.ts';
import { originShares, type FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { LabelFacts } from './label-facts.queries.ts';
import type { RecordNames } from './record-names.ts';
import type { RegisterGraph } from './register-graph.ts';
import { say } from '../platform/say.ts';

/** A record by its kind and dense number, with the share that comes through it. */
export interface DenseRecord {
  readonly kind: 'individual' | 'clutch' | 'source';
  readonly number: number;
  readonly share: number;
}

/** Where a label took the place of another. */
interface Relabelled extends DenseRecord {
  readonly from: string;
  /** The records that the old label is known by: whoever may see one of them may know it. */
  readonly knownBy: readonly Pick<DenseRecord, 'kind' | 'number'>[];
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
  /** Sources through which a share comes, founders and the animal itself with claims of their own. */
  readonly claimants: readonly DenseRecord[];
  readonly line: number;
  readonly relabelled: readonly Relabelled[];
}

/** What the lineage of a recorded animal says about its label. */
export function labelEvidenceOf(snapshot: LineageSnapshot, individual: number): LabelEvidence {
  const line = snapshot.graph.lineOf[individual] ?? -1;
  const evidence = gatherEvidence(snapshot, snapshot.flowTo(individual), line);
  const isBred = (snapshot.graph.pedigree.clutchOf[individual] ?? -1) >= 0;
  if (!isBred) return evidence;
  const own: DenseRecord = { kind: 'individual', number: individual, share: 1 };
  const from = labelOfParents(snapshot, individual, line);
  return {
    ...evidence,
    claimants: evidence.founders.apart.has(individual) ? [...evidence.claimants, own] : evidence.claimants,
    relabelled: from === null ? evidence.relabelled : [{ ...own, ...from }, ...evidence.relabelled],
  };
}

/**
 * The label that an animal hatched under, where it carries another one without a document: the common label of all parents known, if they
 * have one. Animals kept without a label, or as a cross, claim nothing.
 */
function labelOfParents(
  snapshot: LineageSnapshot,
  individual: number,
  line: number,
): Pick<Relabelled, 'from' | 'knownBy'> | null {
  const { graph } = snapshot;
  const label = labelOfLine(graph, line);
  const claims = graph.claims.individual.get(individual) ?? [];
  if (label === null || !claimsOrigin(label) || isDocumented(label.name, claims)) return null;
  const pairs = snapshot.pairsOf(individual);
  const parents = new Set(pairs.flatMap(({ a, b }) => [a, b]).filter((parent) => parent >= 0));
  const names = new Map<string | null, string>();
  for (const parent of parents) {
    const name = labelOfLine(graph, graph.lineOf[parent] ?? -1)?.name ?? null;
    names.set(foldedLabel(name), name ?? '');
  }
  const [only] = [...names];
  if (names.size !== 1 || !only || only[0] === null || only[0] === foldedLabel(label.name)) return null;
  const knownBy = [...parents].map((number) => ({ kind: 'individual' as const, number }));
  return { from: only[1], knownBy: knownBy.slice(0, FLAG_RECORDS_MOST) };
}

/** Whether a label says where its animals come from. */
export const claimsOrigin = ({ kind }: Label): boolean => kind === 'locality' || kind === 'trade-name';

/** Whether a document stands behind some claim that names the label. */
export const isDocumented = (label: string, claims: readonly ClaimFacts[]): boolean =>
  claimsNaming(label, claims).some(
    ({ standing, decidedBy }) => decidedBy.length > 0 && standing !== 'disputed' && standing !== 'by-looks',
  );

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
    ...insideAndOut(snapshot, flow, line),
    claimants: claimantsOf(apart),
    line,
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

/** Sources with a share, and founders with claims of their own. */
function claimantsOf(apart: readonly FounderShare[]): DenseRecord[] {
  const sources = new Map<number, DenseRecord>();
  const founders: DenseRecord[] = [];
  for (const origin of apart) {
    if (origin.kind === 'source') sources.set(origin.source, recordOf(origin));
    if (origin.kind === 'individual' || (origin.kind === 'source' && origin.founder !== undefined))
      founders.push(founderOf(origin));
  }
  return [...sources.values(), ...founders];
}

/**
 * The ancestors of another line that are nearest to the animal, through which its blood came in; and the sources of founders within the
 * line that came under another label, without a document that names this one.
 */
function insideAndOut(
  { graph }: LineageSnapshot,
  flow: GenomeFlow,
  line: number,
): Pick<LabelEvidence, 'outsiders' | 'relabelled'> {
  const label = labelOfLine(graph, line);
  if (label === null) return { outsiders: [], relabelled: [] };
  const isOutside = (individual: number): boolean => {
    const other = graph.lineOf[individual] ?? -1;
    return other >= 0 && other !== line;
  };
  const outsiders: DenseRecord[] = [];
  const relabelled = new Map<number, Relabelled>();
  for (const [number, share] of flow.shares(isOutside).individuals) {
    if (isOutside(number)) outsiders.push({ kind: 'individual', number, share });
    else if (claimsOrigin(label)) {
      const source = graph.pedigree.sourceOf[number] ?? -1;
      const from = relabelledFrom(graph, label, number, source);
      if (from !== null)
        relabelled.set(source, {
          kind: 'source',
          number: source,
          share: share + (relabelled.get(source)?.share ?? 0),
          knownBy: [{ kind: 'source', number: source }],
          from,
        });
    }
  }
  return { outsiders: largestFirst(outsiders), relabelled: [...relabelled.values()] };
}

/** The label that a founder came under, where its line gives it another one without a document. */
function relabelledFrom(
  { sources, claims, lineOf }: RegisterGraph,
  label: Label,
  founder: number,
  source: number,
): string | null {
  const received = sources[source]?.labelAsReceived ?? null;
  const folded = foldedLabel(received);
  if ((lineOf[founder] ?? -1) < 0 || received === null || folded === null || folded === foldedLabel(label.name))
    return null;
  const said = [...(claims.individual.get(founder) ?? []), ...(claims.source.get(source) ?? [])];
  return isDocumented(label.name, said) ? null : received.trim();
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
export function toFindings(
  snapshot: LineageSnapshot,
  evidence: LabelEvidence,
  facts: LabelFacts,
  names: RecordNames,
): LabelFindings {
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
      return gap.kind === 'clutch' ? { ...found, name: say`an unknown parent of the ${found.name}` } : found;
    }),
    outsiders: evidence.outsiders.map((record, place) => ({
      ...named(record, place),
      line: names.idOf('individual', record.number).isPrivate
        ? say`a line that is not told`
        : (graph.lines[graph.lineOf[record.number] ?? -1]?.name ?? say`no line`),
    })),
    crossedLines: evidence.crossedLines,
    uncertainClutches: evidence.uncertainClutches.map((number, place) => record('clutch', number, place)),
    isProposalUncertain: evidence.isProposalUncertain,
    claimants: claimantsIn(snapshot, evidence, facts, names),
    relabelled: evidence.relabelled.map((one, place) => ({
      ...named(one, place),
      from: one.knownBy.some(({ kind, number }) => !names.idOf(kind, number).isPrivate) ? one.from : null,
    })),
    nativeRange: facts.nativeRange,
  };
}

/** Those of which something is claimed; a source also where only its line is. */
function claimantsIn(
  { graph }: LineageSnapshot,
  { claimants, line }: LabelEvidence,
  facts: LabelFacts,
  names: RecordNames,
): Claimant[] {
  const ofLine = graph.claims.line.get(line) ?? [];
  const found = claimants.flatMap(({ kind, number }): Claimant[] => {
    if (kind === 'clutch') return [];
    const claims = graph.claims[kind].get(number) ?? [];
    if (claims.length === 0 && ofLine.length === 0) return [];
    const source = kind === 'source' ? number : (graph.pedigree.sourceOf[number] ?? -1);
    return [
      {
        record: names.record(kind, number),
        claims,
        source: facts.sources.get(graph.sources[source]?.id ?? '') ?? null,
      },
    ];
  });
  if (ofLine.length === 0) return found;
  const { id = '', name = '' } = graph.lines[line] ?? {};
  return [...found, { record: { kind: 'line', id, name, isPrivate: false }, claims: ofLine, source: null }];
}
