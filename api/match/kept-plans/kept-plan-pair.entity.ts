import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { Pairing } from '../../register/pairings/pairing.entity.ts';
import { KeptPlan } from './kept-plan.entity.ts';

/** What became of a pair of a kept plan. */
export const pairStates = ['proposed', 'accepted', 'declined'] as const;
export type PairState = (typeof pairStates)[number];

/** A pair of a kept plan, and what became of it. */
@Entity('kept_plan_pair')
@Check('kept_plan_pair_place', 'place >= 0')
@Check('kept_plan_pair_state', `state in ('proposed', 'accepted', 'declined')`)
@Check('kept_plan_pair_reason_length', 'length(reason) between 1 and 500')
@Check('kept_plan_pair_accepted', `(state = 'accepted') = (pairing_id is not null)`)
@Index('kept_plan_pair_pairing_unique', { synchronize: false })
export class KeptPlanPair {
  @PrimaryColumn({ name: 'plan_id', type: 'uuid', primaryKeyConstraintName: 'kept_plan_pair_pkey' })
  @ForeignKey(() => KeptPlan, { name: 'kept_plan_pair_plan' })
  planId: string;

  /** Its place among the pairs of the plan, from 0. */
  @PrimaryColumn({ type: 'integer', primaryKeyConstraintName: 'kept_plan_pair_pkey' })
  place: number;

  @Column({ name: 'male_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'kept_plan_pair_male' })
  maleId: string;

  @Column({ name: 'female_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'kept_plan_pair_female' })
  femaleId: string;

  @Column({ type: 'text', default: 'proposed' })
  state: PairState;

  /** The pairing that it became. */
  @Column({ name: 'pairing_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Pairing, { name: 'kept_plan_pair_pairing' })
  pairingId: string | null;

  /** Why it was declined. */
  @Column({ type: 'text', nullable: true })
  reason: string | null;

  /** What it was accepted in spite of. */
  @Column({ type: 'text', array: true, default: () => `'{}'` })
  warnings: string[];
}
