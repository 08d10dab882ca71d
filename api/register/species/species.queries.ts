import type { EntityManager } from 'typeorm';
import { traits, type CitesAppendix, type Trait } from '../../../shared/vocabulary.ts';
import { forMembers } from '../../people/visibility.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { isId } from '../../platform/ids.ts';
import { Conditions, countWhere, likePattern, orderBy, type SortColumn } from '../keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import type { SpeciesQuery } from './species.dto.ts';
import type { SpeciesRangeView, SpeciesView } from './species.view.ts';

type StoredRange = Omit<SpeciesRangeView, 'unit'>;

interface SpeciesRow extends RecordRow {
  readonly keeperId: string | null;
  readonly keeper: string | null;
  readonly scientificName: string;
  readonly commonName: string | null;
  readonly citesAppendix: CitesAppendix | null;
  readonly nativeRange: string[];
  readonly ranges: StoredRange[];
}

const select = (): string => `
  select ${recordColumns('s')}, ${forMembers('s.keeper_id')} as "keeperId", ${forMembers('k.name')} as keeper, s.scientific_name as "scientificName", s.common_name as "commonName",
    s.cites_appendix as "citesAppendix", s.native_range as "nativeRange",
    coalesce((select json_agg(json_build_object('trait', r.trait, 'usualLeast', r.usual_least, 'usualMost', r.usual_most,
      'extremeLeast', r.extreme_least, 'extremeMost', r.extreme_most, 'source', r.source) order by r.trait)
      from species_range r where r.species_id = s.id), '[]') as ranges
  from species s left join keeper k on k.id = s.keeper_id`;

const byName: readonly SortColumn[] = [
  { sql: 'lower(s.scientific_name)', type: 'text' },
  { sql: 's.id', type: 'uuid' },
];

/** One species profile by its id (primary key), or null. */
export async function findSpecies(manager: EntityManager, id: string): Promise<SpeciesView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<SpeciesRow[]>(`${select()} where s.id = $1`, [id]);
  return row ? toSpeciesView(row) : null;
}

/** A page of species by scientific name. A register has dozens: the whole table is read and sorted. */
export async function listSpecies(manager: EntityManager, query: SpeciesQuery): Promise<Page<SpeciesView>> {
  const conditions = new Conditions();
  conditions.add('s.withdrawn_at is null');
  if (query.q !== undefined) {
    const pattern = conditions.bind(likePattern(query.q));
    conditions.add(`(lower(s.scientific_name) like ${pattern} or lower(s.common_name) like ${pattern})`);
  }
  const total = query.total ? await countWhere(manager, 'species s', conditions) : undefined;
  if (query.after !== undefined) conditions.addAfter(byName, decodeCursor('name', byName.length, query.after), false);
  const rows = await manager.query<SpeciesRow[]>(
    `${select()} where ${conditions.sql} order by ${orderBy(byName, false)} limit ${query.limit + 1}`,
    conditions.parameters,
  );
  return toPage(
    rows,
    query.limit,
    toSpeciesView,
    (row) => encodeCursor('name', [row.scientificName.toLowerCase(), row.id]),
    total,
  );
}

function toSpeciesView(row: SpeciesRow): SpeciesView {
  return {
    ...toRecordView(row),
    keeperId: row.keeperId,
    keeper: row.keeper,
    scientificName: row.scientificName,
    commonName: row.commonName,
    citesAppendix: row.citesAppendix,
    nativeRange: row.nativeRange,
    ranges: row.ranges.map((range) => ({ ...range, unit: unitOf(range.trait) })),
  };
}

const unitOf = (trait: Trait): string => traits[trait];
