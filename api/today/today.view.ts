import { evidenceKindNames, traitNames, type EvidenceKind, type Trait } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';
import { ClutchItemView, ClutchPairingView } from '../register/clutches/clutch.view.ts';
import { AnimalStatusView } from '../register/individuals/individual.view.ts';
import { WarningView } from '../register/warnings/warning.view.ts';
import { TransferItemView } from '../selling/transfers/transfer.view.ts';
import { holdings, type Holding } from './today.dto.ts';

/** The most that anything is counted to; more are "more than". */
export const COUNTED_MOST = 1000;

/** Clutches of which something is expected within the next two weeks, but not yet. */
export class ComingView {
  @Shown({ description: 'How many.', type: 'integer', minimum: 1 })
  count: number;

  @Shown({ description: 'The first day on which one of them may be due, YYYY-MM-DD.', format: 'date' })
  from: string;
}

/** Clutches that are due. */
export class DueClutchesView {
  @Shown({
    description: 'Those whose window is open or closed less than 61 days ago, the latest first.',
    type: [ClutchItemView],
  })
  items: ClutchItemView[];

  @Shown({ description: 'How many there are in all.', type: 'integer', minimum: 0 })
  total: number;

  @Shown({ description: 'What comes within 14 days; null where nothing does.', type: ComingView, nullable: true })
  coming: ComingView | null;

  @Shown({
    description: `How many are longer overdue, or have no day to reckon from, counted to ${COUNTED_MOST + 1}.`,
    type: 'integer',
    minimum: 0,
    maximum: COUNTED_MOST + 1,
  })
  older: number;
}

/** An animal whose sex can be told. */
export class SexingAnimalView extends AnimalStatusView {
  @Shown({ description: 'Counts the changes of its record from 1; also its ETag.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'Id of its keeper.', format: 'uuid' })
  keeperId: string;
}

/** Animals of one clutch whose sex can be told by looks. */
export class SexingGroupView {
  @Shown({
    description: 'Id of their clutch; null where they have none, or where it may not be seen.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  clutchId: string | null;

  @Shown({ description: 'Scientific name.' })
  species: string;

  @Shown({ description: 'When the first of them hatched, EDTF.' })
  hatched: string;

  @Shown({ description: 'Whole months since then, at least (months of 30.4375 days).', type: 'integer', minimum: 0 })
  months: number;

  @Shown({
    description: 'The pairing that all of them live in; null where they live apart, or where it may not be seen.',
    type: ClutchPairingView,
    nullable: true,
  })
  pairing: ClutchPairingView | null;

  @Shown({ description: 'The animals, by number.', type: [SexingAnimalView] })
  animals: SexingAnimalView[];
}

/** Animals whose sex can be told. */
export class SexingView {
  @Shown({ description: 'By clutch, those who became old enough last first.', type: [SexingGroupView] })
  groups: SexingGroupView[];

  @Shown({ description: 'How many animals are shown.', type: 'integer', minimum: 0 })
  shown: number;

  @Shown({
    description: `How many there are, counted to ${COUNTED_MOST + 1}.`,
    type: 'integer',
    minimum: 0,
    maximum: COUNTED_MOST + 1,
  })
  total: number;
}

export class DueTransfersView {
  @Shown({ description: 'Offers to whoever asks, newest first.', type: [TransferItemView] })
  items: TransferItemView[];

  @Shown({ description: 'How many there are in all.', type: 'integer', minimum: 0 })
  total: number;
}

/** Evidence that whoever asks may review. */
export class DueReviewView {
  @Shown({ description: 'Id of the evidence.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What kind of document it is.', enum: evidenceKindNames })
  kind: EvidenceKind;

  @Shown({ description: 'Which document it is, in words.' })
  reference: string;

  @Shown({ description: 'What the claim says that it bears on.' })
  claim: string;

  @Shown({
    description: 'What the claim is about, in words; null where that may not be seen.',
    type: String,
    nullable: true,
  })
  about: string | null;

  @Shown({ description: 'Name of who brought it.' })
  keeper: string;

  @Shown({ description: 'When it was brought, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;
}

export class DueReviewsView {
  @Shown({ description: 'The longest waiting first; empty for who may not review.', type: [DueReviewView] })
  items: DueReviewView[];

  @Shown({ description: 'How many there are in all.', type: 'integer', minimum: 0 })
  total: number;
}

/** A record whose warnings nobody accepted. */
export class WarnedRecordView {
  @Shown({ description: 'Whether it is an animal or a clutch.', enum: ['animal', 'clutch'] })
  kind: 'animal' | 'clutch';

  @Shown({ description: 'Id of the record.', format: 'uuid' })
  id: string;

  @Shown({ description: "What people call it: an animal's code or number, a clutch's title." })
  title: string;

  @Shown({ description: 'Its warnings, at least one.', type: [WarningView] })
  warnings: WarningView[];
}

export class DueWarningsView {
  @Shown({ description: 'Animals before clutches, newest first.', type: [WarnedRecordView] })
  items: WarnedRecordView[];

  @Shown({ description: 'How many were found in all among those looked at.', type: 'integer', minimum: 0 })
  total: number;

  @Shown({
    description: 'How many of the newest records were looked at, of each kind at most.',
    type: 'integer',
    minimum: 1,
  })
  lookedAt: number;
}

/** A species of which nobody noted what is needed to reckon with it. */
export class ProfileGapView {
  @Shown({ description: 'Id of the species.', format: 'uuid' })
  speciesId: string;

  @Shown({ description: 'Scientific name.' })
  species: string;

  @Shown({ description: 'What its profile lacks.', enum: traitNames, isArray: true })
  missing: Trait[];
}

/** What is due. */
export class TodayView {
  @Shown({ description: 'The day that this is reckoned for, YYYY-MM-DD.', format: 'date' })
  on: string;

  @Shown({ description: 'Whose animals and clutches were looked at.', enum: holdings })
  of: Holding;

  @Shown({ description: 'Eggs that should hatch.', type: DueClutchesView })
  hatching: DueClutchesView;

  @Shown({ description: 'Tadpoles that should leave the water.', type: DueClutchesView })
  leavingWater: DueClutchesView;

  @Shown({ description: 'Living animals without a sex that are old enough to tell.', type: SexingView })
  sexing: SexingView;

  @Shown({ description: 'Animals offered to whoever asks.', type: DueTransfersView })
  transfers: DueTransfersView;

  @Shown({ description: 'Evidence of others to review.', type: DueReviewsView })
  reviews: DueReviewsView;

  @Shown({ description: 'Records that look implausible, where nobody accepted that.', type: DueWarningsView })
  warnings: DueWarningsView;

  @Shown({
    description: 'Species kept of whose profile something is missing that days are reckoned from.',
    type: [ProfileGapView],
  })
  profiles: ProfileGapView[];

  @Shown({ description: 'Whether whoever asks keeps an animal, alive or not.' })
  keepsAnimals: boolean;

  @Shown({ description: 'Whether whoever asks has a pairing.' })
  keepsPairings: boolean;
}
