import { Check, Column, Entity, PrimaryColumn, Unique } from 'typeorm';

/** A public key with which sheets are checked, and when it was in use. Its private part is never in the database. */
@Entity('signing_key')
@Unique('signing_key_unique', ['kid'])
@Check('signing_key_kid', `kid ~ '^[A-Za-z0-9_-]{43}$'`)
@Check('signing_key_x', `x ~ '^[A-Za-z0-9_-]{43}$'`)
@Check('signing_key_reason_length', 'length(reason) between 1 and 500')
@Check('signing_key_retired_whole', '(used_until is null) = (reason is null)')
@Check('signing_key_time_of_use', 'used_until >= used_from')
export class SigningKeyRecord {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  /** Thumbprint (RFC 7638). */
  @Column('text')
  kid: string;

  @Column('text')
  x: string;

  @Column({ name: 'used_from', type: 'timestamptz', precision: 3 })
  usedFrom: Date;

  @Column({ name: 'used_until', type: 'timestamptz', precision: 3, nullable: true })
  usedUntil: Date | null;

  /** Why it is used no more. */
  @Column({ type: 'text', nullable: true })
  reason: string | null;
}
