import { ArrayMinSize, ArrayUnique } from 'class-validator';
import {
  ChoiceListField,
  FlagField,
  IdField,
  IntegerField,
  ObjectField,
  TextListField,
} from '../../platform/fields.ts';
import { say } from '../../platform/say.ts';

/** What an exchange does only where it is asked for. */
export const exchangeLeaves = ['cross-lines', 'disputed', 'unsexed'] as const;
export type ExchangeLeave = (typeof exchangeLeaves)[number];

/** Most animals that either side may have. */
export const HOLDING_MOST = 400;

/** One of two that exchange: a keeper, or animals named one by one. */
export class ExchangeSideRequest {
  @IdField({
    optional: true,
    description:
      'Keeper whose living animals of the line they are, as far as whoever asks may see them. Either this or `individuals`.',
  })
  keeperId?: string;

  @TextListField({
    max: 40,
    maxItems: HOLDING_MOST,
    optional: true,
    description: `Ids or registry numbers of 1 to ${HOLDING_MOST} living animals. Either this or \`keeperId\`.`,
  })
  @ArrayMinSize(1, { message: say`must name at least one animal` })
  @ArrayUnique({ message: say`must name each animal once` })
  individuals?: string[];
}

/** An exchange between two, and how many better ones are wanted. */
export class ExchangeRequest {
  @IdField({ description: 'The line whose animals are exchanged.' })
  lineId: string;

  @ObjectField(() => ExchangeSideRequest, { description: 'The first side.' })
  one: ExchangeSideRequest;

  @ObjectField(() => ExchangeSideRequest, { description: 'The other side.' })
  other: ExchangeSideRequest;

  @TextListField({
    max: 40,
    maxItems: HOLDING_MOST,
    optional: true,
    description: 'Ids or registry numbers of animals that the first side gives to the other.',
  })
  @ArrayUnique({ message: say`must name each animal once` })
  give: string[] = [];

  @TextListField({
    max: 40,
    maxItems: HOLDING_MOST,
    optional: true,
    description: 'Ids or registry numbers of animals that the first side takes from the other.',
  })
  @ArrayUnique({ message: say`must name each animal once` })
  take: string[] = [];

  @IntegerField({
    min: 0,
    max: 20,
    optional: true,
    description: 'How many exchanges of one animal for one are proposed at most; 5 if left out.',
  })
  proposals = 5;

  @FlagField({ optional: true, description: 'Propose only a male for a male, a female for a female.' })
  sameSex = false;

  @ChoiceListField(exchangeLeaves, {
    optional: true,
    description:
      '`cross-lines`: animals of other lines that the request names; `disputed`: animals whose label is disputed; `unsexed`: propose animals that were not sexed yet, too. The first two are refused otherwise where they are named, and carry a warning where they are asked for.',
  })
  allow: ExchangeLeave[] = [];
}
