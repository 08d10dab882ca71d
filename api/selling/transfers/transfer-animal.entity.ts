import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { TransferState } from '../../../shared/vocabulary.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { dateBoundsRule } from '../../register/record.ts';
import { Transfer } from './transfer.entity.ts';

/** One animal of a transfer. Its state is always that of the transfer; an animal is in one open offer at most. */
@Entity('transfer_animal')
@ForeignKey(() => Transfer, ['transferId', 'state'], ['id', 'state'], {
  name: 'transfer_animal_transfer',
  onUpdate: 'CASCADE',
})
@Check('transfer_animal_returned_bounds', dateBoundsRule('returned'))
@Index('transfer_animal_individual_index', ['individualId'])
@Index('transfer_animal_offered_unique', { synchronize: false })
export class TransferAnimal {
  @PrimaryColumn({ name: 'transfer_id', type: 'uuid', primaryKeyConstraintName: 'transfer_animal_pkey' })
  transferId: string;

  @PrimaryColumn({ name: 'individual_id', type: 'uuid', primaryKeyConstraintName: 'transfer_animal_pkey' })
  @ForeignKey(() => Individual, { name: 'transfer_animal_individual' })
  individualId: string;

  @Column('text')
  state: TransferState;

  /** The giver's own code when it was handed over. */
  @Column({ name: 'given_code', type: 'text', nullable: true })
  givenCode: string | null;

  /** When it came back to its keeper after it had left the club. */
  @Column({ type: 'text', nullable: true })
  returned: string | null;

  @Column({ name: 'returned_earliest', type: 'date', nullable: true })
  returnedEarliest: string | null;

  @Column({ name: 'returned_latest', type: 'date', nullable: true })
  returnedLatest: string | null;
}
