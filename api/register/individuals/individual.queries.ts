import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { LabelKind, Sex, SexBasis, SourceKind, Status, Visibility } from '../../../shared/vocabulary.ts';
import { forMembers, seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { PrivateRecords, privateClutch, privateSource } from '../private-records.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { seenClutch } from '../seen-records.ts';
import { clutchTitle, sourceTitle } from '../titles.ts';
import { readMerged, readMergedInto } from './merged-records.queries.ts';
import { readProven, readRemarks, readStays, readYoung } from './individual-details.queries.ts';
import type { IndividualItemView, IndividualView } from './individual.view.ts';
import { readIndividualWarnings } from '../warnings/warning.queries.ts';

interface ItemRow extends RecordRow {
  readonly number: string;
  readonly code: string | null;
  readonly species: string;
  readonly speciesId: string;
  readonly line: string | null;
  readonly lineId: string | null;
  readonly labelKind: LabelKind | null;
  readonly sex: Sex;
  readonly status: Status;
  readonly hatched: string | null;
  readonly outOfWater: string | null;
  readonly keeper: string | null;
  readonly keeperId: string | null;
  readonly visibility: Visibility;
}

interface WholeRow extends ItemRow {
  readonly sexBasis: SexBasis | null;
  readonly sexedOn: string | null;
  readonly died: string | null;
  readonly notes: string | null;
  readonly sourceId: string | null;
  readonly sourceSeen: boolean;
  readonly sourceCode: string | null;
  readonly sourceKind: SourceKind;
  readonly sourceDate: string | null;
  readonly clutchId: string | null;
  readonly clutchSeen: boolean;
  readonly clutchCode: string | null;
  readonly laid: string | null;
}

const itemColumns =
  (): string => `${recordColumns('i')}, i.number, i.code, s.scientific_name as species, i.species_id as "speciesId", l.name as line,
  i.line_id as "lineId", l.label_kind as "labelKind", i.sex, i.status, i.hatched, i.out_of_water as "outOfWater",
  ${forMembers('k.name')} as keeper, ${forMembers('i.keeper_id')} as "keeperId", i.visibility`;

const itemTables = `individual i join species s on s.id = i.species_id left join line l on l.id = i.line_id join keeper k on k.id = i.keeper_id`;

/** Animals as lists show them, by their ids (primary key), ordered by number; only those that may be seen. */
export async function readIndividualItems(
  manager: EntityManager,
  ids: readonly string[],
): Promise<IndividualItemView[]> {
  if (ids.length === 0) return [];
  const rows = await manager.query<ItemRow[]>(
    `select ${itemColumns()} from ${itemTables} where i.id = any($1) and ${seen('individual', 'i')} order by i.number`,
    [ids],
  );
  return rows.map(toItemView);
}

/** Young of a clutch that stand in the register and may be seen, by number (individual_clutch_index). */
export async function readYoungOfClutch(manager: EntityManager, clutchId: string): Promise<IndividualItemView[]> {
  const rows = await manager.query<ItemRow[]>(
    `select ${itemColumns()} from ${itemTables}
     where i.clutch_id = $1 and i.withdrawn_at is null and ${seen('individual', 'i')} order by i.number`,
    [clutchId],
  );
  return rows.map(toItemView);
}

/** One animal, whole, by its id (primary key), or null where there is none or it may not be seen. */
export async function findIndividual(manager: EntityManager, id: string): Promise<IndividualView | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<WholeRow[]>(
    `select ${itemColumns()}, i.sex_basis as "sexBasis", i.sexed_on as "sexedOn", i.died, i.notes,
       o.id as "sourceId", o.code as "sourceCode", o.kind as "sourceKind", o.date as "sourceDate", ${seen('source', 'o')} as "sourceSeen",
       c.id as "clutchId", c.code as "clutchCode", c.laid, ${seenClutch('c')} as "clutchSeen"
     from ${itemTables} left join source o on o.id = i.source_id left join clutch c on c.id = i.clutch_id
     where i.id = $1 and ${seen('individual', 'i')}`,
    [id],
  );
  if (!row) return null;
  const concealed = new PrivateRecords();
  return {
    ...toItemView(row),
    sexBasis: row.sexBasis,
    sexedOn: row.sexedOn,
    source: originSource(row, concealed),
    clutch: originClutch(row, concealed),
    died: row.died,
    notes: row.notes,
    proven: (await readProven(manager, [id])).has(id),
    warnings: await readIndividualWarnings(manager, id),
    pairings: await readStays(manager, id),
    young: await readYoung(manager, id, concealed),
    mergedInto: await readMergedInto(manager, id),
    merges: await readMerged(manager, id),
    observations: await readRemarks(manager, id),
  };
}

function originSource(row: WholeRow, concealed: PrivateRecords): IndividualView['source'] {
  const { sourceId: id, sourceCode: code, sourceKind: kind, sourceDate: date } = row;
  if (id === null) return null;
  return row.sourceSeen
    ? { id, code, title: sourceTitle({ kind, date }), isPrivate: false }
    : { id: concealed.idOf('source', id), code: null, title: privateSource, isPrivate: true };
}

function originClutch(row: WholeRow, concealed: PrivateRecords): IndividualView['clutch'] {
  const { clutchId: id, clutchCode: code, laid } = row;
  if (id === null) return null;
  return row.clutchSeen
    ? { id, code, title: clutchTitle({ laid, code }), laid, isPrivate: false }
    : { id: concealed.idOf('clutch', id), code: null, title: privateClutch, laid: null, isPrivate: true };
}

function toItemView(row: ItemRow): IndividualItemView {
  return {
    ...toRecordView(row),
    number: formatRegistryNumber(row.number),
    code: row.code,
    species: row.species,
    speciesId: row.speciesId,
    line: row.line,
    lineId: row.lineId,
    labelKind: row.labelKind,
    sex: row.sex,
    status: row.status,
    hatched: row.hatched,
    outOfWater: row.outOfWater,
    keeper: row.keeper,
    keeperId: row.keeperId,
    visibility: row.visibility,
  };
}
