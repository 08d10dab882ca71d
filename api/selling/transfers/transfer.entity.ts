import {
  Check,
  Column,
  CreateDateColumn,
  Entity,
  ForeignKey,
  Index,
  PrimaryColumn,
  Unique,
  UpdateDateColumn,
  VersionColumn,
} from 'typeorm';
import type { TransferState } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { dateBoundsRule } from '../../register/record.ts';

/** The end of a stay that a transfer brought: what it takes to put it back. */
export interface EndedStay {
  /** Id of the stay. */
  readonly id: string;
  readonly pairingId: string;
  readonly individualId: string;
  /** The date that it was given as its end. */
  readonly left: string;
}

/** Animals that pass to another keeper, or leave the club. */
@Entity('transfer')
@Check('transfer_left_to_length', 'length(left_to) between 1 and 200')
@Check('transfer_note_length', 'length(note) between 1 and 2000')
@Check('transfer_state', `state in ('offered', 'accepted', 'declined', 'withdrawn')`)
@Check('transfer_reason_length', 'length(reason) between 1 and 500')
@Check('transfer_to_another', 'to_id <> keeper_id')
@Check('transfer_left_to_outside', 'left_to is null or to_id is null')
@Check('transfer_departure_is_not_answered', `to_id is not null or state in ('accepted', 'withdrawn')`)
@Check('transfer_accepted_on_a_date', `state <> 'accepted' or date is not null`)
@Check(
  'transfer_settled_whole',
  `num_nonnulls(settled_by_id, settled_at) = case state when 'offered' then 0 else 2 end`,
)
@Check('transfer_date_bounds', dateBoundsRule('date'))
@Unique('transfer_at_state', ['id', 'state'])
@Index('transfer_keeper_index', ['keeperId', 'id'])
@Index('transfer_to_index', ['toId', 'id'])
export class Transfer {
  @PrimaryColumn({ type: 'uuid', default: () => 'new_id()' })
  id: string;

  @VersionColumn({ default: 1 })
  version: number;

  @CreateDateColumn({ name: 'created_at', type: 'timestamptz', precision: 3 })
  createdAt: Date;

  @UpdateDateColumn({ name: 'updated_at', type: 'timestamptz', precision: 3 })
  updatedAt: Date;

  /** Who gives. */
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'transfer_keeper' })
  keeperId: string;

  /** Who receives; null where the animals left the club. */
  @Column({ name: 'to_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'transfer_to' })
  toId: string | null;

  /** Somebody outside of the club, in the giver's words; told to nobody else. */
  @Column({ name: 'left_to', type: 'text', nullable: true })
  leftTo: string | null;

  @Column({ type: 'text', nullable: true })
  date: string | null;

  @Column({ name: 'date_earliest', type: 'date', nullable: true })
  dateEarliest: string | null;

  @Column({ name: 'date_latest', type: 'date', nullable: true })
  dateLatest: string | null;

  @Column({ type: 'text', nullable: true })
  note: string | null;

  @Column('text')
  state: TransferState;

  /** Why it was declined or withdrawn. */
  @Column({ type: 'text', nullable: true })
  reason: string | null;

  /** Who brought it into its state; null while it waits. */
  @Column({ name: 'settled_by_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'transfer_settled_by' })
  settledById: string | null;

  @Column({ name: 'settled_at', type: 'timestamptz', precision: 3, nullable: true })
  settledAt: Date | null;

  @Column({ name: 'ended_stays', type: 'jsonb', default: () => `'[]'` })
  endedStays: EndedStay[];
}
