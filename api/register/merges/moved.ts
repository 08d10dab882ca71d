import type { ParentRow } from './merged-parents.ts';
import type { MergeField } from './merge-fields.ts';
import type { StayRow } from './merged-stays.ts';

/** A column's value as JSON holds it. */
export type ColumnValue = string | null;

/** Columns of the kept record, by the names of the entity's properties. */
export type Columns = Readonly<Record<string, ColumnValue>>;

/** Something that was replaced, exactly as it was and as it became. */
export interface Replaced<Rows> {
  readonly id: string;
  readonly before: Rows;
  readonly after: Rows;
}

/** Exactly what a merging changed, so that it can be taken back. */
export interface Moved {
  /** What the kept record took over, and its columns before and after. */
  readonly fields: readonly MergeField[];
  readonly before: Columns;
  readonly after: Columns;
  /** Possible parents of the clutches that named the duplicate. */
  readonly clutches: readonly Replaced<readonly ParentRow[]>[];
  /** Stays that only changed their animal. */
  readonly stays: readonly { readonly id: string; readonly pairingId: string }[];
  /** Stays of both in one pairing, by its id, where some of them overlapped and were joined. */
  readonly joinedStays: readonly Replaced<readonly StayRow[]>[];
  /** Ids of remarks. */
  readonly remarks: readonly string[];
  /** Ids of confirmed warnings. */
  readonly confirmations: readonly string[];
  /** Ids of records that were merged into the duplicate before. */
  readonly followers: readonly string[];
  /** Left out in mergings that were made before these moved. */
  readonly provenance?: MovedProvenance;
}

/** What is said and shown of the duplicate, as it moved. */
export interface MovedProvenance {
  /** Ids of claims that only changed their animal. */
  readonly claims: readonly string[];
  /** Standing claims that both records had. */
  readonly joinedClaims: readonly JoinedClaim[];
  /** Ids of photographs. */
  readonly photographs: readonly string[];
  /** Ids of acknowledged flags. */
  readonly acknowledgements: readonly string[];
}

/** A claim of the duplicate that the kept record had as well: withdrawn, and its evidence given to the one that goes on. */
export interface JoinedClaim {
  readonly id: string;
  /** The claim that goes on. */
  readonly keptId: string;
  /** When it was withdrawn; by this it is known again. */
  readonly withdrawnAt: string;
  /** Ids of its evidence. */
  readonly evidence: readonly string[];
  /** Columns of the claim that goes on, by their names in SQL, which were empty and were filled from this one. */
  readonly filled: FilledColumns;
}

export type FilledColumns = Readonly<Record<string, string | number>>;
