import type { EntityManager } from 'typeorm';
import { forMembers, isStranger } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, orderBy, type SortColumn } from '../../register/keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../../register/record.view.ts';
import { seenIn } from '../../register/seen-records.ts';
import { placeWarnings } from '../places/place-warnings.ts';
import { withoutPositions } from '../places/words-of-place.ts';
import type { Bears } from '../standing-of-claim.ts';
import type { ClaimQuery } from './claim.dto.ts';
import type { ClaimView, PlaceView } from './claim.view.ts';
import { shownPlace } from './shown-place.ts';
import { explainStanding } from './standing-in-words.ts';

type Place = Omit<PlaceView, 'dataGeneralizations' | 'informationWithheld'>;
type ClaimRow = RecordRow &
  Omit<ClaimView, 'createdAt' | 'updatedAt' | 'withdrawn' | 'place' | 'standing' | 'warnings' | 'evidence'> &
  Place & { readonly bears: readonly Bears[]; readonly sort: string };

const inOrder: readonly SortColumn[] = [{ sql: 'c.id', type: 'uuid' }];

/** What the standing of a claim depends on, as JSON (evidence_claim_index). */
export const bearsOn = (claim: string): string => `
  (select coalesce(json_agg(json_build_object('id', e.id, 'kind', e.kind, 'bearing', e.bearing, 'names', e.names,
      'issuedBy', e.issued_by, 'repeatsId', e.repeats_id, 'review', e.review, 'isWithdrawn', e.withdrawn_at is not null) order by e.id), '[]')
    from evidence e where e.claim_id = ${claim})`;

const select = (): string => `
  select ${recordColumns('c')}, ${forMembers('k.name')} as keeper, ${forMembers('c.keeper_id')} as "keeperId", c.source_id as "sourceId",
    c.line_id as "lineId", c.individual_id as "individualId", c.aspect, c.value, ${forMembers('c.stated_by')} as "statedBy", c.stated_on as "statedOn",
    c.verbatim_locality as "verbatimLocality", c.locality, c.country_code as "countryCode", c.state_province as "stateProvince",
    c.decimal_latitude as "decimalLatitude", c.decimal_longitude as "decimalLongitude", c.geodetic_datum as "geodeticDatum",
    c.coordinate_uncertainty_m as "coordinateUncertaintyM", c.georeferenced_by as "georeferencedBy",
    c.georeference_sources as "georeferenceSources", ${forMembers('c.notes')} as notes, ${bearsOn('c.id')} as bears, c.id::text as sort
  from claim c join keeper k on k.id = c.keeper_id`;

/** One claim by its id (primary key), or null where there is none or it may not be seen. */
export async function findClaim(manager: EntityManager, id: string): Promise<ClaimView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<ClaimRow[]>(`${select()} where c.id = $1 and ${seenIn.claim('c')}`, [id]);
  return row ? toClaimView(row) : null;
}

/** A page of claims in the order in which they were entered: claim_source_index, claim_line_index, claim_individual_index, else the primary key. */
export async function listClaims(manager: EntityManager, query: ClaimQuery): Promise<Page<ClaimView>> {
  const conditions = new Conditions();
  conditions.add('c.withdrawn_at is null');
  conditions.add(seenIn.claim('c'));
  if (query.sourceId !== undefined) conditions.add(`c.source_id = ${conditions.bind(query.sourceId)}`);
  if (query.lineId !== undefined) conditions.add(`c.line_id = ${conditions.bind(query.lineId)}`);
  if (query.individualId !== undefined) conditions.add(`c.individual_id = ${conditions.bind(query.individualId)}`);
  if (query.aspect !== undefined) conditions.add(`c.aspect = ${conditions.bind(query.aspect)}`);
  const total = query.total ? await countWhere(manager, 'claim c', conditions) : undefined;
  if (query.after !== undefined)
    conditions.addAfter(inOrder, decodeCursor('entered', inOrder.length, query.after), false);
  const rows = await manager.query<ClaimRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(inOrder, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toClaimView, (row) => encodeCursor('entered', [row.sort]), total);
}

/** What claims can be about. */
export interface ClaimSubjects {
  readonly individualIds: readonly string[];
  readonly sourceIds: readonly string[];
}

/** Standing claims about any of these records, those that may be seen, the oldest first (claim_individual_index, claim_source_index). */
export async function findClaimsAbout(
  manager: EntityManager,
  { individualIds, sourceIds }: ClaimSubjects,
  limit: number,
): Promise<ClaimView[]> {
  const rows = await manager.query<ClaimRow[]>(
    `${select()} where c.withdrawn_at is null and (c.individual_id = any($1) or c.source_id = any($2)) and ${seenIn.claim('c')} order by c.id limit $3`,
    [individualIds, sourceIds, limit],
  );
  return rows.map(toClaimView);
}

function toClaimView(row: ClaimRow): ClaimView {
  const counted = row.bears.filter(({ isWithdrawn }) => !isWithdrawn);
  const count = (review: Bears['review']): number => counted.filter((piece) => piece.review === review).length;
  const { standing, because, raisedBy, decidedBy } = explainStanding(row.bears);
  return {
    ...toRecordView(row),
    keeper: row.keeper,
    keeperId: row.keeperId,
    sourceId: row.sourceId,
    lineId: row.lineId,
    individualId: row.individualId,
    aspect: row.aspect,
    value: isStranger() ? withoutPositions(row.value) : row.value,
    statedBy: row.statedBy,
    statedOn: row.statedOn,
    place: shownPlace(row, isStranger()),
    notes: row.notes,
    standing: { standing, because, raisedBy, decidedBy: isStranger() ? [] : [...decidedBy] },
    // a stranger would learn on which side of a border the place lies
    warnings: isStranger() ? [] : placeWarnings(row),
    evidence: { pending: count('pending'), accepted: count('accepted'), rejected: count('rejected') },
  };
}
