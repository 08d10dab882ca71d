import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { FlagCode } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { Line } from '../../register/lines/line.entity.ts';
import { WithdrawableRecord } from '../../register/record.ts';

/** That a registrar knows of a flag and says why it may stay. The flag is still shown, and counts anew when another record causes it. */
@Entity('flag_acknowledgement')
@Check('flag_acknowledgement_reason_length', 'length(reason) between 1 and 500')
@Check('flag_acknowledgement_of_one_thing', 'num_nonnulls(individual_id, line_id) = 1')
@Index('flag_acknowledgement_unique', { synchronize: false })
export class FlagAcknowledgement extends WithdrawableRecord {
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'flag_acknowledgement_keeper' })
  keeperId: string;

  @Column({ name: 'individual_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Individual, { name: 'flag_acknowledgement_individual' })
  individualId: string | null;

  @Column({ name: 'line_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Line, { name: 'flag_acknowledgement_line' })
  lineId: string | null;

  @Column('text')
  code: FlagCode;

  /** The records that caused the flag when it was acknowledged. */
  @Column({ name: 'record_ids', type: 'uuid', array: true, default: () => `'{}'` })
  recordIds: string[];

  @Column('text')
  reason: string;
}
