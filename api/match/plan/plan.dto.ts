import {
  ChoiceListField,
  IntegerField,
  ListField,
  NumberField,
  ShareField,
  TextField,
  TextListField,
} from '../../platform/fields.ts';

/** What a plan does only where it is asked for. */
export const planLeaves = ['cross-lines', 'above-limit', 'disputed'] as const;
export type PlanLeave = (typeof planLeaves)[number];

/** Most pairs that a plan may have, and most animals that a list of the request may name. */
export const PAIRINGS_MOST = 200;
const NAMED_MOST = 1000;

/** A male and a female. */
export class PairRequest {
  @TextField({ max: 40, description: 'Id or registry number of the male.' })
  male: string;

  @TextField({ max: 40, description: 'Id or registry number of the female.' })
  female: string;
}

/** How often one animal may be used. */
export class UsesRequest {
  @TextField({ max: 40, description: 'Id or registry number of the animal.' })
  individual: string;

  @IntegerField({ min: 0, max: 50, description: 'In how many pairs it may be at most; 0 leaves it out.' })
  most: number;
}

/** What a plan for a line is to be. */
export class PlanRequest {
  @IntegerField({ min: 1, max: PAIRINGS_MOST, description: 'How many pairs are wanted.' })
  pairings: number;

  @NumberField({
    min: 0,
    max: 100,
    optional: true,
    description:
      'Weight w, 1 if left out: the plan makes Σ mean kinship of the parents + w · Σ kinship of the two as small as it can be. A small one keeps the founders’ diversity, a great one avoids inbreeding of the next young. 0 counts as a millionth.',
  })
  weight = 1;

  @ShareField({
    optional: true,
    description: 'Greatest expected F of the young of a pair, 0 to 1; 0.125 if left out, that of half-sibs.',
  })
  inbreedingTo = 0.125;

  @IntegerField({ min: 1, max: 50, optional: true, description: 'In how many pairs an animal may be; 1 if left out.' })
  usesMost = 1;

  @ListField(() => UsesRequest, {
    max: NAMED_MOST,
    optional: true,
    description: 'Animals that may be used more or less often than the others.',
  })
  uses: UsesRequest[] = [];

  @TextListField({
    max: 40,
    maxItems: NAMED_MOST,
    optional: true,
    description:
      'Ids or registry numbers of the animals to choose among; if left out, all living ones of the line. Those of other lines only with `cross-lines`.',
  })
  individuals?: string[];

  @TextListField({
    max: 40,
    maxItems: NAMED_MOST,
    optional: true,
    description:
      'Ids or registry numbers of animals of other lines that may be used besides, only with `cross-lines`. Each pair has at least one animal of the line.',
  })
  also: string[] = [];

  @ListField(() => PairRequest, {
    max: PAIRINGS_MOST,
    optional: true,
    description: 'Pairs that must be in the plan; they count among its pairs.',
  })
  fixed: PairRequest[] = [];

  @ListField(() => PairRequest, {
    max: NAMED_MOST,
    optional: true,
    description: 'Pairs that must not be in the plan.',
  })
  forbidden: PairRequest[] = [];

  @TextListField({
    max: 36,
    maxItems: 200,
    optional: true,
    description: 'Ids of keepers whose animals are paired among themselves only.',
  })
  keptTogether: string[] = [];

  @IntegerField({
    min: 0,
    max: PAIRINGS_MOST,
    optional: true,
    nullable: true,
    description: 'How many pairs may have animals of two keepers, so that one has to move; any number if left out.',
  })
  movesMost: number | null = null;

  @IntegerField({
    min: 0,
    max: PAIRINGS_MOST,
    optional: true,
    description:
      'How many old animals that have not bred must be in the plan at least; 0 if left out. Where fewer can be, there is no plan, and the answer says how many.',
  })
  reserve = 0;

  @IntegerField({
    min: 1,
    max: 600,
    optional: true,
    description:
      'From which age an animal that has not bred counts as old: certainly so many months of 30.4375 days; 48 if left out.',
  })
  reserveMonths = 48;

  @ChoiceListField(planLeaves, {
    optional: true,
    description:
      '`cross-lines`: animals of other lines that the request names; `above-limit`: fixed pairs above the limit of F; `disputed`: animals whose label is disputed. Each is refused otherwise, and carries a warning where it is asked for.',
  })
  allow: PlanLeave[] = [];

  @IntegerField({
    min: 1,
    max: 40,
    optional: true,
    description: 'Seconds that the choice with its reasons and trade-off may take; 20 if left out.',
  })
  seconds = 20;
}
