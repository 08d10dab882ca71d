import { Check, Column, Entity, ForeignKey, Index, Unique } from 'typeorm';
import type { LabelKind } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { WithdrawableRecord } from '../record.ts';
import { Species } from '../species/species.entity.ts';

/** Animals bred as one closed lineage under one label. */
@Entity('line')
@Check('line_name_length', 'length(name) between 1 and 120')
@Check('line_label_kind', `label_kind in ('locality', 'trade-name', 'cross', 'unlabelled')`)
@Unique('line_of_species', ['id', 'speciesId'])
@Index('line_name_unique', { synchronize: false })
@Index('line_keeper_index', ['keeperId'])
@Index('line_import_index', { synchronize: false })
export class Line extends WithdrawableRecord {
  /** Who entered it. */
  @Column({ name: 'keeper_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'line_keeper' })
  keeperId: string | null;

  /** The sheet that brought it. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true })
  @ForeignKey('RegisterImport', { name: 'line_import' })
  importId: string | null;

  @Column({ name: 'species_id', type: 'uuid' })
  @ForeignKey(() => Species, { name: 'line_species' })
  speciesId: string;

  @Column('text')
  name: string;

  @Column({ name: 'label_kind', type: 'text', default: 'unlabelled' })
  labelKind: LabelKind;

  @Column({ type: 'text', nullable: true })
  policy: string | null;
}
