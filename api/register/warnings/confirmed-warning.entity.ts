import { Check, Column, CreateDateColumn, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import { Keeper } from '../../people/keeper.entity.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { Individual } from '../individuals/individual.entity.ts';

/** A plausibility warning that a keeper looked at and accepts; it holds for the words that were confirmed. */
@Entity('confirmed_warning')
@Check('confirmed_warning_reason_length', 'length(reason) between 1 and 500')
@Check('confirmed_warning_of_one_thing', 'num_nonnulls(individual_id, clutch_id) = 1')
@Unique('confirmed_warning_once', ['individualId', 'clutchId', 'code'])
export class ConfirmedWarning {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ name: 'individual_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Individual, { name: 'confirmed_warning_individual' })
  individualId: string | null;

  @Column({ name: 'clutch_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Clutch, { name: 'confirmed_warning_clutch' })
  clutchId: string | null;

  @Column('text')
  code: string;

  @Column('text')
  detail: string;

  @Column('text')
  reason: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'confirmed_warning_keeper' })
  keeperId: string;

  @CreateDateColumn({ name: 'confirmed_at', type: 'timestamptz', precision: 3 })
  confirmedAt: Date;
}
