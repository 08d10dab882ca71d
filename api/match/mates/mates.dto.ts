import { ChoiceField, FlagField, IdField, IntegerField, ShareField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** What mates may be ordered by, the best first. */
export const mateOrders = ['kinship', 'diversity'] as const;
export type MateOrder = (typeof mateOrders)[number];

/** Which mates for an animal are wanted. */
export class MatesQuery extends PageQuery {
  @ChoiceField(mateOrders, {
    optional: true,
    description:
      'Order: `kinship`, the least related first, if left out; `diversity`, first those whose young would add most to the gene diversity of the line. In both, animals of which neither a source nor a parent is recorded come last.',
  })
  sort: MateOrder = 'kinship';

  @ShareField({
    optional: true,
    description:
      'Greatest kinship with the animal, which is F of the young, 0 to 1; 0.125 if left out, that of half-sibs. Those above it are told as excluded.',
  })
  kinshipTo = 0.125;

  @IdField({
    optional: true,
    description: 'Only mates of this line; if it is not the line of the animal, the young would be a cross.',
  })
  lineId?: string;

  @FlagField({
    optional: true,
    description: 'Also mates of other lines and of none: the young would be a cross, and each says so.',
  })
  crossLines = false;

  @IdField({ optional: true, description: 'Only mates of this keeper.' })
  keeperId?: string;

  @FlagField({
    optional: true,
    description: 'Only mates that have bred, or only those that have not: a clutch that is certainly theirs hatched.',
  })
  proven?: boolean;

  @IntegerField({
    min: 0,
    max: 600,
    optional: true,
    description: 'Only mates that are certainly this old, in months of 30.4375 days.',
  })
  monthsFrom?: number;

  @FlagField({ optional: true, description: 'Also animals that were not sexed yet.' })
  unsexed = false;

  @FlagField({ optional: true, description: 'Also animals whose label is disputed; each says so.' })
  disputed = false;
}
