import { flagCodes, standings, type FlagCode } from '../../../shared/vocabulary.ts';
import { claimCauses, claimFlagCodes } from '../../provenance/claim-causes.ts';
import type { Claimant } from '../../provenance/label-findings.ts';
import { foldedLabel } from '../../provenance/standing.ts';
import { FounderStandings, labelOfLine } from '../founder-standings.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import type { FounderShare } from '../kernel/shares.ts';
import { claimsOrigin, isDocumented } from '../label-evidence.ts';
import type { LabelFacts } from '../label-facts.queries.ts';
import type { RegisterGraph } from '../register-graph.ts';

/**
 * What is found of the founders of each source, then of each animal with claims of its own, as a thread can be handed it: rows of one
 * table. Labels are numbered, 0 that of the line; those that differ only by case and spaces are one.
 */
export interface FounderVerdicts {
  /** 1 where papers of `corroborated` or better name the label of the line. */
  readonly traces: Uint8Array;
  /** Place in `standings` under the label of the line. */
  readonly standings: Uint8Array;
  /** Number of the label that the founders carry, −1 for none. */
  readonly labels: Int32Array;
  /** 1 where that label is claimed of the founder itself. */
  readonly isOwnLabel: Uint8Array;
  /** 1 where an accepted document names the label of the line. */
  readonly documents: Uint8Array;
  /** Bits of the flags that its claims raise, as `bitOf` has them: those of a source, or an animal's own. */
  readonly flags: Uint16Array;
  /** 1 for sources that came under another label than that of the line, where that claims an origin; an entry a source. */
  readonly renames: Uint8Array;
  /** Bits of the flags that claims about the line itself raise for every member. */
  readonly ofLine: number;
  /** Number of the label that each line gives its animals; an entry a line. */
  readonly lineLabels: Int32Array;
  /** How many labels there are. */
  readonly labelCount: number;
  /** Rows of animals with claims of their own, founders or not. */
  readonly apart: ReadonlyMap<number, number>;
}

/** The bit of a flag. */
export function bitOf(code: FlagCode): number {
  return 1 << flagCodes.indexOf(code);
}

/** The row of a founder in the verdicts: its own where it has claims of its own, else that of its source; −1 without either. */
export function verdictOf({ apart }: FounderVerdicts, { sourceOf }: Pedigree, founder: number): number {
  return apart.get(founder) ?? (sourceOf[founder] as number);
}

/** Whether nothing says where a founder came from: it has no source, and no claim of its own. */
export function isOfUnknownOrigin(verdicts: FounderVerdicts, { sourceOf }: Pedigree, founder: number): boolean {
  return (sourceOf[founder] as number) < 0 && !verdicts.apart.has(founder);
}

/** How founders of every source, and animals with claims of their own, stand under the label of a line, and what is held against them. */
export function founderVerdicts(graph: RegisterGraph, line: number, facts: LabelFacts): FounderVerdicts {
  const label = labelOfLine(graph, line);
  const founders = new FounderStandings(graph, label);
  const apart = [...founders.apart.keys()];
  const origins = originsOf(graph, apart);
  const numbers = new LabelNumbers(label?.name ?? null);
  const carried = origins.map((origin) => founders.carriedBy(origin));
  const isDocumentedIn = (claims: Parameters<typeof isDocumented>[1]): number =>
    label !== null && isDocumented(label.name, claims) ? 1 : 0;
  const ofSource = (source: number) => graph.claims.source.get(source) ?? [];
  const isRenamed = (received: string | null): boolean =>
    label !== null && claimsOrigin(label) && numbers.of(foldedLabel(received)) > 0;
  return {
    traces: Uint8Array.from(origins, (origin) => (founders.traces(origin) ? 1 : 0)),
    standings: Uint8Array.from(origins, (origin) => standings.indexOf(founders.of(origin))),
    labels: Int32Array.from(carried, (found) => numbers.of(found?.claim.folded ?? null)),
    isOwnLabel: Uint8Array.from(carried, (found) => (found?.isOwn ? 1 : 0)),
    documents: Uint8Array.from([
      ...graph.sources.map((_, source) => isDocumentedIn(ofSource(source))),
      ...apart.map((animal) =>
        isDocumentedIn([...(founders.apart.get(animal) ?? []), ...ofSource(graph.pedigree.sourceOf[animal] ?? -1)]),
      ),
    ]),
    ...raisedFlags(graph, line, apart, facts),
    renames: Uint8Array.from(graph.sources, ({ labelAsReceived }) => (isRenamed(labelAsReceived) ? 1 : 0)),
    lineLabels: Int32Array.from(graph.lines, ({ name }) => numbers.of(foldedLabel(name))),
    labelCount: numbers.count,
    apart: new Map(apart.map((founder, place) => [founder, graph.sources.length + place])),
  };
}

function originsOf({ sources, pedigree }: RegisterGraph, apart: readonly number[]): FounderShare[] {
  return [
    ...sources.map((_, source): FounderShare => ({ kind: 'source', source, share: 0 })),
    ...apart.map((founder): FounderShare => {
      const source = pedigree.sourceOf[founder] ?? -1;
      return source < 0
        ? { kind: 'individual', individual: founder, share: 0 }
        : { kind: 'source', source, founder, share: 0 };
    }),
  ];
}

/** Numbers of folded labels in the order in which they are asked for, 0 for the first. */
class LabelNumbers {
  readonly #numbers = new Map<string, number>();
  /** How many there are; at least 1, also where the line has no label. */
  count = 1;

  constructor(ofLine: string | null) {
    const folded = foldedLabel(ofLine);
    if (folded !== null) this.#numbers.set(folded, 0);
  }

  of(folded: string | null): number {
    if (folded === null) return -1;
    const number = this.#numbers.get(folded) ?? this.count++;
    this.#numbers.set(folded, number);
    return number;
  }
}

/** What the rules of claims hold against each source, each animal with claims of its own, and the line. */
function raisedFlags(
  graph: RegisterGraph,
  line: number,
  apart: readonly number[],
  facts: LabelFacts,
): Pick<FounderVerdicts, 'flags' | 'ofLine'> {
  const flags = new Uint16Array(graph.sources.length + apart.length);
  const isClaimed = [...flags.keys()].filter(
    (row) => row >= graph.sources.length || graph.claims.source.has(row) || graph.claims.line.has(line),
  );
  const claimants = isClaimed.map((row) =>
    row < graph.sources.length
      ? claimantOf(graph, facts, 'source', row)
      : claimantOf(graph, facts, 'individual', apart[row - graph.sources.length] ?? -1),
  );
  const itself = claimantOf(graph, facts, 'line', line);
  const rows = new Map(claimants.map((claimant, place) => [claimant, isClaimed[place] ?? -1]));
  let ofLine = 0;
  const judged = {
    label: labelOfLine(graph, line),
    claimants: [...claimants, itself],
    nativeRange: facts.nativeRange,
  };
  for (const code of claimFlagCodes)
    for (const claimant of claimCauses[code](judged)) {
      if (claimant === itself) ofLine |= bitOf(code);
      const row = rows.get(claimant);
      if (row !== undefined) flags[row] = (flags[row] ?? 0) | bitOf(code);
    }
  return { flags, ofLine };
}

/** A record as the rules of claims judge it. It has no name of its own: names are asked for last, and only those shown. */
export function claimantOf(
  { claims, sources, pedigree, lines }: RegisterGraph,
  facts: LabelFacts,
  kind: 'source' | 'individual' | 'line',
  number: number,
): Claimant {
  const source = kind === 'source' ? number : kind === 'individual' ? (pedigree.sourceOf[number] ?? -1) : -1;
  const { id = '', name = '' } = kind === 'line' ? (lines[number] ?? {}) : {};
  return {
    record: { kind, id, name, isPrivate: false },
    claims: claims[kind].get(number) ?? [],
    source: facts.sources.get(sources[source]?.id ?? '') ?? null,
  };
}
