import { PartialType } from '@nestjs/swagger';
import {
  sexBases,
  sexes,
  statuses,
  type Sex,
  type SexBasis,
  type Status,
  type Visibility,
} from '../../../shared/vocabulary.ts';
import {
  ChoiceField,
  DateField,
  IdField,
  IntegerField,
  ShareField,
  TextField,
  VisibilityField,
} from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** A new animal. It comes from a source, from a clutch, or nobody knows whence. */
export class NewIndividualRequest {
  @TextField({
    max: 40,
    optional: true,
    nullable: true,
    description: "The keeper's own code, unique for the keeper; case does not matter.",
    example: 'EA-07',
  })
  code?: string | null;

  @IdField({ description: 'Its species.' })
  speciesId: string;

  @IdField({ optional: true, nullable: true, description: 'Its line, which must be of the same species.' })
  lineId?: string | null;

  @ChoiceField(sexes, { optional: true, description: 'Sex; unsexed if left out.' })
  sex?: Sex;

  @ChoiceField(sexBases, { optional: true, nullable: true, description: 'How the sex came to be known.' })
  sexBasis?: SexBasis | null;

  @DateField({ optional: true, nullable: true, description: 'When the sex came to be known.' })
  sexedOn?: string | null;

  @IdField({ optional: true, nullable: true, description: 'The source it came from; not together with a clutch.' })
  sourceId?: string | null;

  @IdField({ optional: true, nullable: true, description: 'The clutch it came from; not together with a source.' })
  clutchId?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it hatched.' })
  hatched?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it left the water.' })
  outOfWater?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it died; its status is then died.' })
  died?: string | null;

  @ChoiceField(statuses, {
    optional: true,
    description: 'Whether it lives; alive if left out, died if a date of death is given.',
  })
  status?: Status;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;

  @VisibilityField('Who may see it; club if left out.')
  visibility?: Visibility;
}

/** Changes of an animal. */
export class IndividualChangeRequest extends PartialType(NewIndividualRequest, { skipNullProperties: false }) {}

const ShareBound = (description: string): PropertyDecorator => ShareField({ optional: true, description });

/** Figures that a list can be sorted and filtered by. */
export const figureSorts = ['inbreeding', 'depth', 'meanKinship', 'tracedShare'] as const;
export type FigureSort = (typeof figureSorts)[number];

const individualSorts = ['number', 'code', 'line', 'hatched', 'species', 'keeper', ...figureSorts] as const;
export type IndividualSort = (typeof individualSorts)[number];

/** Which animals to list, and in what order. */
export class IndividualQuery extends PageQuery {
  @TextField({ max: 40, optional: true, description: 'Exactly this code; case does not matter.' })
  code?: string;

  @TextField({ max: 20, optional: true, description: 'Exactly this registry number.', example: '10704-4' })
  number?: string;

  @TextField({ max: 120, optional: true, description: 'Line: its id or its whole name.' })
  line?: string;

  @IdField({ optional: true, description: 'Line: its id.' })
  lineId?: string;

  @TextField({ max: 120, optional: true, description: 'Species: its id, scientific or common name.' })
  species?: string;

  @TextField({ max: 120, optional: true, description: 'Keeper: id or whole name.' })
  keeper?: string;

  @IdField({ optional: true, description: 'Animals from this source.' })
  sourceId?: string;

  @ChoiceField(sexes, { optional: true, description: 'Sex.' })
  sex?: Sex;

  @ChoiceField(statuses, { optional: true, description: 'Status.' })
  status?: Status;

  @VisibilityField('Visibility.')
  visibility?: Visibility;

  @TextField({
    max: 100,
    optional: true,
    description:
      'Words, each of which begins the number or stands in the code, line, species or keeper; one or two characters in the code only where ' +
      'it or a part of it begins.',
  })
  q?: string;

  @IntegerField({
    min: 1700,
    max: 2199,
    optional: true,
    description: 'Hatched, or perhaps hatched, in this year or later.',
  })
  hatchedFrom?: number;

  @IntegerField({
    min: 1700,
    max: 2199,
    optional: true,
    description: 'Hatched, or perhaps hatched, in this year or before.',
  })
  hatchedTo?: number;

  @ShareBound('Inbreeding coefficient at least this, 0 to 1.')
  inbreedingFrom?: number;

  @ShareBound('Inbreeding coefficient at most this, 0 to 1.')
  inbreedingTo?: number;

  @IntegerField({ min: 0, max: 10_000, optional: true, description: 'Pedigree depth at least this many generations.' })
  depthFrom?: number;

  @IntegerField({ min: 0, max: 10_000, optional: true, description: 'Pedigree depth at most this many generations.' })
  depthTo?: number;

  @ShareBound('Mean kinship with the living animals of its line at least this, 0 to 1.')
  meanKinshipFrom?: number;

  @ShareBound('Mean kinship with the living animals of its line at most this, 0 to 1.')
  meanKinshipTo?: number;

  @ShareBound('Share of the genome traced to founders with papers at least this, 0 to 1.')
  tracedShareFrom?: number;

  @ShareBound('Share of the genome traced to founders with papers at most this, 0 to 1.')
  tracedShareTo?: number;

  @ChoiceField(individualSorts, {
    optional: true,
    description:
      'Order; number if left out. Animals without the value come last. Figures (inbreeding, depth, meanKinship, tracedShare) are those last ' +
      'written: they follow a change at once or, where it moves many, a moment later; GET /lineage/progress tells. ' +
      'Where they move between two pages, an animal that moves may be met twice or not at all; all others are met once.',
  })
  sort: IndividualSort = 'number';

  @ChoiceField(['asc', 'desc'], { optional: true, description: 'Direction; asc if left out.' })
  order: 'asc' | 'desc' = 'asc';
}
