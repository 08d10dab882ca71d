import { transferKinds, transferStates, type TransferKind, type TransferState } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { AnimalStatusView } from '../../register/individuals/individual.view.ts';

/** One of the two between whom animals pass. */
export class TransferKeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper.' })
  name: string;
}

/** What somebody can do with a transfer. */
export const transferSteps = ['accept', 'decline', 'withdraw', 'return'] as const;
export type TransferStep = (typeof transferSteps)[number];

/** One animal of a transfer. */
export class TransferAnimalView extends AnimalStatusView {
  @Shown({ description: 'Scientific name; null where it may not be seen.', type: String, nullable: true })
  species: string | null;

  @Shown({ description: 'Name of its line; null where it has none or may not be seen.', type: String, nullable: true })
  line: string | null;

  @Shown({ description: 'When it hatched, EDTF; null where it may not be seen.', type: String, nullable: true })
  hatched: string | null;

  @Shown({ description: 'When it left the water, EDTF; null where it may not be seen.', type: String, nullable: true })
  outOfWater: string | null;

  @Shown({
    description:
      "The giver's own code for it; null where it had none, to others than the two keepers, and where it may not be seen.",
    type: String,
    nullable: true,
  })
  givenCode: string | null;

  @Shown({
    description: 'When it came back after it had left the club, EDTF; null while it has not.',
    type: String,
    nullable: true,
  })
  returned: string | null;
}

/** What the giver or receiver should think of before the animals pass. It never blocks. */
export class TransferWarningView {
  @Shown({ description: 'Id of the animal.', format: 'uuid' })
  individualId: string;

  @Shown({
    description:
      'stay-ends: it lives in a pairing, where its stay ends on the day on which it passes. in-water: nobody noted that it left the water.',
    enum: ['stay-ends', 'in-water'],
  })
  code: 'stay-ends' | 'in-water';

  @Shown({ description: 'The same in words.' })
  detail: string;
}

/** Animals that pass, as lists show them. */
export class TransferItemView {
  @Shown({ description: 'Id of the transfer.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Counts its changes from 1; also its ETag.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'When it was entered, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;

  @Shown({ description: 'When it was last changed, RFC 3339 in UTC.', format: 'date-time' })
  updatedAt: string;

  @Shown({ description: 'handover: to another keeper; departure: out of the club.', enum: transferKinds })
  kind: TransferKind;

  @Shown({
    description:
      'offered: it waits for an answer. accepted: the animals changed hands; a departure is accepted from the start. declined, withdrawn: ' +
      'nothing changed hands, or a departure was put back.',
    enum: transferStates,
  })
  state: TransferState;

  @Shown({ description: 'Who gives.', type: TransferKeeperView })
  from: TransferKeeperView;

  @Shown({ description: 'Who receives; null where they left the club.', type: TransferKeeperView, nullable: true })
  to: TransferKeeperView | null;

  @Shown({
    description:
      'Who took the animals out of the club, in the words of the giver; null to everybody but the giver and registrars.',
    type: String,
    nullable: true,
  })
  leftTo: string | null;

  @Shown({
    description: 'When they change or changed hands, EDTF; null where that is open.',
    type: String,
    nullable: true,
  })
  date: string | null;

  @Shown({ description: 'How many animals.', type: 'integer', minimum: 1, maximum: 200 })
  count: number;

  @Shown({ description: 'The first three of them, by number.', type: [AnimalStatusView] })
  first: AnimalStatusView[];
}

/** Animals that pass to another keeper, or left the club. */
export class TransferView extends TransferItemView {
  @Shown({
    description: 'A note for the two keepers and registrars; null to others.',
    type: String,
    nullable: true,
  })
  note: string | null;

  @Shown({
    description: 'Why it was declined or withdrawn; null to others than the two keepers and registrars.',
    type: String,
    nullable: true,
  })
  reason: string | null;

  @Shown({ description: 'Name of who brought it into this state; null while it waits.', type: String, nullable: true })
  settledBy: string | null;

  @Shown({
    description: 'When it came into this state, RFC 3339 in UTC; null while it waits.',
    type: String,
    format: 'date-time',
    nullable: true,
  })
  settledAt: string | null;

  @Shown({ description: 'All of them, by number, those that may not be seen last.', type: [TransferAnimalView] })
  animals: TransferAnimalView[];

  @Shown({ description: 'What to think of while it waits; empty once it was answered.', type: [TransferWarningView] })
  warnings: TransferWarningView[];

  @Shown({ description: 'What whoever asks can do with it now.', enum: transferSteps, isArray: true })
  steps: TransferStep[];
}
