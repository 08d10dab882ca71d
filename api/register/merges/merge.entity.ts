import { Check, Column, CreateDateColumn, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { Keeper } from '../../people/keeper.entity.ts';
import { Individual } from '../individuals/individual.entity.ts';
import type { Moved } from './moved.ts';

/** That two records of one animal were merged, and what is needed to part them again. */
@Entity('merge')
@Check('merge_reason_length', 'length(reason) between 1 and 500')
@Index('merge_kept_index', ['keptId'])
@Index('merge_duplicate_index', ['duplicateId'])
export class Merge {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  /** The record that goes on. */
  @Column({ name: 'kept_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'merge_kept' })
  keptId: string;

  /** The record that was withdrawn in its favour. */
  @Column({ name: 'duplicate_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'merge_duplicate' })
  duplicateId: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'merge_keeper' })
  keeperId: string;

  @Column('text')
  reason: string;

  @Column('jsonb')
  moved: Moved;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  @Column({ name: 'undone_at', type: 'timestamptz', precision: 3, nullable: true })
  undoneAt: Date | null;
}
