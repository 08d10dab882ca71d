import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import { Keeper } from '../../people/keeper.entity.ts';
import { WithdrawableRecord } from '../record.ts';

/** Animals housed to breed: a pair, a trio or a larger group. */
@Entity('pairing')
@Check('pairing_name_length', 'length(name) between 1 and 120')
@Index('pairing_keeper_index', ['keeperId'])
export class Pairing extends WithdrawableRecord {
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'pairing_keeper' })
  keeperId: string;

  @Column('text')
  name: string;

  @Column({ type: 'text', nullable: true })
  notes: string | null;
}
