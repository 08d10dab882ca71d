import { transferKinds, transferStates, type TransferKind, type TransferState } from '../../../shared/vocabulary.ts';
import { ChoiceField, DateField, IdField, ListField, TextField, TextListField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** At most this many animals pass by one transfer. */
export const TRANSFERRED_MOST = 200;

/** Animals for another keeper (`to`), or that left the club (`leftTo`). They are named one by one (`animals`) or by their `clutch`. */
export class NewTransferRequest {
  @IdField({ optional: true, description: 'The keeper of the club to whom the animals are offered; not with leftTo.' })
  to?: string;

  @TextField({
    max: 200,
    optional: true,
    nullable: true,
    description:
      'The animals left the club: to whom, in your own words, or null where that is not noted. Only you and registrars read it.',
    example: 'a school terrarium in the next town',
  })
  leftTo?: string | null;

  @TextListField({
    max: 40,
    maxItems: TRANSFERRED_MOST,
    optional: true,
    description: 'The animals: ids or registry numbers, all of one keeper; not with clutch.',
  })
  animals?: string[];

  @IdField({
    optional: true,
    description: `All living young of this clutch that the giver keeps and that are not on offer, at most ${TRANSFERRED_MOST}; not with animals.`,
  })
  clutch?: string;

  @DateField({
    optional: true,
    nullable: true,
    description: 'When they change hands, if that is known; of a departure when they left, today (UTC) if left out.',
  })
  date?: string | null;

  @TextField({
    max: 2000,
    optional: true,
    nullable: true,
    description: 'A note that the two keepers and registrars read.',
  })
  note?: string | null;
}

/** The receiver's own code for an animal. */
class TakenCodeRequest {
  @TextField({ max: 40, description: 'The animal: its id or its registry number.' })
  individualId: string;

  @TextField({
    max: 40,
    nullable: true,
    description: "The receiver's own code for it, unique for the receiver; null for none.",
    example: 'B-12',
  })
  code: string | null;
}

/** What the receiver says when taking animals. */
export class AcceptanceRequest {
  @DateField({
    optional: true,
    description:
      'When they changed hands. If left out the date of the offer, where that is not later than today, else today (UTC).',
  })
  date?: string;

  @ListField(() => TakenCodeRequest, {
    max: TRANSFERRED_MOST,
    optional: true,
    description: 'Codes of the receiver; an animal that is not named here keeps the code it has.',
  })
  codes?: TakenCodeRequest[];
}

/** Why an offer is declined or withdrawn. */
export class TransferReasonRequest {
  @TextField({ max: 500, optional: true, nullable: true, description: 'Why; the two keepers and registrars read it.' })
  reason?: string | null;
}

/** Animals that came back after they had left the club. */
export class ReturnRequest {
  @TextListField({
    max: 40,
    maxItems: TRANSFERRED_MOST,
    optional: true,
    description: 'Those that came back: ids or registry numbers; all that have not yet if left out.',
  })
  animals?: string[];

  @DateField({ optional: true, description: 'When; today (UTC) if left out.' })
  date?: string;
}

/** Which transfers to list. */
export class TransferQuery extends PageQuery {
  @ChoiceField(['given', 'received'], {
    optional: true,
    description:
      'Those that I gave, departures included, or those that were offered to me. All that may be seen if left out.',
  })
  side?: 'given' | 'received';

  @ChoiceField(transferStates, { optional: true, description: 'In this state.' })
  state?: TransferState;

  @ChoiceField(transferKinds, { optional: true, description: 'To keepers of the club, or out of it.' })
  kind?: TransferKind;

  @IdField({ optional: true, description: 'Those of this animal, also under records that were merged into it.' })
  individualId?: string;
}
