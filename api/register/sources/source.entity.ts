import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { SourceKind, Visibility } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../record.ts';

/** How founders entered captivity together. */
@Entity('source')
@Check('source_code_length', 'length(code) between 1 and 40')
@Check('source_kind', `kind in ('import', 'wild-collection', 'purchase', 'unknown')`)
@Check('source_country', `country_of_export ~ '^[A-Z]{2}$'`)
@Check('source_base_kinship', 'base_kinship >= 0 and base_kinship <= 1')
@Check('source_date_bounds', dateBoundsRule('date'))
@Index('source_code_unique', { synchronize: false })
@Check('source_visibility', `visibility in ('private', 'club', 'public')`)
@Index('source_import_index', { synchronize: false })
export class Source extends WithdrawableRecord {
  @Column({ type: 'text', default: 'club' })
  visibility: Visibility;

  /** The sheet that brought it. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true })
  @ForeignKey('RegisterImport', { name: 'source_import' })
  importId: string | null;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'source_keeper' })
  keeperId: string;

  @Column({ type: 'text', nullable: true })
  code: string | null;

  @Column({ type: 'text', default: 'unknown' })
  kind: SourceKind;

  @Column({ type: 'text', nullable: true })
  date: string | null;

  @Column({ name: 'date_earliest', type: 'date', nullable: true })
  dateEarliest: string | null;

  @Column({ name: 'date_latest', type: 'date', nullable: true })
  dateLatest: string | null;

  @Column({ name: 'received_from', type: 'text', nullable: true })
  receivedFrom: string | null;

  @Column({ name: 'received_by', type: 'text', nullable: true })
  receivedBy: string | null;

  @Column({ name: 'country_of_export', type: 'text', nullable: true })
  countryOfExport: string | null;

  @Column({ name: 'permit_references', type: 'text', array: true, default: () => `'{}'` })
  permitReferences: string[];

  @Column({ name: 'label_as_received', type: 'text', nullable: true })
  labelAsReceived: string | null;

  @Column({ name: 'label_note', type: 'text', nullable: true })
  labelNote: string | null;

  /** The kinship that is assumed between any two animals that came together, 0 to 1. */
  @Column({ name: 'base_kinship', type: 'double precision', default: 0 })
  baseKinship: number;

  @Column({ type: 'text', nullable: true })
  notes: string | null;
}
