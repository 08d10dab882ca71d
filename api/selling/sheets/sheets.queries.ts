import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { owned, seen } from '../../people/visibility.ts';
import { acting } from '../../platform/acting.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { PrivateRecords } from '../../register/private-records.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import type { SheetQuery } from './sheets.dto.ts';
import type { SheetState, SheetView } from './sheets.view.ts';

/** The number of a sheet as people read it: `PS-1001-2`. */
export const formatSheetNumber = (serial: string): string => `PS-${formatRegistryNumber(serial)}`;

interface SheetRow {
  readonly id: string;
  readonly version: number;
  readonly number: string;
  readonly keeper: string;
  readonly keeperId: string;
  readonly issued: Date;
  readonly validUntil: string | null;
  readonly isOver: boolean;
  readonly revokedAt: Date | null;
  readonly revokedReason: string | null;
  readonly keyId: string;
  readonly token: string;
  readonly animals: readonly { readonly id: string; readonly number: string; readonly isSeen: boolean }[];
  readonly newer: readonly {
    readonly animal: string;
    readonly number: string;
    readonly issued: string;
    readonly isSeen: boolean;
  }[];
}

/**
 * A sheet is read by its keeper and registrars, and by whoever keeps one of its animals now (provenance_sheet_animal_pkey). To strangers it is
 * told by its token alone.
 */
export const seenSheet = (alias: string): string => {
  const own = owned(alias);
  if (own === 'true' || own === 'false') return own;
  return `(${own} or exists (select from provenance_sheet_animal o join individual i on i.id = o.individual_id
    where o.sheet_id = ${alias}.id and i.keeper_id = '${acting().id}'))`;
};

/** Newer sheets by provenance_sheet_animal_individual_index; one that was revoked replaces nothing. */
const select = (): string => `
  select s.id, s.version, s.number::text, k.name as keeper, s.keeper_id as "keeperId", s.issued_at as issued, s.valid_until::text as "validUntil",
    coalesce(s.valid_until < (now() at time zone 'UTC')::date, false) as "isOver", s.revoked_at as "revokedAt", s.revoked_reason as "revokedReason",
    sk.kid as "keyId", s.token,
    (select json_agg(json_build_object('id', i.id, 'number', i.number::text, 'isSeen', ${seen('individual', 'i')}) order by a.place)
      from provenance_sheet_animal a join individual i on i.id = a.individual_id where a.sheet_id = s.id) as animals,
    (select coalesce(json_agg(json_build_object('animal', i.number::text, 'number', n.number::text, 'issued', n.issued_at, 'isSeen', ${seen('individual', 'i')}) order by a.place), '[]')
      from provenance_sheet_animal a join individual i on i.id = a.individual_id
      cross join lateral (select n.number, n.issued_at from provenance_sheet_animal na join provenance_sheet n on n.id = na.sheet_id
        where na.individual_id = a.individual_id and n.number > s.number and n.revoked_at is null order by n.number desc limit 1) n
      where a.sheet_id = s.id) as newer
  from provenance_sheet s join keeper k on k.id = s.keeper_id join signing_key sk on sk.id = s.key_id`;

/** One sheet by its id (primary key), or null where there is none or it may not be seen. */
export async function findSheet(
  manager: EntityManager,
  id: string,
  publicUrl: string | null,
): Promise<SheetView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<SheetRow[]>(`${select()} where s.id = $1 and ${seenSheet('s')}`, [id]);
  return row ? toSheetView(row, publicUrl) : null;
}

/** One sheet by its token, which is enough to read it (provenance_sheet_token_unique). */
export async function findSheetByToken(manager: EntityManager, token: string): Promise<SheetView | null> {
  const [row] = await manager.query<SheetRow[]>(`${select()} where s.token = $1`, [token]);
  return row ? toSheetView(row, null) : null;
}

const newestFirst: readonly SortColumn[] = [{ sql: 's.number', type: 'bigint' }];

/** A page of sheets that may be seen, the newest first (provenance_sheet_number_unique; provenance_sheet_animal_individual_index). */
export async function listSheets(
  manager: EntityManager,
  query: SheetQuery,
  publicUrl: string | null,
): Promise<Page<SheetView>> {
  const conditions = new Conditions();
  conditions.add(seenSheet('s'));
  if (query.individualId !== undefined)
    conditions.add(
      `s.id in (select f.sheet_id from provenance_sheet_animal f where f.individual_id = ${conditions.bind(query.individualId)})`,
    );
  const total = query.total ? await countWhere(manager, 'provenance_sheet s', conditions) : undefined;
  if (query.after !== undefined) conditions.addAfter(newestFirst, decodeCursor('sheets', 1, query.after), true);
  const rows = await manager.query<SheetRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(newestFirst, true)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  const toView = (row: SheetRow): SheetView => toSheetView(row, publicUrl);
  return toPage(rows, query.limit, toView, (row) => encodeCursor('sheets', [row.number]), total);
}

function toSheetView(row: SheetRow, publicUrl: string | null): SheetView {
  const concealed = new PrivateRecords();
  return {
    id: row.id,
    version: row.version,
    number: formatSheetNumber(row.number),
    keeper: row.keeper,
    keeperId: row.keeperId,
    issued: row.issued,
    validUntil: row.validUntil,
    state: stateOf(row),
    revoked: row.revokedAt && { at: row.revokedAt, reason: row.revokedReason ?? '' },
    newer: row.newer
      .filter(({ isSeen }) => isSeen)
      .map(({ animal, number, issued }) => ({
        animal: formatRegistryNumber(animal),
        number: formatSheetNumber(number),
        issued: new Date(issued),
      })),
    animals: row.animals.map(({ id, number, isSeen }) => {
      const animal = concealed.animal({ id, number: formatRegistryNumber(number), code: null, isSeen });
      return { id: animal.id, number: animal.number, isPrivate: animal.isPrivate };
    }),
    keyId: row.keyId,
    lookUp: lookUpOf(row.token, publicUrl),
  };
}

/** The address of the public page of a sheet. */
export const lookUpOf = (token: string, publicUrl: string | null): string => `${publicUrl ?? ''}/s/${token}`;

function stateOf({ revokedAt, newer, animals, isOver }: SheetRow): SheetState {
  if (revokedAt) return 'revoked';
  if (newer.length === animals.length) return 'superseded';
  return isOver ? 'expired' : 'valid';
}

/** The very bytes of a sheet, and what its references stand for (primary key). */
export interface StoredSheet {
  readonly id: string;
  readonly file: Buffer;
  readonly records: Readonly<Record<string, string>>;
}

/** What is stored of a sheet that was found. */
export async function readStoredSheet(manager: EntityManager, id: string): Promise<StoredSheet> {
  const [row] = await manager.query<StoredSheet[]>('select id, file, records from provenance_sheet where id = $1', [
    id,
  ]);
  if (!row) throw new Error('a sheet is never destroyed');
  return row;
}

/** The token of the sheet whose file consists of these bytes, by the number that it names (provenance_sheet_number_unique); null where there is none. */
export async function findTokenOf(manager: EntityManager, serial: string, file: Uint8Array): Promise<string | null> {
  const [row] = await manager.query<{ token: string }[]>(
    'select token from provenance_sheet where number = $1::bigint and file = $2',
    [serial, Buffer.from(file)],
  );
  return row?.token ?? null;
}

/** The number and moment that the next sheet gets. */
export async function nextSheet(manager: EntityManager): Promise<{ number: string; issued: Date }> {
  const [row] = await manager.query<{ number: string; issued: Date }[]>(
    `select nextval('provenance_sheet_number')::text as number, date_trunc('milliseconds', clock_timestamp()) as issued`,
  );
  if (!row) throw new Error('the database gave no number');
  return row;
}

/** Holds a sheet that may be seen for a change (primary key); null where there is none. */
export async function holdSheet(
  manager: EntityManager,
  id: string,
): Promise<{ version: number; keeperId: string; isRevoked: boolean; number: string } | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<{ version: number; keeperId: string; isRevoked: boolean; number: string }[]>(
    `select s.version, s.keeper_id as "keeperId", s.revoked_at is not null as "isRevoked", s.number::text from provenance_sheet s
     where s.id = $1 and ${seenSheet('s')} for update`,
    [id],
  );
  return row ?? null;
}
