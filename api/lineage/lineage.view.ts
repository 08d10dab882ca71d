import {
  flagCodes,
  flagSeverities,
  labelKinds,
  sexes,
  standings,
  type FlagCode,
  type FlagSeverity,
  type LabelKind,
  type Sex,
  type Standing,
} from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';
import { AcknowledgedView } from '../provenance/acknowledgements/acknowledgement.view.ts';
import { InbreedingFigureView } from './inbreeding.view.ts';
import { AncestralInbreedingView, LineKinshipView } from './measures.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** An animal named in an answer. */
export class AnimalRef {
  @Shown({
    description: 'Id of the individual; "private-1" and so on, numbered within the answer, where it may not be seen.',
  })
  id: string;

  @Shown({
    description: 'Registry number; null where it may not be seen.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({ description: "The keeper's own code.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Sex as recorded; unsexed where it may not be seen.', enum: sexes })
  sex: Sex;

  @Shown({ description: 'Whether it is a private animal that whoever asks may not see.' })
  isPrivate: boolean;
}

/** A record of any kind, named. */
export class NamedRecordView {
  @Shown({ description: 'What kind of record it is.', enum: ['individual', 'clutch', 'source', 'line'] })
  kind: 'individual' | 'clutch' | 'source' | 'line';

  @Shown({ description: 'Its id; "private-1" and so on where it may not be seen.' })
  id: string;

  @Shown({
    description:
      'What it is called: code and registry number of an animal, title of a clutch or source, name of a line.',
  })
  name: string;

  @Shown({ description: 'Whether it is a private record that whoever asks may not see.' })
  isPrivate: boolean;
}

/** One candidate pair of parents. */
export class PairView {
  @Shown({
    description: 'One parent: the sire where sexes are recorded. Null: a frog nobody knows.',
    type: AnimalRef,
    nullable: true,
  })
  a: AnimalRef | null;

  @Shown({
    description: 'The other parent: the dam where sexes are recorded. Null: a frog nobody knows.',
    type: AnimalRef,
    nullable: true,
  })
  b: AnimalRef | null;

  @Shown({ description: 'Probability that these two are the parents, above 0, at most 1.', ...share })
  probability: number;

  @Shown({
    description: 'Expected kinship of the two, 0 to 1 (Malécot 1948): the inbreeding coefficient of their young.',
    ...share,
  })
  kinship: number;
}

/** An inbreeding coefficient with the pairs it comes from. */
export class InbreedingView extends InbreedingFigureView {
  @Shown({
    description: 'The candidate parent pairs, the likeliest 50; empty for an animal without a recorded clutch.',
    type: [PairView],
  })
  pairs: PairView[];
}

/** How much of the genome stands how well. */
export class StandingShareView {
  @Shown({ description: 'How well the label of those founders stands, by rule.', enum: standings })
  standing: Standing;

  @Shown({
    description:
      'Expected share of the genome from founders of this standing, above 0, at most 1; the shares sum to 1.',
    ...share,
  })
  share: number;
}

/** The part of a label that is traced. */
export class TracedShareView {
  @Shown({
    description:
      "Expected share of the genome from founders of which a claim names the animal's label and stands corroborated or better, 0 to 1.",
    ...share,
  })
  expected: number;

  @Shown({ description: 'The least that this share can be, however the candidate parents turn out, 0 to 1.', ...share })
  least: number;
}

/** A label of founders that is not the animal's. */
export class OtherLabelView {
  @Shown({
    description:
      'The label as received; case and spaces do not make a label another. Null: the labels of private sources together.',
    type: String,
    nullable: true,
  })
  label: string | null;

  @Shown({
    description: 'Expected share of the genome from founders that came under it, above 0, at most 1.',
    ...share,
  })
  share: number;
}

/** What the audit holds against a label. */
export class FlagView {
  @Shown({ description: 'Which rule raised it.', enum: flagCodes })
  code: FlagCode;

  @Shown({ description: 'What it does to the label.', enum: flagSeverities })
  severity: FlagSeverity;

  @Shown({ description: 'What was found, in a plain sentence.' })
  detail: string;

  @Shown({
    description: 'The records that caused it, those with the largest shares first, at most 50.',
    type: [NamedRecordView],
  })
  records: NamedRecordView[];

  @Shown({ description: 'What would clear it, in a plain sentence.' })
  clearedBy: string;

  @Shown({
    description:
      'That a registrar acknowledged this flag of this animal, and why; the flag stays as grave as it is. Null where nobody did, and of young that are only planned.',
    type: AcknowledgedView,
    nullable: true,
  })
  acknowledged: AcknowledgedView | null;
}

/** An animal's label and how far it can be trusted. */
export class LabelView {
  @Shown({ description: 'The label: the name of its line. Null without a line.', type: String, nullable: true })
  name: string | null;

  @Shown({ description: 'The kind of label, from the line.', enum: labelKinds, type: String, nullable: true })
  kind: LabelKind | null;

  @Shown({ description: 'The weakest standing that carries a share of the genome.', enum: standings })
  standing: Standing;

  @Shown({ description: 'Expected genome shares by standing, best first; they sum to 1.', type: [StandingShareView] })
  shares: StandingShareView[];

  @Shown({
    description: 'How much of the animal is traced to founders that carry its label on paper.',
    type: TracedShareView,
  })
  tracedShare: TracedShareView;

  @Shown({
    description: 'Labels of founders that differ from its own, the largest share first.',
    type: [OtherLabelView],
  })
  otherLabels: OtherLabelView[];

  @Shown({ description: 'What the audit holds against the label, the gravest first.', type: [FlagView] })
  flags: FlagView[];
}

/** A source as the shares name it. */
export class ShareSourceView {
  @Shown({ description: 'Id of the source; "private-source-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'Whether it is a private source that whoever asks may not see.' })
  isPrivate: boolean;

  @Shown({ description: 'What it is called.', example: 'Import, about 1994' })
  title: string;

  @Shown({
    description:
      'How well these founders of it stand, by rule, under the label asked about, by their own best where none is; a source is named more than once where some of its founders stand otherwise by claims of their own. Unknown where it may not be seen.',
    enum: standings,
  })
  standing: Standing;

  @Shown({ description: 'The label it was received under.', type: String, nullable: true })
  label: string | null;
}

/** A clutch as the shares name it. */
export class ShareClutchView {
  @Shown({ description: 'Id of the clutch; "private-clutch-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'Whether it is a private clutch that whoever asks may not see.' })
  isPrivate: boolean;

  @Shown({ description: 'What it is called.', example: 'clutch of 2021-04-12' })
  title: string;
}

/** Where genes begin: exactly one of source, founder and unknownParentOf is there. */
export class OriginView {
  @Shown({ description: 'The source that the founders came from.', type: ShareSourceView, required: false })
  source?: ShareSourceView;

  @Shown({ description: 'A founder of unknown origin.', type: AnimalRef, required: false })
  founder?: AnimalRef;

  @Shown({ description: 'The clutch of which a parent is unknown.', type: ShareClutchView, required: false })
  unknownParentOf?: ShareClutchView;

  @Shown({
    description:
      'How well it stands, by rule, under the label asked about: unknown for a parent that nobody knows, for a founder of unknown origin of which nothing is claimed, and for what may not be seen.',
    enum: standings,
  })
  standing: Standing;
}

/** A share of the genome by where it begins. */
export class ShareView extends OriginView {
  @Shown({ description: 'Expected share of the genome, above 0, at most 1; all shares sum to 1.', ...share })
  share: number;
}

/** A part of an inbreeding coefficient by where the doubled genes began. */
export class PartialInbreedingView extends OriginView {
  @Shown({
    description:
      'Partial inbreeding, 0 to 1 (Lacy, Alaks & Walsh 1996): probability that both copies of a gene come from one gene of this founder, or through founders of this source that are kin. All parts sum to F.',
    ...share,
  })
  part: number;
}

/** How complete a pedigree is. */
export class CompletenessView {
  @Shown({ description: 'How many generations were looked at.', type: 'integer', minimum: 1 })
  generations: number;

  @Shown({ description: 'Completeness index over these generations, 0 to 1 (MacCluer et al. 1983).', ...share })
  index: number;
}

/** The state of the register that figures belong to. */
export class AsOfView {
  @Shown({
    description: 'Revision of the register: grows with every change that can touch a figure.',
    type: 'integer',
    minimum: 0,
  })
  revision: number;

  @Shown({ description: 'When that revision was written, RFC 3339 in UTC.', format: 'date-time' })
  at: string;
}

/** What the lineage says about one animal. */
export class LineageView {
  @Shown({ description: 'Inbreeding coefficient with its range and the candidate pairs.', type: InbreedingView })
  inbreeding: InbreedingView;

  @Shown({
    description: 'Generations on the longest recorded path to a founder; 0 for a founder.',
    type: 'integer',
    minimum: 0,
  })
  depth: number;

  @Shown({ description: 'Generations back in which every ancestor is known.', type: 'integer', minimum: 0 })
  fullDepth: number;

  @Shown({
    description:
      'Complete generation equivalent, in generations: Σ ½ⁿ over known ancestors n generations back (Maignel et al. 1996).',
    type: 'number',
    minimum: 0,
  })
  generationEquivalents: number;

  @Shown({ description: 'How complete the pedigree is.', type: CompletenessView, nullable: true })
  completeness: CompletenessView | null;

  @Shown({
    description:
      'Generations since the wild by the least of the parents (CITES Resolution Conf. 10.16): 0 wild-collected, 1 with one wild parent. Null where it cannot be known. It decides no permit.',
    type: 'integer',
    minimum: 0,
    nullable: true,
  })
  filialGeneration: number | null;

  @Shown({
    description:
      'Mean kinship with the living animals of its line, itself included where it lives, 0 to 1 (Ballou & Lacy 1995). Null without a line or without living animals in it.',
    ...share,
    nullable: true,
  })
  meanKinship: number | null;

  @Shown({
    description: 'What the mean kinship is to be compared with; null without a line or without living animals in it.',
    type: LineKinshipView,
    nullable: true,
  })
  lineKinship: LineKinshipView | null;

  @Shown({ description: 'The label and how far it can be trusted.', type: LabelView })
  label: LabelView;

  @Shown({ description: 'Where the genome is expected to come from, the largest share first.', type: [ShareView] })
  shares: ShareView[];

  @Shown({ description: 'How far its genes have met themselves before.', type: AncestralInbreedingView })
  ancestralInbreeding: AncestralInbreedingView;

  @Shown({
    description:
      'The parts of F by founder or source, the largest first, those of founders of one source together; at most 50, the rest is what is missing from F. Empty where F is 0.',
    type: [PartialInbreedingView],
  })
  partialInbreeding: PartialInbreedingView[];

  @Shown({
    description:
      'Whether the figures belong to the register as it was when it was asked. Always true so far: an answer waits for its figures.',
  })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
