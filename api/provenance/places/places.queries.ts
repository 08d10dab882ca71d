import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { SourceKind } from '../../../shared/vocabulary.ts';
import { isStranger, seen } from '../../people/visibility.ts';
import { Conditions, countWhere } from '../../register/keyset.ts';
import { seenIn } from '../../register/seen-records.ts';
import { sourceTitle } from '../../register/titles.ts';
import { bearsOn } from '../claims/claim.queries.ts';
import { shownPlace } from '../claims/shown-place.ts';
import { standingOfClaim, type Bears } from '../standing-of-claim.ts';
import type { ExactPlace } from './generalised-place.ts';
import { withoutPositions } from './words-of-place.ts';
import type { PlacesQuery } from './places.dto.ts';
import type { ClaimedPlaceView, PlacesView } from './places.view.ts';

type PlaceRow = ExactPlace & {
  readonly claimId: string;
  readonly value: string;
  readonly sourceId: string | null;
  readonly lineId: string | null;
  readonly individualId: string | null;
  readonly sourceKind: SourceKind | null;
  readonly sourceDate: string | null;
  readonly lineName: string | null;
  readonly number: string | null;
  readonly code: string | null;
  readonly founders: number;
  readonly bears: readonly Bears[];
};

/** Founders of a claim that whoever asks may see (individual_source_index, individual_line_index). */
const founders = (): string => `
  case when c.individual_id is not null then 1 else (
    select count(*)::integer from individual f where f.withdrawn_at is null and ${seen('individual', 'f')}
      and (f.source_id = c.source_id or f.line_id = c.line_id and f.source_id is not null)) end`;

/**
 * Claims of a place that has coordinates or a country, those that whoever asks may see, in the order in which they were entered (primary
 * key, or the index of what they are about). A claim is of a line, or of a species, where its own record is, or an animal of its source that may be seen.
 */
export async function findPlaces(manager: EntityManager, query: PlacesQuery): Promise<PlacesView> {
  const conditions = placeConditions(query);
  const total = await countWhere(manager, from, conditions);
  const rows = await manager.query<PlaceRow[]>(
    `select c.id as "claimId", c.value, c.source_id as "sourceId", c.line_id as "lineId", c.individual_id as "individualId",
       s.kind as "sourceKind", s.date as "sourceDate", l.name as "lineName", i.number::text, i.code, ${founders()} as founders,
       c.verbatim_locality as "verbatimLocality", c.locality, c.country_code as "countryCode", c.state_province as "stateProvince",
       c.decimal_latitude as "decimalLatitude", c.decimal_longitude as "decimalLongitude", c.geodetic_datum as "geodeticDatum",
       c.coordinate_uncertainty_m as "coordinateUncertaintyM", c.georeferenced_by as "georeferencedBy",
       c.georeference_sources as "georeferenceSources", ${bearsOn('c.id')} as bears
     from ${from} where ${conditions.sql} order by c.id limit ${query.limit}`,
    conditions.parameters,
  );
  return { items: rows.map(toPlaceView), total, isGeneralised: isStranger() };
}

const from = `claim c left join source s on s.id = c.source_id left join line l on l.id = c.line_id left join individual i on i.id = c.individual_id`;

function placeConditions({ lineId, speciesId }: PlacesQuery): Conditions {
  const conditions = new Conditions();
  conditions.add('c.withdrawn_at is null');
  conditions.add(`c.aspect = 'locality'`);
  conditions.add('(c.decimal_latitude is not null or c.country_code is not null)');
  conditions.add('coalesce(s.withdrawn_at, l.withdrawn_at, i.withdrawn_at) is null');
  conditions.add(seenIn.claim('c'));
  const animal = (column: string, place: string): string =>
    `exists (select from individual f where f.source_id = c.source_id and f.${column} = ${place} and f.withdrawn_at is null and ${seen('individual', 'f')})`;
  if (lineId !== undefined) {
    const place = conditions.bind(lineId);
    conditions.add(`(c.line_id = ${place} or i.line_id = ${place} or ${animal('line_id', place)})`);
  }
  if (speciesId !== undefined) {
    const place = conditions.bind(speciesId);
    conditions.add(`(l.species_id = ${place} or i.species_id = ${place} or ${animal('species_id', place)})`);
  }
  return conditions;
}

function toPlaceView(row: PlaceRow): ClaimedPlaceView {
  return {
    claimId: row.claimId,
    value: isStranger() ? withoutPositions(row.value) : row.value,
    ...aboutOf(row),
    standing: standingOfClaim(row.bears).standing,
    founders: row.founders,
    place: shownPlace(row, isStranger()),
  };
}

function aboutOf(row: PlaceRow): Pick<ClaimedPlaceView, 'about' | 'aboutId' | 'aboutTitle'> {
  if (row.sourceId !== null) {
    const aboutTitle = sourceTitle({ kind: row.sourceKind ?? 'unknown', date: row.sourceDate });
    return { about: 'source', aboutId: row.sourceId, aboutTitle };
  }
  if (row.lineId !== null) return { about: 'line', aboutId: row.lineId, aboutTitle: row.lineName ?? '' };
  const number = formatRegistryNumber(row.number ?? '');
  const aboutTitle = row.code === null ? number : `${row.code} (${number})`;
  return { about: 'individual', aboutId: row.individualId ?? '', aboutTitle };
}
