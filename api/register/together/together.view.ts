import { Shown } from '../../platform/fields.ts';

/** What becomes of an animal of such a change. */
export const outcomes = ['changes', 'same', 'refused'] as const;
export type Outcome = (typeof outcomes)[number];

/** Why an animal cannot be changed so. */
export const refusals = ['missing', 'not-yours', 'withdrawn', 'stale', 'elsewhere', 'rule'] as const;
export type Refusal = (typeof refusals)[number];

/** A field of an animal before and after, in words. */
export class FieldChangeView {
  @Shown({
    description: 'What changes: a field of the animal, `pairing` for where it lives, or `remark`.',
    example: 'sex',
  })
  field: string;

  @Shown({ description: 'What it is now; null for nothing.', type: String, nullable: true })
  before: string | null;

  @Shown({ description: 'What it becomes; null for nothing.', type: String, nullable: true })
  after: string | null;
}

/** One animal of such a change. */
export class AnimalTogetherView {
  @Shown({ description: 'Its id, as it was asked for.', format: 'uuid' })
  id: string;

  @Shown({
    description: 'Its registry number; null where there is no such animal.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({ description: "The keeper's own code.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Name of its keeper.', type: String, nullable: true })
  keeper: string | null;

  @Shown({
    description: 'Its version now, after the change where it was written; null where there is none.',
    type: Number,
    nullable: true,
  })
  version: number | null;

  @Shown({
    description: 'changes: it becomes another; same: it is so already; refused: it cannot be.',
    enum: outcomes,
  })
  outcome: Outcome;

  @Shown({
    description:
      'Why it is refused: missing (or not to be seen), not-yours, withdrawn, stale (changed since that version), elsewhere (it lives in a pairing of ' +
      'another keeper), rule (one of the register).',
    enum: refusals,
    nullable: true,
  })
  refusal: Refusal | null;

  @Shown({ description: 'The reason in words, and what to do.', type: String, nullable: true })
  detail: string | null;

  @Shown({ description: 'What changes of it.', type: [FieldChangeView] })
  changes: FieldChangeView[];
}

/** What a change of several animals does, or did. */
export class ChangedTogetherView {
  @Shown({ description: 'How many animals change.', minimum: 0 })
  changing: number;

  @Shown({ description: 'How many are so already, and are left alone.', minimum: 0 })
  same: number;

  @Shown({ description: 'How many cannot be changed so; as long as there are any, nothing is written.', minimum: 0 })
  refused: number;

  @Shown({ description: 'Each animal, in the order asked for.', type: [AnimalTogetherView] })
  items: AnimalTogetherView[];
}
