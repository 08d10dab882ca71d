import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { Keeper } from './keeper.entity.ts';

/** The club whose register this is: one row. */
@Entity('club')
@Check('club_only_one', 'singleton')
@Check('club_name_length', 'length(name) between 1 and 120')
export class Club {
  @PrimaryColumn({ type: 'boolean', default: true })
  singleton: boolean;

  @Column('text')
  name: string;

  /** Whether everything in it is invented, for looking around. */
  @Column({ type: 'boolean', default: false })
  demo: boolean;

  /** In whose name requests act until keepers sign in. */
  @Column({ name: 'default_keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'club_default_keeper' })
  defaultKeeperId: string;
}
