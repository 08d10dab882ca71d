import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { OtherRegister } from './other-register.entity.ts';

/** Which record of another register a record here is. */
@Entity('foreign_record')
@Check('foreign_record_kind', `kind in ('individual', 'clutch', 'source')`)
@Check('foreign_record_key_length', 'char_length(foreign_key) between 1 and 64')
export class ForeignRecord {
  @PrimaryColumn({ name: 'register_id', type: 'uuid', primaryKeyConstraintName: 'foreign_record_pkey' })
  @ForeignKey(() => OtherRegister, { name: 'foreign_record_register' })
  registerId: string;

  @PrimaryColumn({ type: 'text', primaryKeyConstraintName: 'foreign_record_pkey' })
  kind: ForeignKind;

  /** An animal's number there; for a clutch and a source a digest of what a sheet says of it. */
  @PrimaryColumn({ name: 'foreign_key', type: 'text', primaryKeyConstraintName: 'foreign_record_pkey' })
  key: string;

  @PrimaryColumn({ name: 'record_id', type: 'uuid', primaryKeyConstraintName: 'foreign_record_pkey' })
  recordId: string;

  /** The sheet that brought it. */
  @Column({ name: 'sheet_number', type: 'text' })
  sheetNumber: string;
}

export type ForeignKind = 'individual' | 'clutch' | 'source';
