import { Check, Column, Entity, Index } from 'typeorm';
import type { CitesAppendix } from '../../../shared/vocabulary.ts';
import { WithdrawableRecord } from '../record.ts';

@Entity('species')
@Check('species_name_length', 'length(scientific_name) between 3 and 120')
@Check('species_cites', `cites_appendix in ('I', 'II', 'III')`)
@Index('species_name_unique', { synchronize: false })
export class Species extends WithdrawableRecord {
  @Column({ name: 'scientific_name', type: 'text' })
  scientificName: string;

  @Column({ name: 'common_name', type: 'text', nullable: true })
  commonName: string | null;

  @Column({ name: 'cites_appendix', type: 'text', nullable: true })
  citesAppendix: CitesAppendix | null;

  /** ISO 3166-1 country codes of two letters. */
  @Column({ name: 'native_range', type: 'text', array: true, default: () => `'{}'` })
  nativeRange: string[];
}
