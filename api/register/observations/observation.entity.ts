import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { ObservationKind, Visibility } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { Pairing } from '../pairings/pairing.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../record.ts';
import { Source } from '../sources/source.entity.ts';

/** A dated remark on exactly one individual, pairing, clutch or source. */
@Entity('observation')
@Check('observation_kind', `kind in ('note', 'measurement', 'health', 'behaviour')`)
@Check('observation_svl', 'svl_mm > 0 and svl_mm <= 500')
@Check('observation_mass', 'mass_g > 0 and mass_g <= 5000')
@Check('observation_of_one_thing', 'num_nonnulls(individual_id, pairing_id, clutch_id, source_id) = 1')
@Check('observation_says_something', 'num_nonnulls(text, svl_mm, mass_g) > 0')
@Check('observation_observed_on_bounds', dateBoundsRule('observed_on'))
@Index('observation_individual_index', ['individualId', 'observedOnLatest'])
@Index('observation_pairing_index', ['pairingId'])
@Index('observation_clutch_index', ['clutchId'])
@Index('observation_source_index', ['sourceId'])
@Check('observation_visibility', `visibility in ('private', 'club', 'public')`)
export class Observation extends WithdrawableRecord {
  @Column({ type: 'text', default: 'club' })
  visibility: Visibility;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'observation_keeper' })
  keeperId: string;

  @Column({ name: 'individual_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Individual, { name: 'observation_individual' })
  individualId: string | null;

  @Column({ name: 'pairing_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Pairing, { name: 'observation_pairing' })
  pairingId: string | null;

  @Column({ name: 'clutch_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Clutch, { name: 'observation_clutch' })
  clutchId: string | null;

  @Column({ name: 'source_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Source, { name: 'observation_source' })
  sourceId: string | null;

  @Column('text')
  kind: ObservationKind;

  @Column({ name: 'observed_on', type: 'text', nullable: true })
  observedOn: string | null;

  @Column({ name: 'observed_on_earliest', type: 'date', nullable: true })
  observedOnEarliest: string | null;

  @Column({ name: 'observed_on_latest', type: 'date', nullable: true })
  observedOnLatest: string | null;

  @Column({ type: 'text', nullable: true })
  text: string | null;

  /** Snout-vent length, millimetres. */
  @Column({ name: 'svl_mm', type: 'double precision', nullable: true })
  svlMm: number | null;

  /** Mass, grams. */
  @Column({ name: 'mass_g', type: 'double precision', nullable: true })
  massG: number | null;
}
