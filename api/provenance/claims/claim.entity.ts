import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { ClaimAspect } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { Line } from '../../register/lines/line.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../../register/record.ts';
import { Source } from '../../register/sources/source.entity.ts';

const length = (column: string, most: number): string => `length(${column}) between 1 and ${most}`;

/** A statement about where a source, a line or an individual comes from. Its place speaks in the terms of Darwin Core. */
@Entity('claim')
@Check('claim_aspect', `aspect in ('locality', 'trade-name')`)
@Check('claim_value_length', length('value', 200))
@Check('claim_stated_by_length', length('stated_by', 200))
@Check('claim_verbatim_locality_length', length('verbatim_locality', 2000))
@Check('claim_locality_length', length('locality', 500))
@Check('claim_country', `country_code ~ '^[A-Z]{2}$'`)
@Check('claim_state_province_length', length('state_province', 200))
@Check('claim_latitude', 'decimal_latitude between -90 and 90')
@Check('claim_longitude', 'decimal_longitude between -180 and 180')
@Check('claim_datum_length', length('geodetic_datum', 100))
@Check('claim_uncertainty', 'coordinate_uncertainty_m > 0 and coordinate_uncertainty_m <= 20037509')
@Check('claim_georeferenced_by_length', length('georeferenced_by', 200))
@Check('claim_georeference_sources_length', length('georeference_sources', 500))
@Check('claim_about_one_thing', 'num_nonnulls(source_id, line_id, individual_id) = 1')
@Check('claim_coordinates', 'num_nonnulls(decimal_latitude, decimal_longitude, geodetic_datum) in (0, 3)')
@Check('claim_uncertainty_of_coordinates', 'coordinate_uncertainty_m is null or decimal_latitude is not null')
@Check('claim_stated_on_bounds', dateBoundsRule('stated_on'))
@Index('claim_unique', { synchronize: false })
@Index('claim_source_index', { synchronize: false })
@Index('claim_line_index', { synchronize: false })
@Index('claim_individual_index', { synchronize: false })
export class Claim extends WithdrawableRecord {
  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'claim_keeper' })
  keeperId: string;

  @Column({ name: 'source_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Source, { name: 'claim_source' })
  sourceId: string | null;

  @Column({ name: 'line_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Line, { name: 'claim_line' })
  lineId: string | null;

  @Column({ name: 'individual_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Individual, { name: 'claim_individual' })
  individualId: string | null;

  @Column('text')
  aspect: ClaimAspect;

  /** The name of the place, or the trade name. */
  @Column('text')
  value: string;

  @Column({ name: 'stated_by', type: 'text', nullable: true })
  statedBy: string | null;

  @Column({ name: 'stated_on', type: 'text', nullable: true })
  statedOn: string | null;

  @Column({ name: 'stated_on_earliest', type: 'date', nullable: true })
  statedOnEarliest: string | null;

  @Column({ name: 'stated_on_latest', type: 'date', nullable: true })
  statedOnLatest: string | null;

  /** The words of the label or the list; the database refuses to change them. */
  @Column({ name: 'verbatim_locality', type: 'text', nullable: true })
  verbatimLocality: string | null;

  @Column({ type: 'text', nullable: true })
  locality: string | null;

  @Column({ name: 'country_code', type: 'text', nullable: true })
  countryCode: string | null;

  @Column({ name: 'state_province', type: 'text', nullable: true })
  stateProvince: string | null;

  @Column({ name: 'decimal_latitude', type: 'double precision', nullable: true })
  decimalLatitude: number | null;

  @Column({ name: 'decimal_longitude', type: 'double precision', nullable: true })
  decimalLongitude: number | null;

  @Column({ name: 'geodetic_datum', type: 'text', nullable: true })
  geodeticDatum: string | null;

  /** Radius of the smallest circle that holds the whole place, metres. */
  @Column({ name: 'coordinate_uncertainty_m', type: 'double precision', nullable: true })
  coordinateUncertaintyM: number | null;

  @Column({ name: 'georeferenced_by', type: 'text', nullable: true })
  georeferencedBy: string | null;

  @Column({ name: 'georeference_sources', type: 'text', nullable: true })
  georeferenceSources: string | null;

  @Column({ type: 'text', nullable: true })
  notes: string | null;
}
