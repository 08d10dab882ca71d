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
import type { Role } from '../../shared/vocabulary.ts';

/** A person who keeps animals in this club. */
@Entity('keeper')
@Check('keeper_roles', `roles <@ array['registrar', 'administrator']`)
@Check('keeper_name_length', 'length(name) between 1 and 120')
@Check('keeper_region_length', 'length(region) between 1 and 80')
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

  /** Where the keeper lives, as roughly as they say; null: not said. */
  @Column({ type: 'text', nullable: true })
  region: string | null;

  /** What the keeper may do besides keeping animals. */
  @Column({ type: 'text', array: true, default: () => `'{}'` })
  roles: Role[];

  /** Argon2id with its parameters; null: cannot sign in with a password. */
  @Column({ name: 'password_hash', type: 'text', nullable: true })
  passwordHash: string | null;

  /** When the keeper left the club: the records stay, signing in ends. */
  @Column({ name: 'left_at', type: 'timestamptz', precision: 3, nullable: true })
  leftAt: Date | null;
}
