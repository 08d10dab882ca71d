import { ArrayMinSize, ArrayUnique } from 'class-validator';
import { FlagField, IntegerField, NumberField, ShareField, TextListField } from '../../platform/fields.ts';
import { say } from '../../platform/say.ts';

/** Most animals that a group, or the list that one is chosen from, may have. */
export const GROUP_MOST = 60;

/** A group to be looked at, and what is wanted of it. */
export class GroupRequest {
  @TextListField({
    max: 40,
    maxItems: GROUP_MOST,
    description: `Ids or registry numbers of 2 to ${GROUP_MOST} different animals that live together, or might.`,
  })
  @ArrayMinSize(2, { message: say`must name at least two animals` })
  @ArrayUnique({ message: say`must name each animal once` })
  individuals: string[];

  @IntegerField({
    min: 1,
    max: 6,
    optional: true,
    description: 'Also choose the best group of this many males out of the animals named; together with `females`.',
  })
  males?: number;

  @IntegerField({
    min: 1,
    max: 6,
    optional: true,
    description: 'Also choose the best group of this many females out of the animals named; together with `males`.',
  })
  females?: number;

  @NumberField({
    min: 0,
    max: 100,
    optional: true,
    description:
      'How much the inbreeding of the young weighs against their mean kinship with the line; 1 if left out. Greater: the young less inbred, the line less diverse.',
  })
  weight = 1;

  @FlagField({
    optional: true,
    description: 'Take animals of several lines: the young would be crosses. Refused if left out.',
  })
  crossLines = false;
  @ShareField({
    optional: true,
    description:
      'Greatest expected F of the young of any pair in the group chosen and in those that an addition would make, 0 to 1; 0.125 if left out, that of half-sibs.',
  })
  inbreedingTo = 0.125;

  @FlagField({
    optional: true,
    description: 'Also choose, and add, animals whose label is disputed: their young carry that on. No if left out.',
  })
  disputed = false;
}
