import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { TransferState } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { acting } from '../../platform/acting.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import { PrivateRecords, type ReferredAnimal } from '../../register/private-records.ts';
import type { AnimalStatusView } from '../../register/individuals/individual.view.ts';
import { concerned, seenTransfer } from './seen-transfers.ts';
import type { TransferQuery } from './transfer.dto.ts';
import type { TransferAnimalView, TransferItemView, TransferKeeperView, TransferView } from './transfer.view.ts';
import { stepsFor } from './transfer-steps.ts';
import { warningsOf } from './transfer-warnings.queries.ts';

type AnimalRow = ReferredAnimal & Pick<AnimalStatusView, 'sex' | 'status'>;
type WholeAnimalRow = AnimalRow &
  Pick<TransferAnimalView, 'species' | 'line' | 'hatched' | 'outOfWater' | 'givenCode' | 'returned'>;

interface ItemRow {
  readonly id: string;
  readonly version: number;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly state: TransferState;
  readonly from: TransferKeeperView;
  readonly to: TransferKeeperView | null;
  readonly leftTo: string | null;
  readonly date: string | null;
  readonly count: number;
  readonly first: AnimalRow[];
}

interface WholeRow extends ItemRow {
  readonly note: string | null;
  readonly reason: string | null;
  readonly settledBy: string | null;
  readonly settledAt: Date | null;
  readonly animals: WholeAnimalRow[];
}

const newestFirst: readonly SortColumn[] = [{ sql: 't.id', type: 'uuid' }];

const animalFields =
  (): string => `'id', i.id, 'number', i.number::text, 'code', i.code, 'sex', i.sex, 'status', i.status,
  'isSeen', ${seen('individual', 'i')}`;

/** Animals by transfer_animal_pkey, at most 200 of a transfer. Words between the two go to nobody else, who took animals out of the club to the giver. */
const itemColumns = (): string => `t.id, t.version, t.created_at as "createdAt", t.updated_at as "updatedAt", t.state,
  json_build_object('id', k.id, 'name', k.name) as from,
  case when r.id is not null then json_build_object('id', r.id, 'name', r.name) end as to,
  case when ${concerned('t')} then t.left_to end as "leftTo", t.date,
  (select count(*)::integer from transfer_animal a where a.transfer_id = t.id) as count,
  (select json_agg(f.animal) from (select json_build_object(${animalFields()}) as animal from transfer_animal a
     join individual i on i.id = a.individual_id where a.transfer_id = t.id
     order by (${seen('individual', 'i')}) is true desc, i.number limit 3) f) as first`;

const wholeColumns = (): string => `${itemColumns()}, case when ${concerned('t')} then t.note end as note,
  case when ${concerned('t')} then t.reason end as reason, s.name as "settledBy", t.settled_at as "settledAt",
  (select json_agg(json_build_object(${animalFields()}, 'species', sp.scientific_name, 'line', l.name, 'hatched', i.hatched,
       'outOfWater', i.out_of_water, 'givenCode', case when ${concerned('t')} then a.given_code end, 'returned', a.returned)
     order by ${seen('individual', 'i')} desc, i.number)
   from transfer_animal a join individual i on i.id = a.individual_id join species sp on sp.id = i.species_id
     left join line l on l.id = i.line_id where a.transfer_id = t.id) as animals`;

const tables = `transfer t join keeper k on k.id = t.keeper_id left join keeper r on r.id = t.to_id left join keeper s on s.id = t.settled_by_id`;

/** One transfer by its id (primary key), or null where there is none or it may not be seen. */
export async function findTransfer(manager: EntityManager, id: string): Promise<TransferView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<WholeRow[]>(
    `select ${wholeColumns()} from ${tables} where t.id = $1 and ${seenTransfer('t')}`,
    [id],
  );
  if (!row) return null;
  const concealed = new PrivateRecords();
  return {
    ...toItemView(row, concealed),
    note: row.note,
    reason: row.reason,
    settledBy: row.settledBy,
    settledAt: row.settledAt?.toISOString() ?? null,
    animals: row.animals.map((animal) => toAnimalView(animal, concealed)),
    warnings: row.state === 'offered' ? await warningsOf(manager, id) : [],
    steps: stepsFor(acting(), {
      state: row.state,
      keeperId: row.from.id,
      toId: row.to?.id ?? null,
      count: row.count,
      back: row.animals.filter(({ returned }) => returned !== null).length,
    }),
  };
}

/** A page of the transfers that may be seen, newest first: transfer_keeper_index, transfer_to_index, else the primary key. */
export async function listTransfers(manager: EntityManager, query: TransferQuery): Promise<Page<TransferItemView>> {
  const conditions = conditionsOf(query);
  const total = query.total ? await countWhere(manager, 'transfer t', conditions) : undefined;
  if (query.after !== undefined)
    conditions.addAfter(newestFirst, decodeCursor('transfer', newestFirst.length, query.after), true);
  const rows = await manager.query<ItemRow[]>(
    `select ${itemColumns()} from ${tables} where ${conditions.sql} order by ${orderBy(newestFirst, true)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  const concealed = new PrivateRecords();
  return toPage(
    rows,
    query.limit,
    (row) => toItemView(row, concealed),
    (row) => encodeCursor('transfer', [row.id]),
    total,
  );
}

function conditionsOf({ side, state, kind, individualId }: TransferQuery): Conditions {
  const conditions = new Conditions();
  conditions.add(seenTransfer('t'));
  if (side !== undefined)
    conditions.add(`t.${side === 'given' ? 'keeper_id' : 'to_id'} = ${conditions.bind(acting().id)}`);
  if (state !== undefined) conditions.add(`t.state = ${conditions.bind(state)}`);
  if (kind !== undefined) conditions.add(`t.to_id is ${kind === 'departure' ? 'null' : 'not null'}`);
  if (individualId !== undefined) {
    const id = conditions.bind(individualId);
    conditions.add(
      `t.id in (select a.transfer_id from transfer_animal a join individual i on i.id = a.individual_id
         where (i.id = ${id} or i.merged_into_id = ${id}) and ${seen('individual', 'i')})`,
    );
  }
  return conditions;
}

function toItemView(row: ItemRow, concealed: PrivateRecords): TransferItemView {
  const { id, version, state, from, to, leftTo, date, count } = row;
  return {
    id,
    version,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    kind: to === null ? 'departure' : 'handover',
    state,
    from,
    to,
    leftTo,
    date,
    count,
    first: row.first.map((animal) => concealed.animal(withCheck(animal))),
  };
}

function toAnimalView(row: WholeAnimalRow, concealed: PrivateRecords): TransferAnimalView {
  const animal = concealed.animal(withCheck(row));
  if (!animal.isPrivate) return animal;
  return { ...animal, species: null, line: null, hatched: null, outOfWater: null, givenCode: null, returned: null };
}

const withCheck = <Animal extends ReferredAnimal>(animal: Animal): Animal => ({
  ...animal,
  number: formatRegistryNumber(animal.number ?? ''),
});
