import {
  flagCodes,
  flagSeverities,
  labelKinds,
  type FlagCode,
  type FlagSeverity,
  type LabelKind,
} from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { AcknowledgedView } from '../../provenance/acknowledgements/acknowledgement.view.ts';
import { AnimalRef, AsOfView, NamedRecordView, ShareView, StandingShareView } from '../lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const maybeShare = { ...share, nullable: true } as const;
const maybeCount = { type: 'number', minimum: 0, nullable: true } as const;
const count = { type: 'integer', minimum: 0 } as const;

/** Members of one keeper. */
export class KeeperMembersView {
  @Shown({ description: 'Name of the keeper; null where whoever asks is told no names.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Id of the keeper.', type: String, format: 'uuid', nullable: true })
  keeperId: string | null;

  @Shown({ description: 'How many members they keep or kept last.', ...count })
  members: number;

  @Shown({ description: 'How many of these live.', ...count })
  living: number;
}

/** Members of a line, counted: those that whoever asks may see. */
export class AuditMembersView {
  @Shown({ description: 'All members, the dead among them.', ...count })
  all: number;

  @Shown({ description: 'Those that live.', ...count })
  living: number;

  @Shown({ description: 'By keeper, the most living first, at most 100.', type: [KeeperMembersView] })
  byKeeper: KeeperMembersView[];
}

/** A record that causes a flag of members. */
export class FlagCauseView extends NamedRecordView {
  @Shown({ description: 'How many members with the flag descend from it, or are it.', ...count })
  members: number;

  @Shown({ description: 'How many of these live.', ...count })
  living: number;

  @Shown({
    description:
      'Expected part of the gene pool of the living that came through it, 0 to 1; of all members where none lives.',
    ...share,
  })
  share: number;
}

/** A flag that members of the line carry. */
export class LineFlagView {
  @Shown({ description: 'Which rule raised it.', enum: flagCodes })
  code: FlagCode;

  @Shown({ description: 'What it does to the label.', enum: flagSeverities })
  severity: FlagSeverity;

  @Shown({ description: 'How many members carry it, in a plain sentence.' })
  detail: string;

  @Shown({ description: 'How many members carry it.', ...count })
  members: number;

  @Shown({ description: 'How many of these live.', ...count })
  living: number;

  @Shown({
    description: 'The records that cause it, those with the largest part of the gene pool first, at most 50.',
    type: [FlagCauseView],
  })
  causes: FlagCauseView[];

  @Shown({ description: 'How many records cause it in all.', ...count })
  causeCount: number;

  @Shown({ description: 'What would clear it, in a plain sentence.' })
  clearedBy: string;

  @Shown({
    description:
      'That a registrar acknowledged this flag of the line, and why; it stays as grave as it is. Null where nobody did.',
    type: AcknowledgedView,
    nullable: true,
  })
  acknowledged: AcknowledgedView | null;

  @Shown({
    description: 'How many of the members that carry it have it acknowledged of themselves, as of animals.',
    ...count,
  })
  membersAcknowledged: number;
}

/** What is measured of some members together. */
export class AuditGroupView {
  @Shown({ description: 'How many animals it rests on.', ...count })
  animals: number;

  @Shown({ description: 'Mean expected inbreeding coefficient F, 0 to 1 (Wright 1922); null for none.', ...maybeShare })
  meanInbreeding: number | null;

  @Shown({ description: 'Gene diversity, 1 − mean kinship, 0 to 1 (Lacy 1989); null for none.', ...maybeShare })
  geneDiversity: number | null;

  @Shown({
    description: 'Founder genome equivalents, 1/(2 · mean kinship), in animals (Lacy 1989); null for none.',
    ...maybeCount,
  })
  founderGenomeEquivalents: number | null;

  @Shown({ description: 'Effective number of founders, 1/Σp², in animals (Lacy 1989); null for none.', ...maybeCount })
  effectiveFounders: number | null;

  @Shown({
    description: 'Expected parts of the gene pool from each of `origins`, in the same order, 0 to 1 each.',
    type: 'array',
    items: share,
  })
  shares: number[];
}

/** One year of a line. */
export class AuditYearView {
  @Shown({ description: 'The year.', type: 'integer' })
  year: number;

  @Shown({ description: 'The young that hatched in it.', type: AuditGroupView })
  young: AuditGroupView;

  @Shown({
    description:
      'The members that lived at its end: hatched, or arrived with their source, in that year or before, and living still or died later. Members whose dates leave that open are in no year.',
    type: AuditGroupView,
  })
  standing: AuditGroupView;
}

/** Blood that came in from another line. */
export class OutsideBloodView {
  @Shown({
    description: 'The animal of another line through which it came, the nearest to the members.',
    type: AnimalRef,
  })
  through: AnimalRef;

  @Shown({ description: 'Its line; null where it may not be told.', type: String, nullable: true })
  line: string | null;

  @Shown({
    description: 'Year in which the first dated member with it hatched; null without any.',
    type: 'integer',
    nullable: true,
  })
  since: number | null;

  @Shown({ description: 'Expected part of the gene pool of the living that it makes, 0 to 1.', ...share })
  share: number;

  @Shown({ description: 'How many members descend from it.', ...count })
  members: number;

  @Shown({ description: 'How many of these live.', ...count })
  living: number;
}

/** Something of which nobody knows where it came from. */
export class AuditGapView extends FlagCauseView {}

/** What is not known of where the line comes from. */
export class AuditGapsView {
  @Shown({
    description: 'Founders of unknown origin, and clutches of which a parent is unknown, at most 50.',
    type: [AuditGapView],
  })
  items: AuditGapView[];

  @Shown({ description: 'How many there are in all.', ...count })
  count: number;

  @Shown({ description: 'Expected part of the gene pool of the living that comes from all of them, 0 to 1.', ...share })
  share: number;
}

/** A living member whose label says more than its evidence. */
export class OutrunningView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'Expected share of founders whose papers name the label, 0 to 1.', ...share })
  traced: number;

  @Shown({ description: 'The least that this share can be, however candidate parents turn out, 0 to 1.', ...share })
  least: number;

  @Shown({ description: 'What is missing: 1 minus the least traced share, 0 to 1.', ...share })
  shortfall: number;

  @Shown({ description: 'Whether a registrar acknowledged that of this animal; its lineage says why.' })
  isAcknowledged: boolean;
}

/** How far the labels of the living are borne out. */
export class AuditTracedView {
  @Shown({ description: 'Mean expected traced share of the living, 0 to 1; null where none lives.', ...maybeShare })
  expected: number | null;

  @Shown({ description: 'Mean of their least traced shares, 0 to 1; null where none lives.', ...maybeShare })
  least: number | null;

  @Shown({ description: 'How many of the living have a label that says more than its evidence.', ...count })
  outrunning: number;

  @Shown({ description: 'Those with the least traced share first, at most 100.', type: [OutrunningView] })
  items: OutrunningView[];
}

/** A living member with foreign blood. */
export class RemovalAnimalView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({
    description:
      'Expected share of its genome from other lines, 0 to 1; 0 where it only has founders that carry other labels.',
    ...share,
  })
  outside: number;

  @Shown({
    description:
      'Which of the flags about foreign blood it carries; none where its founders all carry one other label.',
    enum: flagCodes,
    isArray: true,
  })
  flags: FlagCode[];

  @Shown({
    description: 'Those that a registrar acknowledged of this animal; its lineage says why.',
    enum: flagCodes,
    isArray: true,
  })
  acknowledged: FlagCode[];
}

/** What taking animals out of breeding would restore, and cost. */
export class RemovalView {
  @Shown({
    description:
      'How many of the living carry blood of another line, or of founders that carry another label (under a name that claims nothing: of several labels): the least that would have to leave breeding. 0 for a cross, which is no fault.',
    ...count,
  })
  count: number;

  @Shown({
    description: 'Some of them, those with the most foreign blood first, at most 100.',
    type: [RemovalAnimalView],
  })
  animals: RemovalAnimalView[];

  @Shown({ description: 'The living as they are.', type: AuditGroupView })
  before: AuditGroupView;

  @Shown({ description: 'The living without them.', type: AuditGroupView })
  after: AuditGroupView;
}

const questionKinds = ['undocumented-source', 'unknown-origin', 'unknown-parent', 'uncertain-clutch'] as const;

/** A question that nobody has answered yet. */
export class OpenQuestionView {
  @Shown({ description: 'What is not known.', enum: questionKinds })
  kind: (typeof questionKinds)[number];

  @Shown({ description: 'The source, founder or clutch that it is about.', type: NamedRecordView })
  record: NamedRecordView;

  @Shown({ description: 'The question, in plain words.' })
  question: string;

  @Shown({
    description:
      'Part of the expected genome of the living that an answer would settle, above 0, at most 1. Of a source: what comes from its founders and would be traced. Of a founder of unknown origin or an unknown parent: what comes from it. Of an uncertain clutch: what came through parents that are only candidates. Each as if all other questions stayed open: these parts must not be added.',
    ...share,
  })
  settles: number;
}

/** The questions whose answers would settle the most. */
export class OpenQuestionsView {
  @Shown({ description: 'The one that settles the most first, at most 25.', type: [OpenQuestionView] })
  items: OpenQuestionView[];

  @Shown({ description: 'How many there are in all.', ...count })
  count: number;
}

/** The line that is audited. */
export class AuditedLineView {
  @Shown({ description: 'Id of the line.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the line: the label of its members.' })
  name: string;

  @Shown({ description: 'Scientific name of the species.' })
  species: string;

  @Shown({ description: 'Kind of label.', enum: labelKinds })
  labelKind: LabelKind;
}

/** Everything that the register says of a line. It tells of the members that whoever asks may see. */
export class LineAuditView {
  @Shown({ description: 'The line.', type: AuditedLineView })
  line: AuditedLineView;

  @Shown({ description: 'Its members, counted.', type: AuditMembersView })
  members: AuditMembersView;

  @Shown({ description: 'The flags that members carry, the gravest first.', type: [LineFlagView] })
  flags: LineFlagView[];

  @Shown({
    description:
      'Expected parts of the gene pool of the living by how well the label of their founders stands, best first; they sum to 1. Empty where none lives.',
    type: [StandingShareView],
  })
  standings: StandingShareView[];

  @Shown({
    description:
      'Where the gene pool of all members begins, the largest parts first, at most 24; founders of one source together.',
    type: [ShareView],
  })
  origins: ShareView[];

  @Shown({ description: 'How many origins there are in all.', ...count })
  originCount: number;

  @Shown({ description: 'All members together.', type: AuditGroupView })
  all: AuditGroupView;

  @Shown({ description: 'The living together.', type: AuditGroupView })
  now: AuditGroupView;

  @Shown({
    description: 'Each year in which a member hatched or died, in their order, the latest 80.',
    type: [AuditYearView],
  })
  years: AuditYearView[];

  @Shown({ description: 'How many members are dated to a year of hatching.', ...count })
  dated: number;

  @Shown({ description: 'How many members have dates that leave open in which years they lived.', ...count })
  untold: number;

  @Shown({ description: 'Blood from outside the line, the largest part first, at most 50.', type: [OutsideBloodView] })
  outsideBlood: OutsideBloodView[];

  @Shown({ description: 'What is not known of where the line comes from.', type: AuditGapsView })
  gaps: AuditGapsView;

  @Shown({ description: 'How far the labels of the living are borne out by papers.', type: AuditTracedView })
  traced: AuditTracedView;

  @Shown({ description: 'What taking animals out of breeding would restore, and cost.', type: RemovalView })
  removal: RemovalView;

  @Shown({ description: 'What to find out first.', type: OpenQuestionsView })
  questions: OpenQuestionsView;

  @Shown({ description: 'What must be kept in mind with these figures, in plain sentences.', type: [String] })
  cautions: string[];

  @Shown({ description: 'The state of the register that this is computed from.', type: AsOfView })
  asOf: AsOfView;
}
