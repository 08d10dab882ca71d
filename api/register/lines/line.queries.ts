import type { EntityManager } from 'typeorm';
import type { LabelKind } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { decodeCursor, encodeCursor, toPage, type Page } from '../../platform/paging.ts';
import { Conditions, countWhere, likePattern, orderBy, type SortColumn } from '../keyset.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import type { LineQuery } from './line.dto.ts';
import type { LineView } from './line.view.ts';

interface LineRow extends RecordRow {
  readonly species: string;
  readonly speciesId: string;
  readonly name: string;
  readonly labelKind: LabelKind;
  readonly policy: string | null;
  readonly animals: number;
  readonly alive: number;
}

const byName: readonly SortColumn[] = [
  { sql: 'lower(l.name)', type: 'text' },
  { sql: 'l.id', type: 'uuid' },
];

/** One line by its id (primary key; its animals by individual_line_index), or null. */
export async function findLine(manager: EntityManager, id: string): Promise<LineView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<LineRow[]>(select('select * from line where id = $1'), [id]);
  return row ? toLineView(row) : null;
}

/**
 * A page of lines by name. A register has up to a few thousand: they are read and sorted; the animals of those shown are
 * counted by individual_line_index.
 */
export async function listLines(manager: EntityManager, query: LineQuery): Promise<Page<LineView>> {
  const conditions = new Conditions();
  conditions.add('l.withdrawn_at is null');
  if (query.speciesId !== undefined) conditions.add(`l.species_id = ${conditions.bind(query.speciesId)}`);
  if (query.q !== undefined) conditions.add(`lower(l.name) like ${conditions.bind(likePattern(query.q))}`);
  const total = query.total ? await countWhere(manager, 'line l', conditions) : undefined;
  if (query.after !== undefined) conditions.addAfter(byName, decodeCursor('name', byName.length, query.after), false);
  const page = `select l.* from line l where ${conditions.sql} order by ${orderBy(byName, false)} limit ${query.limit + 1}`;
  const rows = await manager.query<LineRow[]>(
    `${select(page)} order by ${orderBy(byName, false)}`,
    conditions.parameters,
  );
  return toPage(rows, query.limit, toLineView, (row) => encodeCursor('name', [row.name.toLowerCase(), row.id]), total);
}

function select(lines: string): string {
  return `
    select ${recordColumns('l')}, s.scientific_name as species, l.species_id as "speciesId", l.name, l.label_kind as "labelKind", l.policy,
      n.animals, n.alive
    from (${lines}) l join species s on s.id = l.species_id
      cross join lateral (select count(*)::integer as animals, count(*) filter (where i.status = 'alive')::integer as alive
        from individual i where i.line_id = l.id and i.withdrawn_at is null and ${seen('individual', 'i')}) n`;
}

function toLineView(row: LineRow): LineView {
  return {
    ...toRecordView(row),
    species: row.species,
    speciesId: row.speciesId,
    name: row.name,
    labelKind: row.labelKind,
    policy: row.policy,
    counts: { animals: row.animals, alive: row.alive },
  };
}
