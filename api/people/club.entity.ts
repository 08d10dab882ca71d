import { Check, Column, Entity, PrimaryColumn, VersionColumn } from 'typeorm';

/** The club whose register this is: one row. */
@Entity('club')
@Check('club_only_one', 'singleton')
@Check('club_name_length', 'length(name) between 1 and 120')
export class Club {
  @PrimaryColumn({ type: 'boolean', default: true })
  singleton: boolean;

  @VersionColumn({ default: 1 })
  version: number;

  @Column('text')
  name: string;

  /** Whether everything in it is invented, for looking around. */
  @Column({ type: 'boolean', default: false })
  demo: boolean;

  /** Whether anyone may read the records that are marked as public, without signing in. */
  @Column({ name: 'public_reading', type: 'boolean', default: false })
  publicReading: boolean;
}
