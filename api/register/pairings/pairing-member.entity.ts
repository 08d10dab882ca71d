import { Check, Column, Entity, Exclusion, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { Individual } from '../individuals/individual.entity.ts';
import { dateBoundsRule } from '../record.ts';
import { Pairing } from './pairing.entity.ts';

/** One animal's stay in a pairing. Two stays of one animal in standing pairings may not certainly overlap. */
@Entity('pairing_member')
@Check('pairing_member_in_order', 'joined_earliest <= left_latest')
@Check('pairing_member_joined_bounds', dateBoundsRule('joined'))
@Check('pairing_member_left_bounds', dateBoundsRule('left'))
@Exclusion(
  'pairing_member_one_place',
  'using gist (individual_id with =, housed(joined_earliest, joined_latest, left_earliest, left_latest) with &&) where (stands)',
)
@Index('pairing_member_pairing_index', ['pairingId'])
@Index('pairing_member_individual_index', ['individualId'])
export class PairingMember {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @Column({ name: 'pairing_id', type: 'uuid' })
  @ForeignKey(() => Pairing, { name: 'pairing_member_pairing' })
  pairingId: string;

  @Column({ name: 'individual_id', type: 'uuid' })
  @ForeignKey(() => Individual, { name: 'pairing_member_individual' })
  individualId: string;

  @Column({ type: 'text', nullable: true })
  joined: string | null;

  @Column({ name: 'joined_earliest', type: 'date', nullable: true })
  joinedEarliest: string | null;

  @Column({ name: 'joined_latest', type: 'date', nullable: true })
  joinedLatest: string | null;

  @Column({ type: 'text', nullable: true })
  left: string | null;

  @Column({ name: 'left_earliest', type: 'date', nullable: true })
  leftEarliest: string | null;

  @Column({ name: 'left_latest', type: 'date', nullable: true })
  leftLatest: string | null;

  /** Whether the pairing stands; kept by the database when the pairing is withdrawn or restored. */
  @Column({ type: 'boolean', default: true })
  stands: boolean;
}
