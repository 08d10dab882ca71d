import type { EntityManager } from 'typeorm';
import { groupNotation } from '../../../shared/group-notation.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex, Status } from '../../../shared/vocabulary.ts';
import { owned, seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, likePattern, orderBy, type SortColumn } from '../keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { PrivateRecords } from '../private-records.ts';
import { seenClutch, seenPairing } from '../seen-records.ts';
import { clutchTitle } from '../titles.ts';
import type { PairingQuery } from './pairing.dto.ts';
import type { PairingMemberView, PairingView } from './pairing.view.ts';

interface MemberRow {
  readonly id: string;
  readonly individualId: string;
  readonly number: string;
  readonly code: string | null;
  readonly sex: Sex;
  readonly status: Status;
  readonly joined: string | null;
  readonly left: string | null;
  readonly isSeen: boolean;
}

interface PairingRow extends RecordRow {
  readonly name: string;
  readonly keeper: string;
  readonly keeperId: string;
  readonly notes: string | null;
  readonly members: MemberRow[];
  readonly clutches: { id: string; code: string | null; laid: string | null; eggs: number | null }[];
}

const byName: readonly SortColumn[] = [
  { sql: 'lower(p.name)', type: 'text' },
  { sql: 'p.id', type: 'uuid' },
];

/** Members by pairing_member_pairing_index, clutches by clutch_pairing_index. */
/** The dates of a stay are told to whoever may see the animal, and to the keeper of the pairing, who entered them. */
const select = (): string => `
  select ${recordColumns('p')}, p.name, k.name as keeper, p.keeper_id as "keeperId", p.notes,
    coalesce((select json_agg(json_build_object('id', m.id, 'individualId', i.id, 'number', i.number::text, 'code', i.code, 'sex', i.sex,
        'status', i.status, 'isSeen', ${seen('individual', 'i')}, 'joined', case when ${datesSeen()} then m.joined end,
        'left', case when ${datesSeen()} then m."left" end)
        order by ${seen('individual', 'i')} desc, (m."left" is not null), m.joined_earliest, i.number)
      from pairing_member m join individual i on i.id = m.individual_id
      where m.pairing_id = p.id and i.withdrawn_at is null), '[]') as members,
    coalesce((select json_agg(c) from (select id, code, laid, eggs from clutch c where pairing_id = p.id and withdrawn_at is null and ${seenClutch('c')}
      order by laid_earliest desc nulls last, id desc limit 200) c), '[]') as clutches
  from pairing p join keeper k on k.id = p.keeper_id`;

const datesSeen = (): string => `(${seen('individual', 'i')} or ${owned('p')})`;

/** One pairing by its id (primary key), or null where there is none or it may not be seen. */
export async function findPairing(manager: EntityManager, id: string): Promise<PairingView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<PairingRow[]>(`${select()} where p.id = $1 and ${seenPairing('p')}`, [id]);
  return row ? toPairingView(row, new PrivateRecords()) : null;
}

/** A page of the pairings that may be seen, by name (pairing_keeper_index, pairing_member_individual_index; else read and sorted: a club has thousands). */
export async function listPairings(manager: EntityManager, query: PairingQuery): Promise<Page<PairingView>> {
  const conditions = new Conditions();
  conditions.add('p.withdrawn_at is null');
  conditions.add(seenPairing('p'));
  if (query.keeperId !== undefined) conditions.add(`p.keeper_id = ${conditions.bind(query.keeperId)}`);
  if (query.individualId !== undefined)
    conditions.add(
      `p.id in (select m.pairing_id from pairing_member m join individual i on i.id = m.individual_id
         where i.id = ${conditions.bind(query.individualId)} and ${seen('individual', 'i')})`,
    );
  if (query.q !== undefined) conditions.add(`lower(p.name) like ${conditions.bind(likePattern(query.q))}`);
  const total = query.total ? await countWhere(manager, 'pairing p', conditions) : undefined;
  if (query.after !== undefined) conditions.addAfter(byName, decodeCursor('name', byName.length, query.after), false);
  const rows = await manager.query<PairingRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(byName, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  const concealed = new PrivateRecords();
  return toPage(
    rows,
    query.limit,
    (row) => toPairingView(row, concealed),
    (row) => encodeCursor('name', [row.name.toLowerCase(), row.id]),
    total,
  );
}

function toPairingView(row: PairingRow, concealed: PrivateRecords): PairingView {
  const isHere = (member: MemberRow): boolean =>
    member.left === null && member.status !== 'died' && member.status !== 'gone';
  const shown = row.members.filter((member) => member.isSeen);
  const here = shown.filter(isHere);
  return {
    ...toRecordView(row),
    name: row.name,
    keeper: row.keeper,
    keeperId: row.keeperId,
    notes: row.notes,
    notation: groupNotation((here.length > 0 ? here : shown).map((member) => member.sex)),
    members: row.members.map((member) => toMemberView(member, concealed)),
    clutches: row.clutches.map((clutch) => ({
      id: clutch.id,
      title: clutchTitle(clutch),
      laid: clutch.laid,
      eggs: clutch.eggs,
    })),
  };
}

function toMemberView(row: MemberRow, concealed: PrivateRecords): PairingMemberView {
  return {
    id: row.id,
    individual: concealed.animal({
      id: row.individualId,
      number: formatRegistryNumber(row.number),
      code: row.code,
      sex: row.sex,
      status: row.status,
      isSeen: row.isSeen,
    }),
    joined: row.joined,
    left: row.left,
  };
}
