import type { EntityManager } from 'typeorm';
import type { JournalKind } from '../../journal/journal-kinds.ts';
import type { RecordKind } from '../kept/kept-form.queries.ts';
import { seenIn } from '../seen-records.ts';
import { undoOf, type AnyKind } from './undo-change.ts';

export type TitleRow = Readonly<Record<string, string | null>>;

/** The columns that a title is made of, of a table known as r, and how. */
export interface Titled {
  readonly columns: string;
  readonly title: (row: TitleRow) => string;
}

const dates = [
  'date',
  'laid',
  'hatched',
  'outOfWater',
  'died',
  'sexedOn',
  'observedOn',
  'statedOn',
  'dated',
  'takenOn',
];

/**
 * What the journal has to know of a kind of record that is kept in one table, can be withdrawn, and is seen as `seenIn` says.
 *
 * @param more what is particular to the kind; ways to undo are added to the usual ones
 */
export function recordKind(
  table: RecordKind,
  kind: AnyKind,
  { columns, title }: Titled,
  more: Pick<JournalKind, 'hidden' | 'origins' | 'rows' | 'words' | 'undo'> = {},
): JournalKind {
  const readTitles = async (manager: EntityManager, ids: readonly string[]): Promise<ReadonlyMap<string, string>> => {
    const found = await manager.query<(TitleRow & { id: string })[]>(
      `select r.id, ${columns} from ${table} r where r.id = any($1) and ${seenIn[table]('r')}`,
      [ids],
    );
    return new Map(found.map((row) => [row.id, title(row)]));
  };
  return {
    ...more,
    kind: table,
    seen: (id) => `exists (select from ${table} r where r.id = ${id} and ${seenIn[table]('r')})`,
    titles: readTitles,
    dates,
    undo: { ...undoOf(kind), ...more.undo },
  };
}
