import { AnimalRef } from '../lineage/lineage.view.ts';
import { Shown } from '../platform/fields.ts';

const months = { type: 'number', minimum: 0, nullable: true } as const;

/** The age of an animal, as far as its hatching date tells it. */
export class AgeView {
  @Shown({ description: 'At least so many months of 30.4375 days; null where the date is open.', ...months })
  least: number | null;

  @Shown({ description: 'At most so many months of 30.4375 days; null where the date is open.', ...months })
  greatest: number | null;
}

/** The line that a mate belongs to. */
export class MateLineView {
  @Shown({ description: 'Id of the line.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Its name.' })
  name: string;
}

/** An animal that may breed. */
export class BreederView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'Its line; null without one.', type: MateLineView, nullable: true })
  line: MateLineView | null;

  @Shown({ description: 'Its keeper.' })
  keeper: string;

  @Shown({ description: 'Id of its keeper.', format: 'uuid' })
  keeperId: string;

  @Shown({ description: 'Its age; null without a hatching date.', type: AgeView, nullable: true })
  age: AgeView | null;

  @Shown({ description: 'Whether a clutch that is certainly its own has hatched.' })
  proven: boolean;
}
