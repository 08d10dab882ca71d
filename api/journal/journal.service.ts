import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { decodeCursor, encodeCursor, toPage, type Page } from '../platform/paging.ts';
import { isId } from '../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../platform/problem.ts';
import type { JournalQuery } from './journal.dto.ts';
import { JournalKinds, type NameOf } from './journal-kinds.ts';
import { countEntries, listEntries, readEntries, type EntryRow } from './journal.queries.ts';
import type { JournalEntryView, JournalHeadView } from './journal.view.ts';
import { readHead, readWaiting } from './sealing.queries.ts';
import { referencesIn, tellChanges } from './tell-changes.ts';
import { say, sayAgain } from '../platform/say.ts';

/** Reads the journal, as far as whoever asks may. */
@Injectable()
export class JournalService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(JournalKinds) private readonly kinds: JournalKinds,
  ) {}

  /** A page of entries, the newest first. 422 for a cursor of another list or a day that is not in the calendar. */
  async list(query: JournalQuery): Promise<Page<JournalEntryView>> {
    for (const field of ['from', 'to'] as const) requireDay(query[field], `/${field}`);
    const manager = this.dataSource.manager;
    const rows = await listEntries(manager, this.kinds, query, placeOf(query.after));
    const views = await this.viewsOf(manager, rows);
    const total = query.total ? await countEntries(manager, this.kinds, query) : undefined;
    return toPage(
      views,
      query.limit,
      (view) => view,
      (view) => encodeCursor('journal', [view.id]),
      total,
    );
  }

  /** One entry; 404 where there is none that whoever asks may read. */
  async get(id: string, manager: EntityManager = this.dataSource.manager): Promise<JournalEntryView> {
    const rows = isId(id) ? await readEntries(manager, this.kinds, [id]) : [];
    const [view] = await this.viewsOf(manager, rows);
    if (!view) throw new NotFoundProblem(say`journal entry`, id);
    return view;
  }

  /** Where the chain stands. */
  async head(): Promise<JournalHeadView> {
    const manager = this.dataSource.manager;
    const { count, oldestSeconds } = await readWaiting(manager);
    return { ...(await readHead(manager)), unsealed: count, oldestUnsealedSeconds: oldestSeconds };
  }

  /** Entries in words, in their order. */
  async viewsOf(manager: EntityManager, rows: readonly EntryRow[]): Promise<JournalEntryView[]> {
    const nameOf = await this.namesFor(manager, rows);
    return rows.map((row) => ({
      id: row.id,
      at: row.at,
      keeper: row.keeperId === null ? null : { id: row.keeperId, name: row.keeper ?? '' },
      via: row.via,
      action: row.action,
      record:
        row.recordId === null ? null : { kind: row.kind, id: row.recordId, title: nameOf(row.kind, row.recordId) },
      changes: tellChanges(this.kinds.of(row.kind), row.before, row.after, nameOf),
      reason: row.reason,
      reverses: row.reversesId,
      reversedBy: row.reversedBy,
      isUndoable: this.kinds.of(row.kind)?.undo?.[row.action] !== undefined,
      seal: row.sequence === null || row.hash === null ? null : { sequence: Number(row.sequence), hash: row.hash },
    }));
  }

  /** Asks each kind once for the names of all records that the entries speak of. */
  private async namesFor(manager: EntityManager, rows: readonly EntryRow[]): Promise<NameOf> {
    const wanted = new Map<string, Set<string>>();
    for (const row of rows) {
      const named = [...referencesIn(row.before), ...referencesIn(row.after)];
      if (row.recordId !== null) named.push([row.kind, row.recordId]);
      for (const [kind, id] of named) wanted.set(kind, (wanted.get(kind) ?? new Set()).add(id));
    }
    const titles = new Map<string, ReadonlyMap<string, string>>();
    for (const [kind, ids] of wanted)
      titles.set(kind, (await this.kinds.of(kind)?.titles(manager, [...ids])) ?? new Map());
    return (kind, id) =>
      id === null ? sayAgain('unknown') : (titles.get(kind)?.get(id) ?? sayAgain(this.kinds.of(kind)?.hidden ?? kind));
  }
}

function placeOf(after: string | undefined): string | null {
  if (after === undefined) return null;
  const [id] = decodeCursor('journal', 1, after);
  if (typeof id === 'string' && isId(id)) return id;
  const detail = say`This is not the \`next\` of a page of this list. Start again without \`after\`.`;
  throw new InvalidProblem(detail, [{ pointer: '/after', detail }]);
}

/** The form was checked before; 2023-02-30 has it and is no day. */
function requireDay(text: string | undefined, pointer: string): void {
  if (text === undefined) return;
  const day = new Date(`${text}T00:00:00Z`);
  if (!Number.isNaN(day.getTime()) && day.toISOString().startsWith(text) && !text.startsWith('0000')) return;
  const detail = say`There is no day ${text}.`;
  throw new InvalidProblem(detail, [{ pointer, detail }]);
}
