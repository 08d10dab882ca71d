import type { LabelKind } from '../../../shared/vocabulary.ts';
import type { Inbreeding } from '../kernel/inbreeding.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import type { FounderVerdicts } from './founder-verdicts.ts';

/** The members of a line with what is told of each; all arrays have an entry a member, in the same order. */
export interface AuditedMembers {
  /** Individuals, each once. */
  readonly members: Int32Array;
  /** 1 for those that live. */
  readonly living: Uint8Array;
  /** Year of hatching; 0 where it is not known to the year. */
  readonly hatched: Int16Array;
  /** Year of hatching or, for founders, of arrival; 0 where neither is known to the year. */
  readonly begun: Int16Array;
  /** Year of death; 9999 for those that live, 0 where it is not known to the year. */
  readonly ended: Int16Array;
}

/** What the thread is given. */
export interface AuditInput extends AuditedMembers {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  /** Line of every individual, or −1. */
  readonly lineOf: Int32Array;
  readonly line: number;
  readonly labelKind: LabelKind;
  readonly verdicts: FounderVerdicts;
  /** Animals of which some flag is acknowledged. */
  readonly acknowledged: ReadonlySet<number>;
  /** Whether the answer tells of every member, for a table of all of them. */
  readonly isEach: boolean;
}
