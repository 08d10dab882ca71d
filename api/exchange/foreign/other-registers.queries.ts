import type { EntityManager } from 'typeorm';
import type { SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../../platform/paging.ts';
import type { OtherRegisterView } from './other-register.view.ts';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly address: string | null;
  readonly keys: SheetKey[];
  readonly keeper: string;
  readonly createdAt: Date;
  readonly withdrawnAt: Date | null;
  readonly withdrawnReason: string | null;
}

const select = `select o.id, o.name, o.address, o.keys, k.name as keeper, o.created_at as "createdAt",
    o.withdrawn_at as "withdrawnAt", o.withdrawn_reason as "withdrawnReason"
  from other_register o join keeper k on k.id = o.keeper_id`;

/** Registers of other clubs in the order in which they were added, withdrawn ones among them. */
export async function listOtherRegisters(manager: EntityManager, query: PageQuery): Promise<Page<OtherRegisterView>> {
  const [after] = query.after === undefined ? [] : decodeCursor('other registers', 1, query.after);
  const rows = await manager.query<Row[]>(
    `${select} ${after === undefined ? '' : 'where o.id > $2::uuid'} order by o.id limit $1`,
    [query.limit + 1, ...(after === undefined ? [] : [after])],
  );
  const [count] = query.total
    ? await manager.query<{ count: number }[]>('select count(*)::int as count from other_register')
    : [];
  return toPage(rows, query.limit, viewOf, (row) => encodeCursor('other registers', [row.id]), count?.count);
}

/** One of them by its id (primary key), or null. */
export async function findOtherRegister(manager: EntityManager, id: string): Promise<OtherRegisterView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<Row[]>(`${select} where o.id = $1`, [id]);
  return row ? viewOf(row) : null;
}

/** A register whose sheets are believed. */
export interface BelievedRegister {
  readonly id: string;
  readonly name: string;
  readonly keys: readonly SheetKey[];
}

/** All registers whose sheets are believed: a club knows a handful. */
export function readBelieved(manager: EntityManager): Promise<BelievedRegister[]> {
  return manager.query<BelievedRegister[]>(
    'select id, name, keys from other_register where withdrawn_at is null order by id',
  );
}

/** Whether this register itself signs, or signed, with a key (signing_key by its kid). */
export async function isOwnKey(manager: EntityManager, kid: string): Promise<boolean> {
  const rows = await manager.query<unknown[]>('select from signing_key where kid = $1', [kid]);
  return rows.length > 0;
}

function viewOf({ keys, createdAt, withdrawnAt, withdrawnReason, ...row }: Row): OtherRegisterView {
  return {
    ...row,
    keys: keys.map(({ kid, usedFrom, usedUntil }) => ({ kid, usedFrom, usedUntil })),
    createdAt: createdAt.toISOString(),
    withdrawn: withdrawnAt && { at: withdrawnAt.toISOString(), reason: withdrawnReason ?? '' },
  };
}
