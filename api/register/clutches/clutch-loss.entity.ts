import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { LossCause } from '../../../shared/vocabulary.ts';
import { Clutch } from './clutch.entity.ts';

/** Eggs or tadpoles of a clutch that were lost to one cause. */
@Entity('clutch_loss')
@Check('clutch_loss_cause', `cause in ('infertile', 'mould', 'eaten', 'dried-out', 'deformed', 'unknown')`)
@Check('clutch_loss_count', 'count between 1 and 10000')
export class ClutchLoss {
  @PrimaryColumn({ name: 'clutch_id', type: 'uuid' })
  @ForeignKey(() => Clutch, { name: 'clutch_loss_clutch', onDelete: 'CASCADE' })
  clutchId: string;

  @PrimaryColumn('text')
  cause: LossCause;

  @Column('integer')
  count: number;
}
