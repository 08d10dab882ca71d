import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { PhotographView } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../../register/record.ts';
import { StoredFile } from '../files/stored-file.entity.ts';

/** A dated photograph of an animal, by whose pattern a person can tell it again. */
@Entity('photograph')
@Check('photograph_view', `view in ('back', 'side', 'belly', 'other')`)
@Check('photograph_taken_on_bounds', dateBoundsRule('taken_on'))
@Index('photograph_individual_index', ['individualId', 'takenOnLatest'])
@Index('photograph_file_index', ['fileHash'])
export class Photograph extends WithdrawableRecord {
  @Column({ name: 'individual_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'photograph_individual' })
  individualId: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'photograph_keeper' })
  keeperId: string;

  @Column({ name: 'file_hash', type: 'text' })
  @ForeignKey(() => StoredFile, { name: 'photograph_file' })
  fileHash: string;

  @Column('text')
  view: PhotographView;

  @Column({ name: 'taken_on', type: 'text', nullable: true })
  takenOn: string | null;

  @Column({ name: 'taken_on_earliest', type: 'date', nullable: true })
  takenOnEarliest: string | null;

  @Column({ name: 'taken_on_latest', type: 'date', nullable: true })
  takenOnLatest: string | null;

  @Column({ type: 'text', nullable: true })
  notes: string | null;
}
