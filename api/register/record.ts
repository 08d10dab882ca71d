import { Column, CreateDateColumn, PrimaryColumn, UpdateDateColumn, VersionColumn } from 'typeorm';

/** What every record of the register carries. The version counts its changes and is what `ETag` and `If-Match` speak of. */
abstract class RegisterRecord {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @VersionColumn({ default: 1 })
  version: number;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  @UpdateDateColumn({ name: 'updated_at', type: 'timestamptz', precision: 3 })
  updatedAt: Date;
}

/** A record that can be withdrawn: nothing is destroyed, so that old papers stay explicable. */
export abstract class WithdrawableRecord extends RegisterRecord {
  @Column({ name: 'withdrawn_at', type: 'timestamptz', precision: 3, nullable: true })
  withdrawnAt: Date | null;

  @Column({ name: 'withdrawn_reason', type: 'text', nullable: true })
  withdrawnReason: string | null;
}

/** A record that some keeper entered; null where nobody remembers who did. */
export interface Kept {
  readonly keeperId: string | null;
}

/** The rule that a vague date has its text and both bounds, or nothing at all, and that the bounds are in order. */
export function dateBoundsRule(column: string): string {
  return `num_nonnulls("${column}", ${column}_earliest, ${column}_latest) in (0, 3) and ${column}_earliest <= ${column}_latest`;
}
