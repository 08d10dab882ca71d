import {
  Check,
  Column,
  CreateDateColumn,
  Entity,
  Index,
  PrimaryColumn,
  UpdateDateColumn,
  VersionColumn,
} from 'typeorm';

/** A person who keeps animals in this club. */
@Entity('keeper')
@Check('keeper_name_length', 'length(name) between 1 and 120')
@Index('keeper_name_unique', { synchronize: false })
export class Keeper {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @VersionColumn({ default: 1 })
  version: number;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  @UpdateDateColumn({ name: 'updated_at', type: 'timestamptz', precision: 3 })
  updatedAt: Date;

  @Column('text')
  name: string;
}
