import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import { Keeper } from '../../people/keeper.entity.ts';
import { Line } from '../../register/lines/line.entity.ts';
import { WithdrawableRecord } from '../../register/record.ts';

/** Who may see a kept plan: its keeper and registrars, or every member. */
export const planVisibilities = ['private', 'club'] as const;
export type PlanVisibility = (typeof planVisibilities)[number];

/** A plan that was kept, as its keeper names it; the plan itself and its pairs are rows of their own. */
@Entity('kept_plan')
@Check('kept_plan_name_length', 'length(name) between 1 and 120')
@Check('kept_plan_visibility', `visibility in ('private', 'club')`)
@Index('kept_plan_line_index', { synchronize: false })
@Index('kept_plan_keeper_index', { synchronize: false })
export class KeptPlan extends WithdrawableRecord {
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'kept_plan_keeper' })
  keeperId: string;

  @Column({ name: 'line_id', type: 'uuid' })
  @ForeignKey(() => Line, { name: 'kept_plan_line' })
  lineId: string;

  @Column('text')
  name: string;

  @Column({ type: 'text', nullable: true })
  notes: string | null;

  @Column({ type: 'text', default: 'private' })
  visibility: PlanVisibility;

  /** Revision of the register that it was made at. */
  @Column('integer')
  revision: number;
}
