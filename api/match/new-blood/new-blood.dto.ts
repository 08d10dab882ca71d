import { ChoiceField, FlagField, IdField, ShareField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** Whose animals are to get new blood. */
export const holdingChoices = ['keeper', 'line'] as const;
export type HoldingChoice = (typeof holdingChoices)[number];

/** What animals may be ordered by, the best first. */
export const newBloodOrders = ['animal', 'young', 'lacking'] as const;
export type NewBloodOrder = (typeof newBloodOrders)[number];

/** Which animals would bring new blood, and to whom. */
export class NewBloodQuery extends PageQuery {
  @ChoiceField(holdingChoices, {
    optional: true,
    description:
      'Who gets it: `keeper`, if left out, what one keeper has of the line, as far as whoever asks may see it; `line`, the whole line.',
  })
  of: HoldingChoice = 'keeper';

  @IdField({ optional: true, description: 'The keeper; whoever asks if left out. Counts only with `of=keeper`.' })
  keeperId?: string;

  @ChoiceField(newBloodOrders, {
    optional: true,
    description:
      'Order: `animal`, first those that add most to the gene diversity of the holding themselves; `young`, first those of whom one young with the best partner there adds most; `lacking`, first those with the greatest share from founders of which the holding has nothing. If left out `animal` for a keeper, `young` for a line. In each, animals of which neither a source nor a parent is recorded come last.',
  })
  sort?: NewBloodOrder;

  @ShareField({
    optional: true,
    description: 'Greatest kinship of an animal and its partner, which is F of their young, 0 to 1; 0.125 if left out.',
  })
  kinshipTo = 0.125;

  @FlagField({
    optional: true,
    description: 'Also animals of other lines and of none: their young would be crosses, and each says so.',
  })
  crossLines = false;

  @FlagField({ optional: true, description: 'Also animals that were not sexed yet.' })
  unsexed = false;

  @FlagField({ optional: true, description: 'Also animals whose label is disputed; each says so.' })
  disputed = false;
}
