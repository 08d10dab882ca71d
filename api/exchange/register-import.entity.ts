import { Column, CreateDateColumn, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { Keeper } from '../people/keeper.entity.ts';
import type { CreatedCounts, ImportWarning } from './import.view.ts';

/** A register sheet that was taken. */
@Entity('register_import')
export class RegisterImport {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'register_import_keeper' })
  keeperId: string;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  /** How many animals the sheet had. */
  @Column('integer')
  rows: number;

  /** SHA-256 of the sheet's bytes, hexadecimal; null for sheets taken before it was kept. */
  @Column({ name: 'sheet_sha256', type: 'text', nullable: true })
  sheetSha256: string | null;

  @Column({ name: 'withdrawn_at', type: 'timestamptz', precision: 3, nullable: true })
  withdrawnAt: Date | null;

  @Column({ name: 'withdrawn_reason', type: 'text', nullable: true })
  withdrawnReason: string | null;

  @Column('jsonb')
  created: CreatedCounts;

  /** The first warnings, and how many there were in all. */
  @Column('jsonb')
  warnings: { readonly total: number; readonly items: ImportWarning[] };
}
