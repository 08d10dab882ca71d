import { flagCodes, standings, type FlagCode } from '../../../shared/vocabulary.ts';
import type { LabelClaim } from '../../provenance/standing.ts';
import { FounderStandings, labelOfLine } from '../founder-standings.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import type { FounderShare } from '../kernel/shares.ts';
import type { RegisterGraph } from '../register-graph.ts';

/** What is found of the founders of each source, then of each founder with claims of its own, as a thread can be handed it. */
export interface FounderVerdicts {
  /** 1 where papers of `corroborated` or better name the label of the line. */
  readonly traces: Uint8Array;
  /** Place in `standings` under the label of the line. */
  readonly standings: Uint8Array;
  /** Number of the label that the founders carry, −1 for none; labels that differ only by case and spaces are one. */
  readonly labels: Int32Array;
  /** Bits of the flags that its claims raise, as `bitOf` has them: those of a source, or a founder's own. */
  readonly flags: Uint16Array;
  /** How many labels there are. */
  readonly labelCount: number;
  /** Places of founders with claims of their own. */
  readonly apart: ReadonlyMap<number, number>;
}

/** The bit of a flag. */
export function bitOf(code: FlagCode): number {
  return 1 << flagCodes.indexOf(code);
}

/** The place of a founder in the verdicts: its own where it has claims of its own, else that of its source; −1 without either. */
export function verdictOf({ apart }: FounderVerdicts, { sourceOf }: Pedigree, founder: number): number {
  return apart.get(founder) ?? (sourceOf[founder] as number);
}

/** Whether nothing says where a founder came from: it has no source, and no claim of its own. */
export function isOfUnknownOrigin(verdicts: FounderVerdicts, { sourceOf }: Pedigree, founder: number): boolean {
  return (sourceOf[founder] as number) < 0 && !verdicts.apart.has(founder);
}

/** How founders of every source, and those with claims of their own, stand under the label of a line. */
export function founderVerdicts(graph: RegisterGraph, line: number): FounderVerdicts {
  const founders = new FounderStandings(graph, labelOfLine(graph, line));
  const apart = [...founders.apart.keys()];
  const { sourceOf } = graph.pedigree;
  const origins: FounderShare[] = [
    ...graph.sources.map((_, source): FounderShare => ({ kind: 'source', source, share: 0 })),
    ...apart.map((founder): FounderShare => {
      const source = sourceOf[founder] ?? -1;
      return source < 0
        ? { kind: 'individual', individual: founder, share: 0 }
        : { kind: 'source', source, founder, share: 0 };
    }),
  ];
  const numbers = new Map<string, number>();
  const labels = Int32Array.from(origins, (origin) => {
    const folded = founders.carriedBy(origin)?.claim.folded ?? null;
    if (folded === null) return -1;
    const number = numbers.get(folded) ?? numbers.size;
    numbers.set(folded, number);
    return number;
  });
  const isDisputed = (claims: readonly LabelClaim[] = []): boolean =>
    claims.some(({ standing }) => standing === 'disputed');
  const flagsOf = (claims: readonly LabelClaim[] | undefined): number =>
    isDisputed(claims) ? bitOf('disputed-claim') : 0;
  return {
    traces: Uint8Array.from(origins, (origin) => (founders.traces(origin) ? 1 : 0)),
    standings: Uint8Array.from(origins, (origin) => standings.indexOf(founders.of(origin))),
    labels,
    flags: Uint16Array.from([
      ...graph.sources.map((_, source) => flagsOf(graph.claims.source.get(source))),
      ...apart.map((founder) => flagsOf(founders.apart.get(founder))),
    ]),
    labelCount: numbers.size,
    apart: new Map(apart.map((founder, place) => [founder, graph.sources.length + place])),
  };
}
