import type { EntityManager } from 'typeorm';
import { seen } from '../../people/visibility.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere } from '../keyset.ts';
import { findPlaces, inOrder, type Order } from '../places.queries.ts';
import { seenClutch, seenPairing } from '../seen-records.ts';
import type { ClutchQuery } from './clutch.dto.ts';
import { readClutchItems } from './clutch.queries.ts';
import type { ClutchItemView } from './clutch.view.ts';

/** Index: clutch_laid_index, read backwards. */
const newestFirst: Order = {
  from: 'clutch c',
  id: 'c.id',
  columns: [
    { sql: 'c.laid_earliest', type: 'date' },
    { sql: 'c.laid_latest', type: 'date' },
    { sql: 'c.id', type: 'uuid' },
  ],
  isFirstNullable: true,
  isDescending: true,
};

/**
 * A page of the clutches that may be seen, the newest first, those without a date last. Filters by clutch_pairing_index,
 * clutch_candidate_individual_index, clutch_pair_a_index, clutch_pair_b_index, clutch_code_unique, clutch_keeper_index,
 * clutch_stage_index, individual_line_index.
 */
export async function listClutches(manager: EntityManager, query: ClutchQuery): Promise<Page<ClutchItemView>> {
  const filters = clutchConditions(query);
  const after = query.after === undefined ? null : decodeCursor('laid', newestFirst.columns.length, query.after);
  const places = await findPlaces(manager, newestFirst, filters, after, query.limit + 1);
  const items = await readClutchItems(
    manager,
    places.map((place) => place.id),
  );
  const total = query.total ? await countWhere(manager, 'clutch c', filters) : undefined;
  return toPage(
    inOrder(places, items),
    query.limit,
    (row) => row.item,
    (row) => encodeCursor('laid', row.keys),
    total,
  );
}

function clutchConditions(query: ClutchQuery): Conditions {
  const conditions = new Conditions();
  conditions.add('c.withdrawn_at is null');
  conditions.add(seenClutch('c'));
  if (query.keeperId !== undefined) conditions.add(`c.keeper_id = ${conditions.bind(query.keeperId)}`);
  if (query.pairingId !== undefined)
    conditions.add(
      `c.pairing_id = (select p.id from pairing p where p.id = ${conditions.bind(query.pairingId)} and ${seenPairing('p')})`,
    );
  if (query.code !== undefined) conditions.add(`lower(c.code) = lower(${conditions.bind(query.code)})`);
  if (query.laidFrom !== undefined)
    conditions.add(`c.laid_latest >= ${conditions.bind(`${query.laidFrom}-01-01`)}::date`);
  if (query.laidTo !== undefined)
    conditions.add(`c.laid_earliest <= ${conditions.bind(`${query.laidTo}-12-31`)}::date`);
  // the word stands in the statement, so that the index of stages answers it
  if (query.stage !== undefined) conditions.add(`c.stage = '${query.stage}'`);
  if (query.lineId !== undefined) {
    const member = `(select i.id from individual i where i.line_id = ${conditions.bind(query.lineId)} and ${seen('individual', 'i')})`;
    conditions.add(`c.id in (select clutch_id from clutch_candidate where individual_id in ${member}
      union select clutch_id from clutch_pair where a_id in ${member} union select clutch_id from clutch_pair where b_id in ${member}
      union select y.clutch_id from individual y where y.id in ${member} and y.withdrawn_at is null)`);
  }
  if (query.parentId !== undefined) {
    const parent = `(select i.id from individual i where i.id = ${conditions.bind(query.parentId)} and ${seen('individual', 'i')})`;
    conditions.add(`c.id in (select clutch_id from clutch_candidate where individual_id = ${parent}
      union select clutch_id from clutch_pair where a_id = ${parent} union select clutch_id from clutch_pair where b_id = ${parent})`);
  }
  return conditions;
}
