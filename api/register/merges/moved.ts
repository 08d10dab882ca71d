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
}
