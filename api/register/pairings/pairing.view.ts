import { Shown } from '../../platform/fields.ts';
import { AnimalStatusView } from '../individuals/individual.view.ts';
import { RecordView } from '../record.view.ts';

/** One animal's stay in a pairing. */
export class PairingMemberView {
  @Shown({ description: 'Id of the stay.', format: 'uuid' })
  id: string;

  @Shown({ description: 'The animal.', type: AnimalStatusView })
  individual: AnimalStatusView;

  @Shown({
    description: 'When it joined, EDTF; of a private animal told only to the keeper of the pairing.',
    type: String,
    nullable: true,
  })
  joined: string | null;

  @Shown({
    description: 'When it left, EDTF; null while it lives there, and where `joined` is not told.',
    type: String,
    nullable: true,
  })
  left: string | null;
}

/** A clutch as its pairing shows it. */
export class PairingClutchView {
  @Shown({ description: 'Id of the clutch.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What people call it.' })
  title: string;

  @Shown({ description: 'When it was laid, EDTF.', type: String, nullable: true })
  laid: string | null;

  @Shown({ description: 'Eggs.', type: 'integer', nullable: true, minimum: 0 })
  eggs: number | null;
}

/** Animals housed to breed. */
export class PairingView extends RecordView {
  @Shown({ description: 'Name of the pairing.' })
  name: string;

  @Shown({ description: 'Name of its keeper.' })
  keeper: string;

  @Shown({ description: 'Id of its keeper.', format: 'uuid' })
  keeperId: string;

  @Shown({ description: 'Notes.', type: String, nullable: true })
  notes: string | null;

  @Shown({
    description:
      'Males.females.unsexed housed now; of all who ever were, where none is left. Animals that may not be seen are not counted.',
    example: '1.2.0',
  })
  notation: string;

  @Shown({
    description: 'Every stay, those who live there now first, private animals last.',
    type: [PairingMemberView],
  })
  members: PairingMemberView[];

  @Shown({ description: 'Its last 200 clutches, newest first.', type: [PairingClutchView] })
  clutches: PairingClutchView[];
}
