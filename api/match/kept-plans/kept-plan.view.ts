import { OmitType } from '@nestjs/swagger';
import { YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import { AnimalRef, AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { KeptRecordView } from '../../register/record.view.ts';
import { MateLineView } from '../breeder.view.ts';
import { planLeaves, type PlanLeave } from '../plan/plan.dto.ts';
import {
  LeftOutView,
  PlanAnimalView,
  PlanExcludedView,
  PlanObjectiveView,
  PlanPairView,
  TradeOffView,
} from '../plan/plan.view.ts';
import { planVisibilities, type PlanVisibility } from './kept-plan.entity.ts';
import { pairStates, type PairState } from './kept-plan-pair.entity.ts';
import { pairChangeKinds, type PairChangeKind } from './pair-changes.ts';
import { planConditions, type PlanConditionCode } from './plan-conditions.ts';

/** How many pairs of a kept plan stand where. */
export class PairCountsView {
  @Shown({ description: 'Not decided.', type: 'integer', minimum: 0 })
  proposed: number;

  @Shown({ description: 'Became pairings.', type: 'integer', minimum: 0 })
  accepted: number;

  @Shown({ description: 'Are not to be made.', type: 'integer', minimum: 0 })
  declined: number;
}

/** A kept plan as lists show it. */
export class KeptPlanItemView extends KeptRecordView {
  @Shown({ description: 'What it is called.' })
  name: string;

  @Shown({ description: 'Notes.', type: String, nullable: true })
  notes: string | null;

  @Shown({ description: 'The line that it is for.', type: MateLineView })
  line: MateLineView;

  @Shown({
    description: 'private: its keeper and the registrars read it; club: every member.',
    enum: planVisibilities,
  })
  visibility: PlanVisibility;

  @Shown({ description: 'Revision of the register that it was made at.', type: 'integer', minimum: 0 })
  revision: number;

  @Shown({ description: 'Whether the register changed since; what of it concerns the plan, the plan itself tells.' })
  hasRegisterMoved: boolean;

  @Shown({ description: 'What became of its pairs.', type: PairCountsView })
  pairCounts: PairCountsView;
}

/** A male and a female, as the assumptions name them. */
export class AssumedPairView {
  @Shown({ description: 'The male.', type: AnimalRef })
  male: AnimalRef;

  @Shown({ description: 'The female.', type: AnimalRef })
  female: AnimalRef;
}

/** How often an animal might be used. */
export class AssumedUsesView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'In how many pairs at most.', type: 'integer', minimum: 0, maximum: 50 })
  most: number;
}

/** A keeper, named. */
export class NamedKeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper.' })
  name: string;
}

/** What a kept plan was asked to be. */
export class AssumptionsView {
  @Shown({ description: 'Pairs wanted.', type: 'integer', minimum: 1 })
  pairings: number;

  @Shown({ description: 'Weight w of kinship.', minimum: 0, maximum: 100 })
  weight: number;

  @Shown({ description: 'Greatest expected F of the young of a pair.', minimum: 0, maximum: 1 })
  inbreedingTo: number;

  @Shown({ description: 'In how many pairs an animal might be.', type: 'integer', minimum: 1 })
  usesMost: number;

  @Shown({ description: 'Animals with another number of pairs.', type: [AssumedUsesView] })
  uses: AssumedUsesView[];

  @Shown({
    description: 'The animals to choose among; null for all living ones of the line.',
    type: [AnimalRef],
    nullable: true,
  })
  individuals: AnimalRef[] | null;

  @Shown({ description: 'Animals of other lines besides.', type: [AnimalRef] })
  also: AnimalRef[];

  @Shown({ description: 'Pairs that had to be in it.', type: [AssumedPairView] })
  fixed: AssumedPairView[];

  @Shown({ description: 'Pairs that must not be in it.', type: [AssumedPairView] })
  forbidden: AssumedPairView[];

  @Shown({ description: 'Keepers whose animals are paired among themselves only.', type: [NamedKeeperView] })
  keptTogether: NamedKeeperView[];

  @Shown({
    description: 'Pairs of two keepers at most; null for any number.',
    type: 'integer',
    nullable: true,
    minimum: 0,
  })
  movesMost: number | null;

  @Shown({ description: 'Old animals that have not bred, at least.', type: 'integer', minimum: 0 })
  reserve: number;

  @Shown({ description: 'From how many months on these counted as old.', type: 'integer', minimum: 1 })
  reserveMonths: number;

  @Shown({ description: 'What was asked for besides.', enum: planLeaves, isArray: true })
  allow: PlanLeave[];

  @Shown({ description: 'Seconds that the choice might take.', type: 'integer', minimum: 1 })
  seconds: number;
}

/** An animal of a kept plan, as it was; of one that may not be seen only that it is there. */
export class KeptPlanAnimalView extends OmitType(PlanAnimalView, ['keeper', 'keeperId'] as const) {
  @Shown({ description: 'Its keeper then; null where the animal may not be seen.', type: String, nullable: true })
  keeper: string | null;

  @Shown({
    description: 'Id of that keeper; null where the animal may not be seen.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  keeperId: string | null;
}

/** Something that is otherwise than when the plan was made. */
export class PairChangeView {
  @Shown({ description: 'What changed.', enum: pairChangeKinds })
  kind: PairChangeKind;

  @Shown({ description: 'The animal that it concerns; null for the pair.', type: AnimalRef, nullable: true })
  animal: AnimalRef | null;

  @Shown({ description: 'As it was then; null where that says nothing.', type: String, nullable: true })
  before: string | null;

  @Shown({ description: 'As it is now; null where that says nothing.', type: String, nullable: true })
  after: string | null;

  @Shown({ description: 'The change in words.' })
  text: string;

  @Shown({ description: 'Whether the pair cannot be made any more.' })
  stops: boolean;
}

/** Where an animal lives. */
export class LivesInView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'Id of the pairing.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the pairing.' })
  name: string;
}

/** A pair today. Computed when it is asked for, never stored. */
export class PairNowView {
  @Shown({
    description: 'F of the young today, with its range; null where an animal is no longer in the register.',
    type: YoungInbreedingView,
    nullable: true,
  })
  inbreeding: YoungInbreedingView | null;

  @Shown({ description: 'What is otherwise than then, as far as whoever asks may see it.', type: [PairChangeView] })
  changes: PairChangeView[];

  @Shown({
    description: 'Where the two live otherwise, as far as that may be seen: they have to leave there (`moveOut`).',
    type: [LivesInView],
  })
  livesIn: LivesInView[];

  @Shown({ description: 'What has to be asked for (`allow`) to accept it.', enum: planLeaves, isArray: true })
  needs: PlanLeave[];

  @Shown({
    description: 'Why each of these has to be asked for: the warnings that a pairing of it carries.',
    type: [String],
  })
  warnings: string[];

  @Shown({ description: 'Whether it can become a pairing, where what it needs is asked for.' })
  canBeAccepted: boolean;
}

/** The pairing that a pair became. */
export class PairingOfPairView {
  @Shown({ description: 'Id of the pairing.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Its name.' })
  name: string;

  @Shown({ description: 'Whether it was withdrawn.' })
  isWithdrawn: boolean;
}

/** A pair of a kept plan: as it was, what became of it, and as it is. */
export class KeptPlanPairView extends OmitType(PlanPairView, ['male', 'female'] as const) {
  @Shown({
    description: 'Its place in the plan, from 0: its name for accepting and declining.',
    type: 'integer',
    minimum: 0,
  })
  place: number;

  @Shown({ description: 'The male.', type: KeptPlanAnimalView })
  male: KeptPlanAnimalView;

  @Shown({ description: 'The female.', type: KeptPlanAnimalView })
  female: KeptPlanAnimalView;

  @Shown({ description: 'What became of it.', enum: pairStates })
  state: PairState;

  @Shown({ description: 'Why it was declined.', type: String, nullable: true })
  reason: string | null;

  @Shown({
    description: 'The pairing that it became; null where it became none, or one that may not be seen.',
    type: PairingOfPairView,
    nullable: true,
  })
  pairing: PairingOfPairView | null;

  @Shown({ description: 'What it was accepted in spite of.', type: [String] })
  acceptedInSpiteOf: string[];

  @Shown({ description: 'The pair today.', type: PairNowView })
  now: PairNowView;
}

/** Whether one of the assumptions is met by the pairs that are left, today. */
export class PlanConditionView {
  @Shown({ description: 'Which one.', enum: planConditions })
  condition: PlanConditionCode;

  @Shown({ description: 'Whether it is met.' })
  isMet: boolean;

  @Shown({ description: 'In words.' })
  detail: string;
}

/** What the register changed under the plan. Computed when it is asked for, never stored. */
export class PlanSinceView {
  @Shown({
    description:
      '`unchanged`: the register is as it was; `holds`: it changed, but nothing that concerns the pairs; `differs`: something does, yet the plan holds; `broken`: a pair cannot be made any more, or an assumption is not met.',
    enum: ['unchanged', 'holds', 'differs', 'broken'],
  })
  word: 'unchanged' | 'holds' | 'differs' | 'broken';

  @Shown({ description: 'The same in a sentence.' })
  sentence: string;

  @Shown({ description: 'The assumptions, one by one; declined pairs do not count.', type: [PlanConditionView] })
  conditions: PlanConditionView[];

  @Shown({ description: 'The state of the register that it is compared with.', type: AsOfView })
  asOf: AsOfView;
}

/** A kept plan: as it was when it was made, and what became of it. */
export class KeptPlanView extends KeptPlanItemView {
  @Shown({ description: 'What it was asked to be.', type: AssumptionsView })
  assumptions: AssumptionsView;

  @Shown({ description: 'Its pairs.', type: [KeptPlanPairView] })
  pairs: KeptPlanPairView[];

  @Shown({ description: 'Animals that might breed then but are in no pair.', type: [LeftOutView] })
  leftOut: LeftOutView[];

  @Shown({ description: 'Who might not breed then, by reason.', type: [PlanExcludedView] })
  excluded: PlanExcludedView[];

  @Shown({ description: 'What it added up to.', type: PlanObjectiveView })
  objective: PlanObjectiveView;

  @Shown({ description: 'The best plans under other weights, then.', type: [TradeOffView] })
  tradeOff: TradeOffView[];

  @Shown({ description: 'How many pairs had animals of two keepers.', type: 'integer', minimum: 0 })
  moves: number;

  @Shown({ description: 'What belongs beside the figures.', type: [String] })
  cautions: string[];

  @Shown({ description: 'The state of the register that it was made at.', type: AsOfView })
  asOf: AsOfView;

  @Shown({ description: 'What changed under it.', type: PlanSinceView })
  since: PlanSinceView;
}
