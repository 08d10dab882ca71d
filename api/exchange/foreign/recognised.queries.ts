import type { EntityManager } from 'typeorm';
import { seenIn } from '../../register/seen-records.ts';
import type { ForeignKind } from './foreign-record.entity.ts';

/** Records here of the records of another register: kind and key there to the id here. */
export type Recognised = ReadonlyMap<string, string>;

/** How a record of another register is looked up among the recognised ones. */
export const recognisedAs = (kind: ForeignKind, key: string): string => `${kind} ${key}`;

/**
 * Which records of another register stand here already (foreign_record_pkey): as far as whoever asks may see them, a duplicate as the
 * record that it was merged into.
 */
export async function readRecognised(
  manager: EntityManager,
  registerId: string,
  keys: Readonly<Record<ForeignKind, readonly string[]>>,
): Promise<Recognised> {
  const rows = await manager.query<{ kind: ForeignKind; key: string; id: string }[]>(
    `with told as (select f.kind, f.foreign_key as key, f.record_id as id from foreign_record f
       where f.register_id = $1 and (f.kind = 'individual' and f.foreign_key = any($2::text[])
         or f.kind = 'clutch' and f.foreign_key = any($3::text[]) or f.kind = 'source' and f.foreign_key = any($4::text[])))
     select told.kind, told.key, i.id from told left join merge m on m.duplicate_id = told.id and m.undone_at is null
       join individual i on i.id = coalesce(m.kept_id, told.id)
       where told.kind = 'individual' and i.withdrawn_at is null and ${seenIn.individual('i')}
     union all select told.kind, told.key, c.id from told join clutch c on c.id = told.id
       where told.kind = 'clutch' and c.withdrawn_at is null and ${seenIn.clutch('c')}
     union all select told.kind, told.key, s.id from told join source s on s.id = told.id
       where told.kind = 'source' and s.withdrawn_at is null and ${seenIn.source('s')}`,
    [registerId, keys.individual, keys.clutch, keys.source],
  );
  return new Map(rows.map(({ kind, key, id }) => [recognisedAs(kind, key), id]));
}

/** Notes which records here came from which there. */
export async function noteForeignRecords(
  manager: EntityManager,
  registerId: string,
  sheetNumber: string,
  records: readonly { readonly kind: ForeignKind; readonly key: string; readonly id: string }[],
): Promise<void> {
  await manager.query(
    `insert into foreign_record (register_id, sheet_number, kind, foreign_key, record_id)
     select $1, $2, kind, key, id from jsonb_to_recordset($3::jsonb) as t (kind text, key text, id uuid) on conflict do nothing`,
    [registerId, sheetNumber, JSON.stringify(records)],
  );
}

/** Codes and ids of what an import made, by table. */
export async function readMade(
  manager: EntityManager,
  importId: string,
): Promise<Readonly<Record<ForeignKind, ReadonlyMap<string, string>>>> {
  const of = async (table: ForeignKind): Promise<ReadonlyMap<string, string>> => {
    const rows = await manager.query<{ code: string; id: string }[]>(
      `select code, id from ${table} where import_id = $1 and code is not null`,
      [importId],
    );
    return new Map(rows.map(({ code, id }) => [code, id]));
  };
  return { individual: await of('individual'), clutch: await of('clutch'), source: await of('source') };
}

/** Clutches of some animals (primary keys), as far as whoever asks may see them. */
export async function readClutchesOf(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<{ id: string; clutchId: string }[]>(
    `select i.id, c.id as "clutchId" from individual i join clutch c on c.id = i.clutch_id
     where i.id = any($1::uuid[]) and ${seenIn.clutch('c')}`,
    [ids],
  );
  return new Map(rows.map(({ id, clutchId }) => [id, clutchId]));
}
