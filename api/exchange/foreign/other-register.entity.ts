import { Check, Column, CreateDateColumn, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { Keeper } from '../../people/keeper.entity.ts';

/** The register of another club, whose sheets are believed by their keys. */
@Entity('other_register')
@Check('other_register_name_length', 'char_length(name) between 1 and 120')
@Check('other_register_address_length', 'char_length(address) between 1 and 300')
export class OtherRegister {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  /** The registrar who vouched for the keys. */
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'other_register_keeper' })
  keeperId: string;

  @Column('text')
  name: string;

  /** Where it is found; for people, the service never asks there. */
  @Column({ type: 'text', nullable: true })
  address: string | null;

  @Column('jsonb')
  keys: SheetKey[];

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  @Column({ name: 'withdrawn_at', type: 'timestamptz', precision: 3, nullable: true })
  withdrawnAt: Date | null;

  @Column({ name: 'withdrawn_reason', type: 'text', nullable: true })
  withdrawnReason: string | null;
}
