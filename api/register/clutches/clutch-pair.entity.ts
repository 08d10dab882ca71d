import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import { Individual } from '../individuals/individual.entity.ts';
import { Clutch } from './clutch.entity.ts';

/** Two animals that may together be the parents of a clutch, where sexes are not known. */
@Entity('clutch_pair')
@Check('clutch_pair_probability', 'probability > 0 and probability <= 1')
@Check('clutch_pair_in_order', 'a_id < b_id')
@Check('clutch_pair_before_clutch', 'a_tier < clutch_tier and b_tier < clutch_tier')
@Unique('clutch_pair_once', ['clutchId', 'aId', 'bId'])
@ForeignKey(() => Clutch, ['clutchId', 'clutchTier'], ['id', 'tier'], {
  name: 'clutch_pair_clutch',
  onUpdate: 'CASCADE',
})
@ForeignKey(() => Individual, ['aId', 'aTier'], ['id', 'tier'], { name: 'clutch_pair_a', onUpdate: 'CASCADE' })
@ForeignKey(() => Individual, ['bId', 'bTier'], ['id', 'tier'], { name: 'clutch_pair_b', onUpdate: 'CASCADE' })
@Index('clutch_pair_a_index', ['aId'])
@Index('clutch_pair_b_index', ['bId'])
export class ClutchPair {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ name: 'clutch_id', type: 'uuid' })
  clutchId: string;

  @Column({ name: 'clutch_tier', type: 'integer' })
  clutchTier: number;

  @Column({ name: 'a_id', type: 'uuid' })
  aId: string;

  @Column({ name: 'a_tier', type: 'integer' })
  aTier: number;

  @Column({ name: 'b_id', type: 'uuid' })
  bId: string;

  @Column({ name: 'b_tier', type: 'integer' })
  bTier: number;

  @Column('double precision')
  probability: number;

  @Column({ type: 'text', nullable: true })
  reason: string | null;
}
