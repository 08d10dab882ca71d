import type { EntityManager } from 'typeorm';
import type { Role } from '../../shared/vocabulary.ts';
import { isId } from '../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../platform/paging.ts';
import type { LinkKind } from './links.dto.ts';
import type { LinkView } from './links.view.ts';
import { hashOfSecret } from './secrets.ts';

/** A link as using it needs to know it. */
export interface OpenLink {
  readonly id: string;
  readonly kind: LinkKind;
  readonly keeperId: string | null;
  /** Name of that keeper. */
  readonly name: string | null;
  readonly roles: Role[];
  readonly expiresAt: Date;
}

/** A link works once, in its time, while whoever made it is an administrator and whoever it is for a member. */
const isOpen = `l.used_at is null and l.revoked_at is null and l.expires_at > now()
  and exists (select from keeper m where m.id = l.made_by and m.left_at is null and 'administrator' = any(m.roles))
  and (l.keeper_id is null or exists (select from keeper k where k.id = l.keeper_id and k.left_at is null))`;

const view = `select l.id, l.kind, l.roles, l.note, l.created_at as "createdAt", l.expires_at as "expiresAt",
    json_build_object('id', m.id, 'name', m.name) as "madeBy",
    case when k.id is null then null else json_build_object('id', k.id, 'name', k.name) end as keeper
  from sign_in_link l join keeper m on m.id = l.made_by left join keeper k on k.id = l.keeper_id`;

/** The link of a secret, if it can be used; sign_in_link_hash_unique. */
export async function findOpenLink(manager: EntityManager, secret: string): Promise<OpenLink | null> {
  const [found] = await manager.query<OpenLink[]>(
    `select l.id, l.kind, l.keeper_id as "keeperId", k.name, l.roles, l.expires_at as "expiresAt"
     from sign_in_link l left join keeper k on k.id = l.keeper_id where l.token_hash = $1 and ${isOpen}`,
    [hashOfSecret(secret)],
  );
  return found ?? null;
}

/** Uses a link up; false where somebody else did so first, or it can no longer be used. */
export async function useUp(manager: EntityManager, id: string): Promise<boolean> {
  const [used] = await manager.query<[unknown[], number]>(
    `update sign_in_link l set used_at = now() where l.id = $1 and ${isOpen} returning l.id`,
    [id],
  );
  return used.length === 1;
}

/** One link that can still be used, or could be. */
export async function findLink(manager: EntityManager, id: string): Promise<LinkView | null> {
  const [found] = isId(id) ? await manager.query<LinkView[]>(`${view} where l.id = $1`, [id]) : [];
  return found ?? null;
}

/** Revokes a link; null where there is none that can still be used. */
export async function revokeLink(manager: EntityManager, id: string): Promise<LinkView | null> {
  if (!isId(id)) return null;
  const [revoked] = await manager.query<[unknown[], number]>(
    `update sign_in_link l set revoked_at = now() where l.id = $1 and ${isOpen} returning l.id`,
    [id],
  );
  return revoked.length === 1 ? findLink(manager, id) : null;
}

/** A page of the links that can still be used, the newest first. */
export async function listOpenLinks(manager: EntityManager, query: PageQuery): Promise<Page<LinkView>> {
  const after = query.after === undefined ? null : decodeCursor('id', 1, query.after);
  const rows = await manager.query<LinkView[]>(
    `${view} where ${isOpen} and ($1::text is null or l.id < $1::uuid) order by l.id desc limit $2`,
    [after?.[0] ?? null, query.limit + 1],
  );
  const total = query.total ? await countOpenLinks(manager) : undefined;
  return toPage(
    rows,
    query.limit,
    (row) => row,
    (row) => encodeCursor('id', [row.id]),
    total,
  );
}

async function countOpenLinks(manager: EntityManager): Promise<number> {
  const [row] = await manager.query<{ total: number }[]>(
    `select count(*)::integer as total from sign_in_link l where ${isOpen}`,
  );
  return row?.total ?? 0;
}
