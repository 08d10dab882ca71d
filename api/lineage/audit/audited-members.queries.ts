import type { EntityManager } from 'typeorm';
import { forMembers, seen } from '../../people/visibility.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import { isLiving } from '../register-graph.ts';
import type { AuditedMembers } from './audit-input.ts';

/** A serial of twelve digits and three years of four. */
const WIDTH = 24;

/** The year of a date where it, however vague, leaves no other; four digits, 0000 for none. */
const year = (earliest: string, latest: string): string =>
  `case when date_trunc('year', ${earliest}) = date_trunc('year', ${latest}) then to_char(${earliest}, 'YYYY') else '0000' end`;

/** Members of a line that whoever asks may see, in the order of their numbers (individual_line_index); what the snapshot does not know is left out. */
export async function findAuditedMembers(
  manager: EntityManager,
  lineId: string,
): Promise<(snapshot: LineageSnapshot) => AuditedMembers> {
  const hatched = year('i.hatched_earliest', 'i.hatched_latest');
  const [row] = await manager.query<{ members: string | null }[]>(
    `select string_agg(lpad(i.number::text, 12, '0') || ${hatched} ||
       case when i.source_id is null then ${hatched} else coalesce(nullif(${hatched}, '0000'), ${year('o.date_earliest', 'o.date_latest')}) end ||
       case when i.status = 'alive' then '9999' when i.status = 'died' then ${year('i.died_earliest', 'i.died_latest')} else '0000' end,
       '' order by i.number) as members
     from individual i left join source o on o.id = i.source_id and ${seen('source', 'o')}
     where i.line_id = $1 and i.withdrawn_at is null and ${seen('individual', 'i')}`,
    [lineId],
  );
  const text = row?.members ?? '';
  return (snapshot) => numbered(snapshot, text);
}

function numbered(snapshot: LineageSnapshot, text: string): AuditedMembers {
  const count = text.length / WIDTH;
  const members = new Int32Array(count);
  const living = new Uint8Array(count);
  const years = [new Int16Array(count), new Int16Array(count), new Int16Array(count)] as const;
  let filled = 0;
  for (let place = 0; place < count; place++) {
    const from = place * WIDTH;
    const member = snapshot.graph.bySerial.find(Number(text.slice(from, from + 12)));
    if (member < 0 || !snapshot.isThere(member)) continue;
    members[filled] = member;
    living[filled] = isLiving(snapshot.graph, member) ? 1 : 0;
    years.forEach((list, of) => (list[filled] = Number(text.slice(from + 12 + 4 * of, from + 16 + 4 * of))));
    filled++;
  }
  const [hatched, begun, ended] = years;
  return {
    members: members.slice(0, filled),
    living: living.slice(0, filled),
    hatched: hatched.slice(0, filled),
    begun: begun.slice(0, filled),
    ended: ended.slice(0, filled),
  };
}

/** How many members one keeper has. */
export interface KeeperCount {
  readonly keeper: string | null;
  readonly keeperId: string | null;
  readonly members: number;
  readonly living: number;
}

/** Members by keeper, those with the most living first; strangers are told none. */
export function countByKeeper(manager: EntityManager, lineId: string, most: number): Promise<KeeperCount[]> {
  return manager.query<KeeperCount[]>(
    `select k.name as keeper, k.id as "keeperId", count(*)::integer as members,
       count(*) filter (where i.status = 'alive')::integer as living
     from individual i join keeper k on k.id = i.keeper_id
     where i.line_id = $1 and i.withdrawn_at is null and ${seen('individual', 'i')} and ${forMembers('true')}
     group by k.id order by living desc, members desc, k.name limit $2`,
    [lineId, most],
  );
}

/** What a table of members says of each besides its figures. */
export interface MemberRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly sex: string;
  readonly status: string;
  readonly hatched: string | null;
  readonly died: string | null;
  readonly keeper: string | null;
}

/** The same members for a table, in the order of their numbers (individual_line_index). */
export function readMemberRows(manager: EntityManager, lineId: string): Promise<MemberRow[]> {
  return manager.query<MemberRow[]>(
    `select i.id, i.number::text, i.code, i.sex, i.status, i.hatched, i.died, ${forMembers('k.name')} as keeper
     from individual i join keeper k on k.id = i.keeper_id
     where i.line_id = $1 and i.withdrawn_at is null and ${seen('individual', 'i')} order by i.number`,
    [lineId],
  );
}
