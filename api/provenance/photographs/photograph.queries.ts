import type { EntityManager } from 'typeorm';
import { forMembers } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere } from '../../register/keyset.ts';
import { findPlaces, inOrder, type Order } from '../../register/places.queries.ts';
import { recordColumns, toRecordView, type RecordRow } from '../../register/record.view.ts';
import { seenIn } from '../../register/seen-records.ts';
import type { StoredFile } from '../files/stored-file.entity.ts';
import type { PhotographQuery } from './photograph.dto.ts';
import type { PhotographRecordView } from './photograph.view.ts';

type PhotographRow = RecordRow & Omit<PhotographRecordView, 'createdAt' | 'updatedAt' | 'withdrawn'>;

const select = (): string => `
  select ${recordColumns('p')}, p.individual_id as "individualId", ${forMembers('k.name')} as keeper,
    ${forMembers('p.keeper_id')} as "keeperId", p.view, p.taken_on as "takenOn", ${forMembers('p.notes')} as notes, f.width, f.height
  from photograph p join keeper k on k.id = p.keeper_id join stored_file f on f.hash = p.file_hash`;

const newestFirst: Order = {
  from: 'photograph p',
  id: 'p.id',
  columns: [
    { sql: 'p.taken_on_latest', type: 'date' },
    { sql: 'p.id', type: 'uuid' },
  ],
  isFirstNullable: true,
  isDescending: true,
};

/** One photograph by its id (primary key), or null where there is none or it may not be seen. */
export async function findPhotograph(manager: EntityManager, id: string): Promise<PhotographRecordView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<PhotographRow[]>(`${select()} where p.id = $1 and ${seenIn.photograph('p')}`, [id]);
  return row ? toPhotographView(row) : null;
}

/** A page of photographs, those taken last first (photograph_individual_index); all of the club are read and sorted. */
export async function listPhotographs(
  manager: EntityManager,
  query: PhotographQuery,
): Promise<Page<PhotographRecordView>> {
  const conditions = new Conditions();
  conditions.add('p.withdrawn_at is null');
  conditions.add(seenIn.photograph('p'));
  if (query.individualId !== undefined) conditions.add(`p.individual_id = ${conditions.bind(query.individualId)}`);
  if (query.view !== undefined) conditions.add(`p.view = ${conditions.bind(query.view)}`);
  const after = query.after === undefined ? null : decodeCursor('taken', newestFirst.columns.length, query.after);
  const places = await findPlaces(manager, newestFirst, conditions, after, query.limit + 1);
  const rows = await manager.query<PhotographRow[]>(`${select()} where p.id = any($1) and ${seenIn.photograph('p')}`, [
    places.map((place) => place.id),
  ]);
  const total = query.total ? await countWhere(manager, 'photograph p', conditions) : undefined;
  return toPage(
    inOrder(places, rows),
    query.limit,
    (row) => toPhotographView(row.item),
    (row) => encodeCursor('taken', row.keys),
    total,
  );
}

/** What is needed to give a picture out. */
export type PictureRow = Pick<StoredFile, 'hash' | 'mediaType'> & {
  readonly number: string;
  readonly takenOn: string | null;
};

/** The picture of a photograph (primary keys), or null where there is none or it may not be seen. */
export async function findPicture(manager: EntityManager, id: string): Promise<PictureRow | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<PictureRow[]>(
    `select f.hash, f.media_type as "mediaType", i.number::text as number, p.taken_on as "takenOn"
     from photograph p join stored_file f on f.hash = p.file_hash join individual i on i.id = p.individual_id
     where p.id = $1 and ${seenIn.photograph('p')}`,
    [id],
  );
  return row ?? null;
}

function toPhotographView(row: PhotographRow): PhotographRecordView {
  return {
    ...toRecordView(row),
    individualId: row.individualId,
    keeper: row.keeper,
    keeperId: row.keeperId,
    view: row.view,
    takenOn: row.takenOn,
    notes: row.notes,
    width: row.width,
    height: row.height,
  };
}
