import type { Individual } from '../individuals/individual.entity.ts';
import type { Columns } from './moved.ts';

/** What the kept record can take over from the duplicate; the columns of one field go together. */
const columns = {
  code: ['code'],
  line: ['lineId'],
  sex: ['sex', 'sexBasis', 'sexedOn', 'sexedOnEarliest', 'sexedOnLatest'],
  origin: ['sourceId', 'clutchId'],
  hatched: ['hatched', 'hatchedEarliest', 'hatchedLatest'],
  outOfWater: ['outOfWater', 'outOfWaterEarliest', 'outOfWaterLatest'],
  status: ['status', 'died', 'diedEarliest', 'diedLatest'],
  visibility: ['visibility'],
  keeper: ['keeperId'],
  notes: ['notes'],
} as const satisfies Record<string, readonly (keyof Individual)[]>;

export type MergeField = keyof typeof columns;
export const mergeFields = Object.keys(columns) as MergeField[];

/** The columns of these fields of a record, as JSON holds them. */
export function columnsOf(individual: Individual, fields: readonly MergeField[]): Columns {
  return Object.fromEntries(fields.flatMap((field) => columns[field].map((column) => [column, individual[column]])));
}

/** Whether a field says something else in the two records. */
export function isDifferent(one: Individual, other: Individual, field: MergeField): boolean {
  return columns[field].some((column) => one[column] !== other[column]);
}

/** Those of the fields that say something else now than `columns` does. */
export function changedFields(individual: Individual, fields: readonly MergeField[], was: Columns): MergeField[] {
  return fields.filter((field) => columns[field].some((column) => individual[column] !== (was[column] ?? null)));
}
