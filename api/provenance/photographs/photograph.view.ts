import { photographViews, type PhotographView } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { KeptRecordView } from '../../register/record.view.ts';

/** A dated photograph of an animal; the picture itself is at its address with `/file`. */
export class PhotographRecordView extends KeptRecordView {
  @Shown({ description: 'The animal that it shows.', format: 'uuid' })
  individualId: string;

  @Shown({ description: 'The side of the animal that it shows.', enum: photographViews })
  view: PhotographView;

  @Shown({ description: 'When it was taken, EDTF; null where nobody knows.', type: String, nullable: true })
  takenOn: string | null;

  @Shown({
    description: 'What else is known of it; null where a stranger asks, since it may name people or places.',
    type: String,
    nullable: true,
  })
  notes: string | null;

  @Shown({ description: 'Width of the whole picture, pixels.', type: 'integer', minimum: 1, maximum: 4096 })
  width: number;

  @Shown({ description: 'Height of the whole picture, pixels.', type: 'integer', minimum: 1, maximum: 4096 })
  height: number;
}
