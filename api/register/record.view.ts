import { Shown } from '../platform/fields.ts';

/** That a record was withdrawn, and why. */
export class WithdrawnView {
  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: string;

  @Shown({ description: 'The reason that was given.' })
  reason: string;
}

/** What every record shows. */
export class RecordView {
  @Shown({ description: 'Id of the record.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Counts the changes of the record from 1; also its ETag.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'When it was entered, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;

  @Shown({ description: 'When it was last changed, RFC 3339 in UTC.', format: 'date-time' })
  updatedAt: string;

  @Shown({
    description: 'Set when the record was withdrawn; null while it stands.',
    type: WithdrawnView,
    nullable: true,
  })
  withdrawn: WithdrawnView | null;
}

/** A record that tells members of the club who entered it. */
export class KeptRecordView extends RecordView {
  @Shown({
    description: 'Name of the keeper who entered it; null where a stranger asks.',
    type: String,
    nullable: true,
  })
  keeper: string | null;

  @Shown({
    description: 'Id of that keeper; null where a stranger asks.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  keeperId: string | null;
}

/** The columns of `recordColumns`, as the driver gives them. */
export interface RecordRow {
  readonly id: string;
  readonly version: number;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly withdrawnAt: Date | null;
  readonly withdrawnReason: string | null;
}

/** The SQL list of what `RecordRow` reads, for a table under this alias. */
export function recordColumns(alias: string): string {
  return [
    'id',
    'version',
    'created_at as "createdAt"',
    'updated_at as "updatedAt"',
    'withdrawn_at as "withdrawnAt"',
    'withdrawn_reason as "withdrawnReason"',
  ]
    .map((column) => `${alias}.${column}`)
    .join(', ');
}

/** What every record shows, from its row. */
export function toRecordView(row: RecordRow): RecordView {
  return {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    withdrawn:
      row.withdrawnAt === null ? null : { at: row.withdrawnAt.toISOString(), reason: row.withdrawnReason ?? '' },
  };
}
