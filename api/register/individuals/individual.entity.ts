import { Check, Column, Entity, ForeignKey, Index, Unique } from 'typeorm';
import type { Sex, SexBasis, Status, Visibility } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { Line } from '../lines/line.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../record.ts';
import { Source } from '../sources/source.entity.ts';
import { Species } from '../species/species.entity.ts';

/** One animal. It comes from at most one source or at most one clutch. */
@Entity('individual')
@Check('individual_number_positive', 'number > 0')
@Check('individual_code_length', 'length(code) between 1 and 40')
@Check('individual_sex', `sex in ('male', 'female', 'unsexed')`)
@Check('individual_sex_basis', `sex_basis in ('looks', 'calling', 'eggs', 'courtship', 'genetic', 'other')`)
@Check('individual_tier_positive', 'tier >= 0')
@Check('individual_status', `status in ('alive', 'died', 'gone', 'unknown')`)
@Check('individual_one_origin', 'num_nonnulls(source_id, clutch_id) <= 1')
@Check('individual_clutch_with_tier', '(clutch_id is null) = (clutch_tier is null)')
@Check('individual_after_clutch', 'tier > clutch_tier')
@Check('individual_died_only_dead', `died is null or status = 'died'`)
@Check(
  'individual_in_time',
  `hatched_earliest <= out_of_water_latest and out_of_water_earliest <= died_latest and hatched_earliest <= died_latest`,
)
@Check('individual_sexed_on_bounds', dateBoundsRule('sexed_on'))
@Check('individual_hatched_bounds', dateBoundsRule('hatched'))
@Check('individual_out_of_water_bounds', dateBoundsRule('out_of_water'))
@Check('individual_died_bounds', dateBoundsRule('died'))
@Unique('individual_number_unique', ['number'])
@Unique('individual_at_tier', ['id', 'tier'])
@ForeignKey(() => Line, ['lineId', 'speciesId'], ['id', 'speciesId'], { name: 'individual_line_of_species' })
@ForeignKey(() => Clutch, ['clutchId', 'clutchTier'], ['id', 'tier'], {
  name: 'individual_clutch',
  onUpdate: 'CASCADE',
})
@Index('individual_code_unique', { synchronize: false })
@Index('individual_code_index', { synchronize: false })
@Index('individual_code_trigram', { synchronize: false })
@Index('individual_clutch_index', ['clutchId'])
@Index('individual_source_index', ['sourceId'])
@Index('individual_line_index', ['lineId', 'number'])
@Index('individual_species_index', ['speciesId', 'number'])
@Index('individual_keeper_index', ['keeperId', 'number'])
@Index('individual_hatched_index', ['hatchedEarliest', 'hatchedLatest', 'id'])
@Check('individual_visibility', `visibility in ('private', 'club', 'public')`)
@Index('individual_living_code_index', { synchronize: false })
@Index('individual_living_number_index', { synchronize: false })
@Index('individual_living_hatched_index', { synchronize: false })
@Index('individual_counting_index', { synchronize: false })
@Index('individual_unsexed_index', { synchronize: false })
@Index('individual_import_index', { synchronize: false })
@Index('individual_private_index', { synchronize: false })
@Check('individual_not_merged_into_itself', 'merged_into_id <> id')
@Check('individual_merged_is_withdrawn', 'merged_into_id is null or withdrawn_at is not null')
@Index('individual_merged_into_index', { synchronize: false })
export class Individual extends WithdrawableRecord {
  @Column({ type: 'text', default: 'club' })
  visibility: Visibility;

  /** Keepers who see it besides where it is private; the database keeps it by the transfers. */
  @Column({ name: 'shown_to', type: 'uuid', array: true, default: () => `'{}'` })
  shownTo: string[];

  /** The sheet that brought it; no foreign key, see the migration. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true })
  importId: string | null;

  /** The record of the same animal that goes on in its place. */
  @Column({ name: 'merged_into_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Individual, { name: 'individual_merged_into' })
  mergedIntoId: string | null;

  /** Serial of the registry number, as text since it is 64 bits wide. */
  @Column({ type: 'bigint', default: () => `nextval('registry_serial')` })
  number: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'individual_keeper' })
  keeperId: string;

  @Column({ type: 'text', nullable: true })
  code: string | null;

  @Column({ name: 'species_id', type: 'uuid' })
  @ForeignKey(() => Species, { name: 'individual_species' })
  speciesId: string;

  @Column({ name: 'line_id', type: 'uuid', nullable: true })
  lineId: string | null;

  @Column({ type: 'text', default: 'unsexed' })
  sex: Sex;

  @Column({ name: 'sex_basis', type: 'text', nullable: true })
  sexBasis: SexBasis | null;

  @Column({ name: 'sexed_on', type: 'text', nullable: true })
  sexedOn: string | null;

  @Column({ name: 'sexed_on_earliest', type: 'date', nullable: true })
  sexedOnEarliest: string | null;

  @Column({ name: 'sexed_on_latest', type: 'date', nullable: true })
  sexedOnLatest: string | null;

  @Column({ name: 'source_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Source, { name: 'individual_source' })
  sourceId: string | null;

  @Column({ name: 'clutch_id', type: 'uuid', nullable: true })
  clutchId: string | null;

  @Column({ name: 'clutch_tier', type: 'integer', nullable: true })
  clutchTier: number | null;

  /** Rank in time: above its clutch's, below that of every clutch of its own. */
  @Column({ type: 'integer', default: 0 })
  tier: number;

  @Column({ type: 'text', nullable: true })
  hatched: string | null;

  @Column({ name: 'hatched_earliest', type: 'date', nullable: true })
  hatchedEarliest: string | null;

  @Column({ name: 'hatched_latest', type: 'date', nullable: true })
  hatchedLatest: string | null;

  @Column({ name: 'out_of_water', type: 'text', nullable: true })
  outOfWater: string | null;

  @Column({ name: 'out_of_water_earliest', type: 'date', nullable: true })
  outOfWaterEarliest: string | null;

  @Column({ name: 'out_of_water_latest', type: 'date', nullable: true })
  outOfWaterLatest: string | null;

  @Column({ type: 'text', nullable: true })
  died: string | null;

  @Column({ name: 'died_earliest', type: 'date', nullable: true })
  diedEarliest: string | null;

  @Column({ name: 'died_latest', type: 'date', nullable: true })
  diedLatest: string | null;

  @Column({ type: 'text', default: 'alive' })
  status: Status;

  @Column({ type: 'text', nullable: true })
  notes: string | null;
}
