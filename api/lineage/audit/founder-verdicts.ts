import { flagCodes, standings, type FlagCode } from '../../../shared/vocabulary.ts';
import { foldedLabel, standingOfSource, tracesLabel } from '../../provenance/standing.ts';
import type { RegisterGraph } from '../register-graph.ts';

/** What is found of the founders of each source, as a thread can be handed it; k entries each. */
export interface FounderVerdicts {
  /** 1 where papers of `corroborated` or better name the label of the line. */
  readonly traces: Uint8Array;
  /** Place in `standings` under the label of the line. */
  readonly standings: Uint8Array;
  /** Number of the label that the founders carry, −1 for none; labels that differ only by case and spaces are one. */
  readonly labels: Int32Array;
  /** Bits of the flags that the founders themselves carry down, as `bitOf` has them. */
  readonly flags: Uint16Array;
  /** How many labels there are. */
  readonly labelCount: number;
}

/** The bit of a flag. */
export function bitOf(code: FlagCode): number {
  return 1 << flagCodes.indexOf(code);
}

/** How founders of every source stand under the label of a line. */
export function founderVerdicts({ sources, lines }: RegisterGraph, line: number): FounderVerdicts {
  const label = lines[line]?.name ?? null;
  const numbers = new Map<string, number>();
  const labels = Int32Array.from(sources, ({ labelAsReceived }) => {
    const folded = foldedLabel(labelAsReceived);
    if (folded === null) return -1;
    const number = numbers.get(folded) ?? numbers.size;
    numbers.set(folded, number);
    return number;
  });
  const standing = Uint8Array.from(sources, (source) => standings.indexOf(standingOfSource(source)));
  const disputed = standings.indexOf('disputed');
  return {
    traces: Uint8Array.from(sources, (source) => (tracesLabel(source, label) ? 1 : 0)),
    standings: standing,
    labels,
    flags: Uint16Array.from(standing, (of) => (of === disputed ? bitOf('disputed-claim') : 0)),
    labelCount: numbers.size,
  };
}
