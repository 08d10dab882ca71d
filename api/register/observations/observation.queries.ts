import type { EntityManager } from 'typeorm';
import { forMembers } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere } from '../keyset.ts';
import { findPlaces, inOrder, type Order } from '../places.queries.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { seenObservation } from '../seen-records.ts';
import type { ObservationQuery } from './observation.dto.ts';
import type { ObservationView } from './observation.view.ts';

type ObservationRow = RecordRow & Omit<ObservationView, 'createdAt' | 'updatedAt' | 'withdrawn'>;

const select = (): string => `
  select ${recordColumns('o')}, ${forMembers('k.name')} as keeper, ${forMembers('o.keeper_id')} as "keeperId", o.individual_id as "individualId", o.pairing_id as "pairingId",
    o.clutch_id as "clutchId", o.source_id as "sourceId", o.kind, o.observed_on as "observedOn", o.text, o.svl_mm as "svlMm", o.mass_g as "massG", o.visibility
  from observation o join keeper k on k.id = o.keeper_id`;

const newestFirst: Order = {
  from: 'observation o',
  id: 'o.id',
  columns: [
    { sql: 'o.observed_on_latest', type: 'date' },
    { sql: 'o.id', type: 'uuid' },
  ],
  isFirstNullable: true,
  isDescending: true,
};

/** One remark by its id (primary key), or null where there is none or it may not be seen. */
export async function findObservation(manager: EntityManager, id: string): Promise<ObservationView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<ObservationRow[]>(`${select()} where o.id = $1 and ${seenObservation('o')}`, [id]);
  return row ? toObservationView(row) : null;
}

/**
 * A page of remarks, newest first: observation_individual_index, observation_pairing_index, observation_clutch_index,
 * observation_source_index; all remarks of the club, without any of these, are read and sorted.
 */
export async function listObservations(
  manager: EntityManager,
  query: ObservationQuery,
): Promise<Page<ObservationView>> {
  const conditions = new Conditions();
  conditions.add('o.withdrawn_at is null');
  conditions.add(seenObservation('o'));
  if (query.visibility !== undefined) conditions.add(`o.visibility = ${conditions.bind(query.visibility)}`);
  if (query.individualId !== undefined) conditions.add(`o.individual_id = ${conditions.bind(query.individualId)}`);
  if (query.pairingId !== undefined) conditions.add(`o.pairing_id = ${conditions.bind(query.pairingId)}`);
  if (query.clutchId !== undefined) conditions.add(`o.clutch_id = ${conditions.bind(query.clutchId)}`);
  if (query.sourceId !== undefined) conditions.add(`o.source_id = ${conditions.bind(query.sourceId)}`);
  if (query.kind !== undefined) conditions.add(`o.kind = ${conditions.bind(query.kind)}`);
  const after = query.after === undefined ? null : decodeCursor('observed', newestFirst.columns.length, query.after);
  const places = await findPlaces(manager, newestFirst, conditions, after, query.limit + 1);
  const rows = await manager.query<ObservationRow[]>(`${select()} where o.id = any($1) and ${seenObservation('o')}`, [
    places.map((place) => place.id),
  ]);
  const total = query.total ? await countWhere(manager, 'observation o', conditions) : undefined;
  return toPage(
    inOrder(places, rows),
    query.limit,
    (row) => toObservationView(row.item),
    (row) => encodeCursor('observed', row.keys),
    total,
  );
}

function toObservationView(row: ObservationRow): ObservationView {
  return {
    ...toRecordView(row),
    keeper: row.keeper,
    keeperId: row.keeperId,
    individualId: row.individualId,
    pairingId: row.pairingId,
    clutchId: row.clutchId,
    sourceId: row.sourceId,
    kind: row.kind,
    observedOn: row.observedOn,
    text: row.text,
    svlMm: row.svlMm,
    massG: row.massG,
    visibility: row.visibility,
  };
}
