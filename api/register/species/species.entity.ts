import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { CitesAppendix } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { WithdrawableRecord } from '../record.ts';

@Entity('species')
@Check('species_name_length', 'length(scientific_name) between 3 and 120')
@Check('species_cites', `cites_appendix in ('I', 'II', 'III')`)
@Index('species_name_unique', { synchronize: false })
@Index('species_keeper_index', ['keeperId'])
@Index('species_import_index', { synchronize: false })
export class Species extends WithdrawableRecord {
  /** Who entered it. */
  @Column({ name: 'keeper_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'species_keeper' })
  keeperId: string | null;

  /** The sheet that brought it. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true })
  @ForeignKey('RegisterImport', { name: 'species_import' })
  importId: string | null;

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
