import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { PlanRecord } from '../plan/plan-record.ts';
import type { PlanRequest } from '../plan/plan.dto.ts';
import { KeptPlan } from './kept-plan.entity.ts';

/** A plan as it was when it was kept; the database refuses to change it. */
@Entity('kept_plan_answer')
export class KeptPlanAnswer {
  @PrimaryColumn({ name: 'plan_id', type: 'uuid' })
  @ForeignKey(() => KeptPlan, { name: 'kept_plan_answer_plan' })
  planId: string;

  /** What was asked for, every animal by its id. */
  @Column('jsonb')
  assumptions: PlanRequest;

  @Column('jsonb')
  record: PlanRecord;

  /** In which pairings each animal of its pairs lived then, by their ids. */
  @Column('jsonb')
  housed: Readonly<Record<string, readonly string[]>>;
}
