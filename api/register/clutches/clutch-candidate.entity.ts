import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { ParentRole } from '../../../shared/vocabulary.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { Clutch } from './clutch.entity.ts';

/** One candidate sire or dam of a clutch; without an individual it stands for a frog nobody knows. */
@Entity('clutch_candidate')
@Check('clutch_candidate_role', `role in ('sire', 'dam')`)
@Check('clutch_candidate_probability', 'probability > 0 and probability <= 1')
@Check('clutch_candidate_with_tier', '(individual_id is null) = (individual_tier is null)')
@Check('clutch_candidate_before_clutch', 'individual_tier < clutch_tier')
@Unique('clutch_candidate_once', ['clutchId', 'role', 'individualId'])
@ForeignKey(() => Clutch, ['clutchId', 'clutchTier'], ['id', 'tier'], {
  name: 'clutch_candidate_clutch',
  onUpdate: 'CASCADE',
})
@ForeignKey(() => Individual, ['individualId', 'individualTier'], ['id', 'tier'], {
  name: 'clutch_candidate_individual',
  onUpdate: 'CASCADE',
})
@Index('clutch_candidate_individual_index', ['individualId'])
export class ClutchCandidate {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ name: 'clutch_id', type: 'uuid' })
  clutchId: string;

  @Column({ name: 'clutch_tier', type: 'integer' })
  clutchTier: number;

  @Column('text')
  role: ParentRole;

  @Column({ name: 'individual_id', type: 'uuid', nullable: true })
  individualId: string | null;

  @Column({ name: 'individual_tier', type: 'integer', nullable: true })
  individualTier: number | null;

  @Column('double precision')
  probability: number;

  @Column({ type: 'text', nullable: true })
  reason: string | null;
}
