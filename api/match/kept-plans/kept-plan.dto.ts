import { PartialType, PickType } from '@nestjs/swagger';
import {
  ChoiceField,
  ChoiceListField,
  DateField,
  FlagField,
  IdField,
  IntegerField,
  ListField,
  ObjectField,
  TextField,
} from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';
import { PAIRINGS_MOST, PairRequest, planLeaves, PlanRequest, type PlanLeave } from '../plan/plan.dto.ts';
import { planVisibilities, type PlanVisibility } from './kept-plan.entity.ts';

/** Which kept plans to list. */
export class KeptPlanQuery extends PageQuery {
  @IdField({ optional: true, description: 'Those for this line.' })
  lineId?: string;

  @IdField({ optional: true, description: 'Those that this keeper made.' })
  keeperId?: string;
}

/** A plan to be kept. The service makes it anew from its assumptions; no figure is taken from whoever asks. */
export class NewKeptPlanRequest {
  @IdField({ description: 'The line that it is for.' })
  lineId: string;

  @TextField({ max: 120, description: 'What the plan is called.' })
  name: string;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;

  @ChoiceField(planVisibilities, {
    optional: true,
    description: 'private, if left out: its keeper and the registrars read it; club: every member.',
  })
  visibility?: PlanVisibility;

  @ObjectField(() => PlanRequest, { description: 'What the plan is to be, as POST /lines/{id}/plan takes it.' })
  assumptions: PlanRequest;

  @ListField(() => PairRequest, {
    max: PAIRINGS_MOST,
    optional: true,
    description:
      'The pairs that whoever keeps it was shown. Where the plan comes out with others by now, it is not kept (409, with `pairs`).',
  })
  shown?: PairRequest[];
}

/** Changes of a kept plan; the plan itself stays as it was. */
export class KeptPlanChangeRequest extends PartialType(
  PickType(NewKeptPlanRequest, ['name', 'notes', 'visibility'] as const),
  { skipNullProperties: false },
) {}

const place = { min: 0, max: PAIRINGS_MOST - 1, description: 'Place of the pair in the plan, from 0.' };

/** A pair that is to become a pairing. */
export class AcceptedPairRequest {
  @IntegerField(place)
  place: number;

  @TextField({
    max: 120,
    optional: true,
    description: 'Name of the pairing, such as the tank; if left out, the codes of the two, or the name of the plan.',
  })
  name?: string;
}

/** Pairs that are to become pairings: all of them, or none. */
export class AcceptPairsRequest {
  @ListField(() => AcceptedPairRequest, { min: 1, max: PAIRINGS_MOST, description: 'The pairs, each once.' })
  pairs: AcceptedPairRequest[];

  @DateField({ optional: true, nullable: true, description: 'From when the two are housed together.' })
  joined?: string | null;

  @FlagField({
    optional: true,
    description:
      'Whether the animals leave the pairings that they live in on that day, which has to be told then; only from pairings that whoever accepts may change. If left out, an animal that lives elsewhere is refused.',
  })
  moveOut = false;

  @ChoiceListField(planLeaves, {
    optional: true,
    description:
      'What is accepted in spite of: `cross-lines`, `above-limit` (of the plan), `disputed`. A pair that needs one is refused otherwise; else the pairing carries a warning.',
  })
  allow: PlanLeave[] = [];
}

/** A pair, by its place. */
export class PlacedPairRequest {
  @IntegerField(place)
  place: number;
}

/** What is decided of some pairs. */
export class DecidePairsRequest {
  @ListField(() => PlacedPairRequest, { min: 1, max: PAIRINGS_MOST, description: 'The pairs, each once.' })
  pairs: PlacedPairRequest[];

  @ChoiceField(['proposed', 'declined'], {
    description:
      '`declined`: not to be made; `proposed`: put back, also where the pairing that a pair became was withdrawn.',
  })
  state: 'proposed' | 'declined';

  @TextField({ max: 500, optional: true, nullable: true, description: 'Why they are declined.' })
  reason?: string | null;
}
