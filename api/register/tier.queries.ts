import type { EntityManager } from 'typeorm';
import { privateAnimal, privateClutch } from './private-records.ts';
import { seenIn } from './seen-records.ts';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { clutchTitle } from './titles.ts';

export type NodeKind = 'individual' | 'clutch';

/** A node of the lineage that ranks in time. */
export interface Node {
  readonly kind: NodeKind;
  readonly id: string;
}

interface LinkRow {
  readonly parent: string;
  readonly child: string;
  readonly tier: number;
}

/** A step down: the child, and the rank that it has now. */
export interface Link {
  readonly parent: Node;
  readonly child: Node;
  readonly tier: number;
}

/** Ranks of animals or clutches (primary keys). */
export async function tiersOf(
  manager: EntityManager,
  kind: NodeKind,
  ids: readonly string[],
): Promise<{ id: string; tier: number }[]> {
  return manager.query<{ id: string; tier: number }[]>(`select id, tier from ${kind} where id = any($1)`, [ids]);
}

/** Clutches that these animals may be parents of, withdrawn ones too (clutch_candidate_individual_index, clutch_pair_a_index, clutch_pair_b_index). */
export async function linksBelowIndividuals(manager: EntityManager, ids: readonly string[]): Promise<Link[]> {
  if (ids.length === 0) return [];
  const rows = await manager.query<LinkRow[]>(
    `select individual_id as parent, clutch_id as child, clutch_tier as tier from clutch_candidate where individual_id = any($1)
     union select a_id, clutch_id, clutch_tier from clutch_pair where a_id = any($1)
     union select b_id, clutch_id, clutch_tier from clutch_pair where b_id = any($1)`,
    [ids],
  );
  return rows.map((row) => link('individual', 'clutch', row));
}

/** Animals that came from these clutches, withdrawn ones too (individual_clutch_index). */
export async function linksBelowClutches(manager: EntityManager, ids: readonly string[]): Promise<Link[]> {
  if (ids.length === 0) return [];
  const rows = await manager.query<LinkRow[]>(
    'select clutch_id as parent, id as child, tier from individual where clutch_id = any($1)',
    [ids],
  );
  return rows.map((row) => link('clutch', 'individual', row));
}

function link(parent: NodeKind, child: NodeKind, row: LinkRow): Link {
  return { parent: { kind: parent, id: row.parent }, child: { kind: child, id: row.child }, tier: row.tier };
}

/** Gives animals or clutches a rank. It is bookkeeping and no change of the record: versions stay. */
export async function raise(
  manager: EntityManager,
  kind: NodeKind,
  ids: readonly string[],
  tier: number,
): Promise<void> {
  if (ids.length > 0) await manager.query(`update ${kind} set tier = $2 where id = any($1) and tier < $2`, [ids, tier]);
}

/** Names of nodes in their order: registry number and code of an animal, title of a clutch; neither of one that may not be seen. */
export async function nameNodes(manager: EntityManager, nodes: readonly Node[]): Promise<string[]> {
  const rows = await manager.query<{ id: string; number: string | null; code: string | null; laid: string | null }[]>(
    `select id, number::text, code, null as laid from individual i where id = any($1) and ${seenIn.individual('i')}
     union all select id, null, code, laid from clutch c where id = any($1) and ${seenIn.clutch('c')}`,
    [nodes.map((node) => node.id)],
  );
  const names = new Map(
    rows.map((row) => [
      row.id,
      row.number === null
        ? clutchTitle(row)
        : `${formatRegistryNumber(row.number)}${row.code === null ? '' : ` ${row.code}`}`,
    ]),
  );
  return nodes.map((node) => names.get(node.id) ?? (node.kind === 'individual' ? privateAnimal : `a ${privateClutch}`));
}

/** What stands one step above these nodes, with its rank: parents of clutches, clutches of animals (primary key, clutch_candidate_once, clutch_pair_once). */
export async function linksAbove(manager: EntityManager, nodes: readonly Node[]): Promise<Link[]> {
  const idsOf = (kind: NodeKind): string[] => nodes.filter((node) => node.kind === kind).map(({ id }) => id);
  const rows = await manager.query<(LinkRow & { kind: NodeKind })[]>(
    `select 'clutch' as kind, clutch_id as parent, id as child, clutch_tier as tier from individual
       where id = any($1::uuid[]) and clutch_id is not null
     union all select 'individual', individual_id, clutch_id, individual_tier from clutch_candidate
       where clutch_id = any($2::uuid[]) and individual_id is not null
     union all select 'individual', a_id, clutch_id, a_tier from clutch_pair where clutch_id = any($2::uuid[])
     union all select 'individual', b_id, clutch_id, b_tier from clutch_pair where clutch_id = any($2::uuid[])`,
    [idsOf('individual'), idsOf('clutch')],
  );
  return rows.map(({ kind, ...row }) => ({
    parent: { kind, id: row.parent },
    child: { kind: kind === 'clutch' ? 'individual' : 'clutch', id: row.child },
    tier: row.tier,
  }));
}
