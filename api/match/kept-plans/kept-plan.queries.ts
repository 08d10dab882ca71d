import type { EntityManager } from 'typeorm';
import { forMembers } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import type { Kind } from '../../register/change.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../../register/record.view.ts';
import { seenIn } from '../../register/seen-records.ts';
import { KeptPlan } from './kept-plan.entity.ts';
import type { KeptPlanQuery } from './kept-plan.dto.ts';
import type { PairState } from './kept-plan-pair.entity.ts';
import type { KeptPlanItemView } from './kept-plan.view.ts';

type PlanRow = RecordRow &
  Pick<
    KeptPlanItemView,
    'keeper' | 'keeperId' | 'name' | 'notes' | 'visibility' | 'revision' | 'hasRegisterMoved' | 'pairCounts' | 'line'
  >;

const newestFirst: readonly SortColumn[] = [{ sql: 'p.id', type: 'uuid' }];

/** Pairs are counted by the primary key of kept_plan_pair. */
const select = (): string => `
  select ${recordColumns('p')}, ${forMembers('k.name')} as keeper, ${forMembers('p.keeper_id')} as "keeperId", p.name, p.notes, p.visibility,
    p.revision, p.revision <> (select revision from lineage_revision) as "hasRegisterMoved",
    json_build_object('id', l.id, 'name', l.name) as line,
    (select json_build_object('proposed', count(*) filter (where state = 'proposed'), 'accepted', count(*) filter (where state = 'accepted'),
       'declined', count(*) filter (where state = 'declined')) from kept_plan_pair where plan_id = p.id) as "pairCounts"
  from kept_plan p join keeper k on k.id = p.keeper_id join line l on l.id = p.line_id`;

/** One kept plan without its pairs, by its id (primary key), or null where there is none or it may not be seen. */
export async function findKeptPlan(manager: EntityManager, id: string): Promise<KeptPlanItemView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<PlanRow[]>(`${select()} where p.id = $1 and ${seenIn.kept_plan('p')}`, [id]);
  return row ? toItemView(row) : null;
}

/** Kept plans as the functions that change records know them. */
export const keptPlanKind: Kind<KeptPlan, KeptPlanItemView> = { word: 'plan', entity: KeptPlan, find: findKeptPlan };

/** A page of the kept plans that may be seen, the newest first: kept_plan_line_index, kept_plan_keeper_index, else the primary key. */
export async function listKeptPlans(manager: EntityManager, query: KeptPlanQuery): Promise<Page<KeptPlanItemView>> {
  const conditions = new Conditions();
  conditions.add('p.withdrawn_at is null');
  conditions.add(seenIn.kept_plan('p'));
  if (query.lineId !== undefined) conditions.add(`p.line_id = ${conditions.bind(query.lineId)}`);
  if (query.keeperId !== undefined) conditions.add(`p.keeper_id = ${conditions.bind(query.keeperId)}`);
  const total = query.total ? await countWhere(manager, 'kept_plan p', conditions) : undefined;
  if (query.after !== undefined)
    conditions.addAfter(newestFirst, decodeCursor('kept', newestFirst.length, query.after), true);
  const rows = await manager.query<PlanRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(newestFirst, true)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toItemView, (row) => encodeCursor('kept', [row.id]), total);
}

function toItemView(row: PlanRow): KeptPlanItemView {
  const { keeper, keeperId, name, notes, visibility, revision, hasRegisterMoved, pairCounts, line } = row;
  return {
    ...toRecordView(row),
    keeper,
    keeperId,
    name,
    notes,
    line,
    visibility,
    revision,
    hasRegisterMoved,
    pairCounts,
  };
}

/** A pair of a kept plan as its row stands, with the pairing that it became as far as that may be seen. */
export interface PairRow {
  readonly place: number;
  readonly maleId: string;
  readonly femaleId: string;
  readonly state: PairState;
  readonly reason: string | null;
  readonly warnings: readonly string[];
  readonly pairingId: string | null;
  readonly pairingName: string | null;
  readonly isPairingSeen: boolean;
  readonly isPairingWithdrawn: boolean;
}

/** The pairs of a kept plan, in their order (primary keys). */
export async function readPairRows(manager: EntityManager, planId: string): Promise<PairRow[]> {
  return manager.query<PairRow[]>(
    `select c.place, c.male_id as "maleId", c.female_id as "femaleId", c.state, c.reason, c.warnings, c.pairing_id as "pairingId",
       r.name as "pairingName", r.id is not null and ${seenIn.pairing('r')} as "isPairingSeen",
       coalesce(r.withdrawn_at is not null, false) as "isPairingWithdrawn"
     from kept_plan_pair c left join pairing r on r.id = c.pairing_id where c.plan_id = $1 order by c.place`,
    [planId],
  );
}

/** Stays of animals that they have not left, in standing pairings (pairing_member_individual_index); ids only, whoever asks. */
export async function readHousedIn(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string[]>> {
  const rows = await manager.query<{ id: string; pairings: string[] }[]>(
    `select individual_id as id, array_agg(distinct pairing_id) as pairings from pairing_member
     where individual_id = any($1::uuid[]) and "left" is null and stands group by individual_id`,
    [ids],
  );
  return new Map(rows.map(({ id, pairings }) => [id, pairings]));
}

/** Names of pairings, of those that may be seen (primary key). */
export async function readPairingNames(manager: EntityManager, ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await manager.query<{ id: string; name: string }[]>(
    `select p.id, p.name from pairing p where p.id = any($1::uuid[]) and ${seenIn.pairing('p')}`,
    [ids],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}
