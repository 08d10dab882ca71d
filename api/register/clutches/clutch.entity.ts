import { Check, Column, Entity, ForeignKey, Index, Unique } from 'typeorm';
import { clutchStages, type ClutchStage } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { Pairing } from '../pairings/pairing.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../record.ts';

/** One laying of eggs. */
@Entity('clutch')
@Check('clutch_code_length', 'length(code) between 1 and 40')
@Check('clutch_eggs', 'eggs between 0 and 10000')
@Check('clutch_fertile', 'fertile between 0 and eggs')
@Check('clutch_hatched', 'hatched between 0 and 10000 and hatched <= eggs and hatched <= fertile')
@Check('clutch_out_of_water', 'out_of_water between 0 and 10000 and out_of_water <= hatched')
@Check('clutch_tier_positive', 'tier >= 0')
@Check('clutch_laid_bounds', dateBoundsRule('laid'))
@Check('clutch_hatched_on_bounds', dateBoundsRule('hatched_on'))
@Check('clutch_hatched_after_laying', 'laid_earliest <= hatched_on_latest')
@Check('clutch_hatched_on_of_hatched', 'hatched_on is null or hatched is distinct from 0')
@Check('clutch_stage_known', `stage in (${clutchStages.map((stage) => `'${stage}'`).join(', ')})`)
@Unique('clutch_at_tier', ['id', 'tier'])
@Index('clutch_code_unique', { synchronize: false })
@Index('clutch_pairing_index', ['pairingId'])
@Index('clutch_laid_index', ['laidEarliest', 'laidLatest', 'id'])
@Index('clutch_import_index', { synchronize: false })
@Index('clutch_stage_index', { synchronize: false })
@Index('clutch_keeper_index', { synchronize: false })
export class Clutch extends WithdrawableRecord {
  /** The sheet that brought it; no foreign key, see the migration. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true })
  importId: string | null;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'clutch_keeper' })
  keeperId: string;

  @Column({ name: 'pairing_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Pairing, { name: 'clutch_pairing' })
  pairingId: string | null;

  @Column({ type: 'text', nullable: true })
  code: string | null;

  @Column({ type: 'text', nullable: true })
  laid: string | null;

  @Column({ name: 'laid_earliest', type: 'date', nullable: true })
  laidEarliest: string | null;

  @Column({ name: 'laid_latest', type: 'date', nullable: true })
  laidLatest: string | null;

  @Column({ name: 'hatched_on', type: 'text', nullable: true })
  hatchedOn: string | null;

  @Column({ name: 'hatched_on_earliest', type: 'date', nullable: true })
  hatchedOnEarliest: string | null;

  @Column({ name: 'hatched_on_latest', type: 'date', nullable: true })
  hatchedOnLatest: string | null;

  @Column({ type: 'integer', nullable: true })
  eggs: number | null;

  @Column({ type: 'integer', nullable: true })
  fertile: number | null;

  @Column({ type: 'integer', nullable: true })
  hatched: number | null;

  @Column({ name: 'out_of_water', type: 'integer', nullable: true })
  outOfWater: number | null;

  @Column({ type: 'text', nullable: true })
  site: string | null;

  @Column({ type: 'text', nullable: true })
  notes: string | null;

  /** Whether the parents are those that its pairing housed when it was laid, and not the keeper's own choice. */
  @Column({ name: 'parents_from_pairing', type: 'boolean', default: false })
  parentsFromPairing: boolean;

  /** How far it is; it follows from counts, losses and young, and the database keeps it. */
  @Column({ type: 'text', default: 'egg' })
  stage: ClutchStage;

  /** Rank in time: above every parent's, below every young's. */
  @Column({ type: 'integer', default: 1 })
  tier: number;
}
