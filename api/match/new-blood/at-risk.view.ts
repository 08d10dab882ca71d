import { AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { MateLineView } from '../breeder.view.ts';
import { lostKinds, type LostKind } from './at-risk-search.ts';
import { BeginningView, CarrierView } from './carrier.view.ts';

const count = { type: 'integer', minimum: 0 } as const;

/** Founders of a source. */
export class FoundersLeftView {
  @Shown({ description: 'How many founders of it come into question.', ...count })
  recorded: number;

  @Shown({ description: 'Of how many of them some living animal carries anything.', ...count })
  left: number;
}

/** How much of the founders’ genes is still there. */
export class KeptGenesView {
  @Shown({
    description:
      'Expected share of the genes of the founders, two of each, that some living animal that may breed still carries, 0 to 1: the probability that any one of them is not lost (gene dropping, MacCluer et al. 1986). Every founder counts as having two genes of its own, whatever the base kinship of its source.',
    minimum: 0,
    maximum: 1,
  })
  expected: number;

  @Shown({ description: 'Its standard error; 0 where it is exact.', minimum: 0 })
  standardError: number;

  @Shown({ description: 'Whether every way of descent was counted; else 10 000 were drawn, with seed 1.' })
  isExact: boolean;
}

/** Something that is about to be lost. */
export class AtRiskView {
  @Shown({ description: 'What it is.', enum: lostKinds })
  kind: LostKind;

  @Shown({ description: 'The line; null for a source or a founder.', type: MateLineView, nullable: true })
  line: MateLineView | null;

  @Shown({ description: 'The source or the founder; null for a line.', type: BeginningView, nullable: true })
  beginning: BeginningView | null;

  @Shown({ description: 'Why it is told, in words.', type: [String] })
  why: string[];

  @Shown({ description: 'How many living animals that may breed carry anything of it; private ones count.', ...count })
  breeders: number;

  @Shown({
    description: 'How many living animals carry anything of it, those that may not breed among them.',
    ...count,
  })
  living: number;

  @Shown({
    description:
      'Of which sex all are that may breed, for a line or a source; null where there are both, or one is not known.',
    enum: ['male', 'female'],
    nullable: true,
  })
  onlySex: 'male' | 'female' | null;

  @Shown({ description: 'Founders of the source; null otherwise.', type: FoundersLeftView, nullable: true })
  founders: FoundersLeftView | null;

  @Shown({
    description:
      'Expected genomes of it in animals that may breed: the sum of their shares; for a line the number of its animals that may breed.',
    minimum: 0,
  })
  genomes: number;

  @Shown({ description: 'How much of the genes is still there; null for a line.', type: KeptGenesView, nullable: true })
  kept: KeptGenesView | null;

  @Shown({ description: 'Who carries it, those that may breed first, at most 12.', type: [CarrierView] })
  carriers: CarrierView[];
}

/** What nobody living carries any more. */
export class LostView {
  @Shown({ description: 'Lines without a living animal.', ...count })
  lines: number;

  @Shown({ description: 'Sources of which no living animal carries anything.', ...count })
  sources: number;

  @Shown({
    description: 'Founders of which no living animal carries anything, sources that are lost not counted again.',
    ...count,
  })
  founders: number;
}

/** What is about to be lost, the most urgent first. */
export class AtRiskListView {
  @Shown({ description: 'One page of it.', type: [AtRiskView] })
  items: AtRiskView[];

  @Shown({ description: 'Send it as `after` to go on; null at the end.', type: String, nullable: true })
  next: string | null;

  @Shown({ description: 'How much is about to be lost in all.', ...count })
  total: number;

  @Shown({ description: 'With so many animals that may breed, or fewer, it is told.', type: 'integer', minimum: 1 })
  mostCarriers: number;

  @Shown({ description: 'What is lost already.', type: LostView })
  lost: LostView;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
