import { AnimalRef, ShareSourceView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { AgeView, MateLineView } from '../breeder.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** A share of a genome, over uncertain parents. */
export class CarriedShareView {
  @Shown({
    description: 'Expected share of the genome, 0 to 1: half from each parent, averaged over candidates.',
    ...share,
  })
  expected: number;

  @Shown({ description: 'The share that it has whichever candidates are the parents, 0 to 1.', ...share })
  least: number;
}

/** A living animal that carries genes of what is asked about. */
export class CarrierView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({
    description: 'Its line; null without one, and where it may not be seen.',
    type: MateLineView,
    nullable: true,
  })
  line: MateLineView | null;

  @Shown({ description: 'Its keeper; null where it may not be seen.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Id of its keeper; null as above.', type: String, format: 'uuid', nullable: true })
  keeperId: string | null;

  @Shown({
    description: 'Its age; null without a hatching date, and where it may not be seen.',
    type: AgeView,
    nullable: true,
  })
  age: AgeView | null;

  @Shown({
    description: 'Whether a clutch that is certainly its own has hatched; null where it may not be seen.',
    type: Boolean,
    nullable: true,
  })
  proven: boolean | null;

  @Shown({
    description: 'How much of its genome comes from what is asked about; all of it for a line.',
    type: CarriedShareView,
  })
  share: CarriedShareView;

  @Shown({ description: 'Whether it may breed, now or once it is sexed; a private animal counts as one that may.' })
  mayBreed: boolean;

  @Shown({
    description:
      'What a keeper must know before breeding from it: why it may not, a disputed label, an open sex or age.',
    type: [String],
  })
  warnings: string[];
}

/** A founder that is recorded, or a source of some. */
export class BeginningView {
  @Shown({
    description: 'The founder; null where a whole source is meant.',
    type: AnimalRef,
    nullable: true,
  })
  founder: AnimalRef | null;

  @Shown({
    description: 'The source, or that of the founder; null for a founder of unknown origin.',
    type: ShareSourceView,
    nullable: true,
  })
  source: ShareSourceView | null;
}
