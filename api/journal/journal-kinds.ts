import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../shared/vocabulary.ts';
import type { SealedContent } from './chain.ts';
import type { KeptForm } from '../platform/journal-entry.ts';

/** An entry whose change is to be undone. */
export type EntryToUndo = Pick<SealedContent, 'id' | 'kind' | 'recordVersion' | 'aboutIds'> & {
  readonly action: JournalAction;
  readonly recordId: string;
  readonly before: KeptForm | null;
  readonly after: KeptForm | null;
};

/**
 * Undoes the change of an entry in the transaction of `manager`, and writes (or notes) the entry that tells so, with `reversesId`.
 * Checks that whoever acts may do it. Throws ChangedSince where the record was changed again.
 */
export type Undo = (manager: EntityManager, entry: EntryToUndo) => Promise<void>;

/** Names of other records, as far as whoever asks may see them. */
export type NameOf = (kind: string, id: string | null) => string;

/** Rows that belong to a record, told one a line under a field. */
export interface ToldRows {
  readonly field: string;
  readonly line: (row: Readonly<Record<string, unknown>>, nameOf: NameOf) => string;
}

/** What the journal has to know of a kind of record. The room that keeps the records says it. */
export interface JournalKind {
  readonly kind: string;
  /**
   * The SQL condition under which the record whose id is the expression `id` is there and seen by whoever asks, made anew for each
   * question.
   */
  readonly seen: (id: string) => string;
  /** What people call those of these records that whoever asks may see. */
  readonly titles: (manager: EntityManager, ids: readonly string[]) => Promise<ReadonlyMap<string, string>>;
  /** Whether there is one record of this kind, which needs no id. */
  readonly isOnlyOne?: boolean;
  /** What stands for a record of this kind that may not be seen, or is not there. */
  readonly hidden?: string;
  /** SQL that gives ids of records whose entries stand in the history of the record with the id of this expression, too. */
  readonly origins?: (id: string) => string;
  /** Properties that hold vague dates. */
  readonly dates?: readonly string[];
  /** Properties that hold rows. */
  readonly rows?: Readonly<Record<string, ToldRows>>;
  /** Properties that are told in words of their own. */
  readonly words?: Readonly<Record<string, (value: unknown) => string>>;
  /** How changes are undone; what is not here cannot be. */
  readonly undo?: Partial<Record<JournalAction, Undo>>;
}

/** The kinds of record that the journal knows. */
@Injectable()
export class JournalKinds {
  private readonly kinds = new Map<string, JournalKind>();

  /** Makes a kind known, or adds ways to undo to one that is. */
  add(kind: JournalKind): void {
    this.kinds.set(kind.kind, kind);
  }

  of(kind: string): JournalKind | undefined {
    return this.kinds.get(kind);
  }

  all(): JournalKind[] {
    return [...this.kinds.values()];
  }
}

/** The record was changed after the entry that is to be undone; the answer names the later entries. */
export class ChangedSince extends Error {
  constructor(
    readonly recordId: string,
    readonly sinceVersion: number | null,
    /** The entry since which it was changed, where that is not the one to be undone but one of several that go with it. */
    readonly entryId: string | null = null,
  ) {
    super('the record was changed since');
  }
}
