import { PartialType } from '@nestjs/swagger';
import {
  clutchStages,
  lossCauses,
  sexes,
  type ClutchStage,
  type LossCause,
  type Sex,
} from '../../../shared/vocabulary.ts';
import {
  ChoiceField,
  DateField,
  IdField,
  IntegerField,
  ListField,
  NumberField,
  ObjectField,
  TextField,
  FlagField,
} from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

const weight = (): PropertyDecorator =>
  NumberField({
    min: 0.000001,
    max: 1_000_000,
    optional: true,
    description: 'How likely, compared with the others of the list; 1 if left out.',
  });
const reason = (): PropertyDecorator =>
  TextField({ max: 500, optional: true, nullable: true, description: 'Why, such as "seen calling".' });
const count = (description: string): PropertyDecorator =>
  IntegerField({ min: 0, max: 10_000, optional: true, nullable: true, description });

/** One candidate parent. */
export class CandidateRequest {
  @TextField({
    max: 40,
    nullable: true,
    description: 'The animal: its id or its registry number; null for one that nobody knows.',
  })
  individualId: string | null;

  @weight()
  weight?: number;

  @reason()
  reason?: string | null;
}

/** Two animals that may together be the parents. */
export class CandidatePairRequest {
  @TextField({ max: 40, description: 'One of the two: its id or its registry number.' })
  a: string;

  @TextField({ max: 40, description: 'The other: its id or its registry number.' })
  b: string;

  @weight()
  weight?: number;

  @reason()
  reason?: string | null;
}

export class LossRequest {
  @ChoiceField(lossCauses, { description: 'Cause; each once.' })
  cause: LossCause;

  @IntegerField({ min: 1, max: 10_000, description: 'How many eggs or tadpoles.' })
  count: number;
}

/** What can be said of a clutch. */
export class ClutchFields {
  @IdField({ optional: true, nullable: true, description: 'The pairing that it was laid in.' })
  pairingId?: string | null;

  @TextField({
    max: 40,
    optional: true,
    nullable: true,
    description: "The keeper's own code, unique for the keeper; case does not matter.",
    example: 'C-2021-04',
  })
  code?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it was laid.' })
  laid?: string | null;

  @count('Eggs laid.')
  eggs?: number | null;

  @count('Eggs that were fertile; no more than were laid.')
  fertile?: number | null;

  @count('Eggs that hatched; no more than were laid or fertile.')
  hatched?: number | null;

  @DateField({
    optional: true,
    nullable: true,
    description: 'When they hatched; not before it was laid. Left out, the water is reckoned from the laying.',
  })
  hatchedOn?: string | null;

  @count('Young that left the water; no more than hatched.')
  outOfWater?: number | null;

  @ListField(() => LossRequest, { max: lossCauses.length, optional: true, description: 'Losses by cause.' })
  losses?: LossRequest[];

  @TextField({ max: 200, optional: true, nullable: true, description: 'Where it was laid.' })
  site?: string | null;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;

  @ListField(() => CandidateRequest, {
    max: 100,
    optional: true,
    description: 'Candidate sires; an empty list says that nothing is known.',
  })
  sires?: CandidateRequest[];

  @ListField(() => CandidateRequest, {
    max: 100,
    optional: true,
    description: 'Candidate dams; an empty list says that nothing is known.',
  })
  dams?: CandidateRequest[];

  @ListField(() => CandidatePairRequest, {
    max: 1000,
    optional: true,
    description: 'Candidate pairs instead of sires and dams, where sexes are not known.',
  })
  pairs?: CandidatePairRequest[];
}

/** Changes of a clutch. `sires` or `dams` replaces that side, `pairs` or `losses` all of them. */
export class ClutchChangeRequest extends PartialType(ClutchFields, { skipNullProperties: false }) {
  @FlagField({
    optional: true,
    description: [
      'Whether the parents come from the housing and follow its corrections. true without parents named: take them anew from the',
      'animals that the pairing housed when it was laid. true with parents named, all at equal odds without a reason: they came from',
      "the housing as it was recorded before. false: they are the keeper's own choice. Left out, it is found by comparing.",
    ].join(' '),
  })
  parentsFromPairing?: boolean;
}

/** One young of a clutch. */
export class YoungRequest {
  @TextField({
    max: 40,
    optional: true,
    nullable: true,
    description: "The keeper's own code, unique for the keeper; case does not matter.",
  })
  code?: string | null;

  @ChoiceField(sexes, { optional: true, description: 'Sex; unsexed if left out.' })
  sex?: Sex;

  @DateField({ optional: true, nullable: true, description: 'When it hatched.' })
  hatched?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it left the water.' })
  outOfWater?: string | null;

  @IdField({
    optional: true,
    nullable: true,
    description: 'Its line; left out, the line that all its possible parents share.',
  })
  lineId?: string | null;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;
}

/** Young to raise from a clutch: how many, or each with what is known of it. */
export class OffspringRequest {
  @IntegerField({ min: 1, max: 200, optional: true, description: 'How many, where nothing is known of each.' })
  count?: number;

  @ListField(() => YoungRequest, { min: 1, max: 200, optional: true, description: 'Each young.' })
  animals?: YoungRequest[];

  @IdField({ optional: true, description: 'Their species; needed only where the parents do not tell it.' })
  speciesId?: string;
}

/**
 * A new clutch. With a pairing and no parents given, the parents are those housed there when it was laid; without either they
 * are unknown.
 */
export class NewClutchRequest extends ClutchFields {
  @ObjectField(() => OffspringRequest, {
    optional: true,
    description: 'Young that are raised from it at once; they can also be added later.',
  })
  offspring?: OffspringRequest;
}

/** Which clutches to list. */
export class ClutchQuery extends PageQuery {
  @IdField({ optional: true, description: 'Clutches of this keeper.' })
  keeperId?: string;

  @IdField({ optional: true, description: 'Clutches laid in this pairing.' })
  pairingId?: string;

  @IdField({ optional: true, description: 'Clutches of which this animal may be a parent.' })
  parentId?: string;

  @IdField({ optional: true, description: 'Clutches of which a possible parent or a young stands in this line.' })
  lineId?: string;

  @ChoiceField(clutchStages, {
    optional: true,
    description: 'Clutches in the egg, in the water, out of it, or ended without young.',
  })
  stage?: ClutchStage;

  @TextField({ max: 40, optional: true, description: 'Exactly this code; case does not matter.' })
  code?: string;

  @IntegerField({ min: 1700, max: 2199, optional: true, description: 'Laid, or perhaps laid, in this year or later.' })
  laidFrom?: number;

  @IntegerField({ min: 1700, max: 2199, optional: true, description: 'Laid, or perhaps laid, in this year or before.' })
  laidTo?: number;
}
