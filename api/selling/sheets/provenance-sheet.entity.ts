import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique, VersionColumn } from 'typeorm';
import { Keeper } from '../../people/keeper.entity.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { SigningKeyRecord } from '../signing-keys/signing-key.entity.ts';

/** A provenance sheet, exactly as it was signed. The database refuses to change it; it can only be revoked, once. */
@Entity('provenance_sheet')
@Unique('provenance_sheet_number_unique', ['number'])
@Unique('provenance_sheet_token_unique', ['token'])
@Check('provenance_sheet_revoked_reason_length', 'length(revoked_reason) between 1 and 500')
@Check('provenance_sheet_revoked_whole', '(revoked_at is null) = (revoked_reason is null)')
@Index('provenance_sheet_keeper_index', ['keeperId', 'number'])
export class ProvenanceSheet {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @VersionColumn({ default: 1 })
  version: number;

  @Column({ type: 'bigint', default: () => `nextval('provenance_sheet_number')` })
  number: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'provenance_sheet_keeper' })
  keeperId: string;

  @Column('text')
  token: string;

  @Column({ name: 'key_id', type: 'uuid' })
  @ForeignKey(() => SigningKeyRecord, { name: 'provenance_sheet_signing_key' })
  keyId: string;

  @Column({ name: 'issued_at', type: 'timestamptz', precision: 3 })
  issuedAt: Date;

  @Column({ name: 'valid_until', type: 'date', nullable: true })
  validUntil: string | null;

  @Column('bytea')
  file: Buffer;

  /** Which records its references stand for: a1, c1, s1 and so on, by their ids. */
  @Column('jsonb')
  records: Readonly<Record<string, string>>;

  @Column({ name: 'revoked_at', type: 'timestamptz', precision: 3, nullable: true })
  revokedAt: Date | null;

  @Column({ name: 'revoked_reason', type: 'text', nullable: true })
  revokedReason: string | null;
}

/** An animal on a sheet. */
@Entity('provenance_sheet_animal')
@Check('provenance_sheet_animal_place', 'place >= 1')
@Index('provenance_sheet_animal_individual_index', ['individualId', 'sheetId'])
export class ProvenanceSheetAnimal {
  @PrimaryColumn({ name: 'sheet_id', type: 'uuid', primaryKeyConstraintName: 'provenance_sheet_animal_pkey' })
  @ForeignKey(() => ProvenanceSheet, { name: 'provenance_sheet_animal_sheet' })
  sheetId: string;

  @PrimaryColumn({ name: 'individual_id', type: 'uuid', primaryKeyConstraintName: 'provenance_sheet_animal_pkey' })
  @ForeignKey(() => Individual, { name: 'provenance_sheet_animal_individual' })
  individualId: string;

  /** From 1, in the order in which they were asked for. */
  @Column('integer')
  place: number;
}
