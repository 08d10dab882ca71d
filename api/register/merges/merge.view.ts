import { Shown } from '../../platform/fields.ts';
import { ClutchItemView } from '../clutches/clutch.view.ts';
import { IndividualView } from '../individuals/individual.view.ts';
import { mergeFields, type MergeField } from './merge-fields.ts';

/** A field of both records, in words. */
export class ComparedFieldView {
  @Shown({ description: 'The field, as `take` names it.', enum: mergeFields })
  field: MergeField;

  @Shown({ description: 'What the record says that would go on.', type: String, nullable: true })
  kept: string | null;

  @Shown({ description: 'What the duplicate says.', type: String, nullable: true })
  duplicate: string | null;

  @Shown({ description: 'Whether they differ.' })
  isDifferent: boolean;
}

/** How much would move from the duplicate to the kept record, or moved. */
export class MovedCountsView {
  @Shown({ description: 'Clutches that name it as a possible parent.', type: 'integer', minimum: 0 })
  clutches: number;

  @Shown({ description: 'Stays in pairings.', type: 'integer', minimum: 0 })
  stays: number;

  @Shown({ description: 'Remarks, those of others that only they may see among them.', type: 'integer', minimum: 0 })
  remarks: number;

  @Shown({ description: 'Confirmed warnings.', type: 'integer', minimum: 0 })
  confirmations: number;

  @Shown({ description: 'Records that were merged into it before.', type: 'integer', minimum: 0 })
  records: number;

  @Shown({
    description: 'Claims about the animal; one that both have goes on as one, with the evidence of both.',
    type: 'integer',
    minimum: 0,
  })
  claims: number;

  @Shown({ description: 'Photographs.', type: 'integer', minimum: 0 })
  photographs: number;

  @Shown({ description: 'Acknowledged flags.', type: 'integer', minimum: 0 })
  acknowledgements: number;
}

/** A record that an obstacle is about. */
export class ObstacleRecordView {
  @Shown({ description: 'Kind of record.', enum: ['clutch', 'pairing'] })
  kind: 'clutch' | 'pairing';

  @Shown({ description: 'Id of the record.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What people call it.' })
  name: string;
}

export const obstacleCodes = [
  'species',
  'sex',
  'role',
  'ancestor',
  'pair-of-both',
  'both-sides',
  'stays',
  'one-clutch',
  'origin',
  'keeper',
  'visibility',
] as const;
export type ObstacleCode = (typeof obstacleCodes)[number];

/** Something that says that the two may not be one animal, and what to do about it. */
export class ObstacleView {
  @Shown({
    description: 'What it is. one-clutch: both are candidates of one clutch; origin: both have one, and not the same.',
    enum: obstacleCodes,
  })
  code: ObstacleCode;

  @Shown({ description: 'Whether merging is refused while it stands; else it is there to be thought of.' })
  blocks: boolean;

  @Shown({ description: 'What stands against it, and what to do, in words.' })
  detail: string;

  @Shown({ description: 'The records that it is about.', type: [ObstacleRecordView] })
  records: ObstacleRecordView[];
}

/** Two records side by side. */
export class MergeComparisonView {
  @Shown({ description: 'The record that would go on.', type: IndividualView })
  kept: IndividualView;

  @Shown({ description: 'The record that would be withdrawn in its favour.', type: IndividualView })
  duplicate: IndividualView;

  @Shown({ description: 'The clutch of the kept record with its parents.', type: ClutchItemView, nullable: true })
  keptClutch: ClutchItemView | null;

  @Shown({ description: 'The clutch of the duplicate with its parents.', type: ClutchItemView, nullable: true })
  duplicateClutch: ClutchItemView | null;

  @Shown({ description: 'Every field that can be taken from either, in words.', type: [ComparedFieldView] })
  fields: ComparedFieldView[];

  @Shown({ description: 'What would move.', type: MovedCountsView })
  moves: MovedCountsView;

  @Shown({ description: 'What stands against it, what refuses it first.', type: [ObstacleView] })
  obstacles: ObstacleView[];
}

/** A merged record. */
export class MergedRecordView {
  @Shown({ description: 'Id of the record.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Registry number; it stays that of this record.', example: '10704-4' })
  number: string;

  @Shown({ description: "The keeper's own code.", type: String, nullable: true })
  code: string | null;
}

/** That two records of one animal were merged. */
export class MergeView {
  @Shown({ description: 'Id of the merging.', format: 'uuid' })
  id: string;

  @Shown({ description: 'The record that goes on.', type: MergedRecordView })
  kept: MergedRecordView;

  @Shown({ description: 'The record that was withdrawn in its favour.', type: MergedRecordView })
  duplicate: MergedRecordView;

  @Shown({ description: 'What the kept record took over.', isArray: true, enum: mergeFields })
  taken: MergeField[];

  @Shown({ description: 'What moved.', type: MovedCountsView })
  moved: MovedCountsView;

  @Shown({ description: 'Why.' })
  reason: string;

  @Shown({ description: 'Name of the registrar who merged them.' })
  keeper: string;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;

  @Shown({
    description: 'When it was undone; null while it stands.',
    type: String,
    format: 'date-time',
    nullable: true,
  })
  undoneAt: string | null;
}
