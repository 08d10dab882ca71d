import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { Trait } from '../../../shared/vocabulary.ts';
import { Species } from './species.entity.ts';

/** One life-history range of a species, in the unit of its trait. */
@Entity('species_range')
@Check('species_range_source_length', 'length(source) between 1 and 500')
@Check(
  'species_range_order',
  `usual_least <= usual_most and extreme_least <= usual_least and usual_most <= extreme_most and
   coalesce(usual_least, 0) >= 0 and coalesce(extreme_least, 0) >= 0`,
)
export class SpeciesRange {
  @PrimaryColumn({ name: 'species_id', type: 'uuid' })
  @ForeignKey(() => Species, { name: 'species_range_species', onDelete: 'CASCADE' })
  speciesId: string;

  @PrimaryColumn('text')
  trait: Trait;

  @Column({ name: 'usual_least', type: 'double precision', nullable: true })
  usualLeast: number | null;

  @Column({ name: 'usual_most', type: 'double precision', nullable: true })
  usualMost: number | null;

  @Column({ name: 'extreme_least', type: 'double precision', nullable: true })
  extremeLeast: number | null;

  @Column({ name: 'extreme_most', type: 'double precision', nullable: true })
  extremeMost: number | null;

  /** The publication that says so, or "common practice". */
  @Column('text')
  source: string;
}
