import type { components } from './openapi.d.ts';

/** What the service sends, under the names that the screens use. The shapes are generated from the API. */
type Sent = components['schemas'];

export type Warning = Sent['WarningView'];
export type Observation = Sent['ObservationView'];

/** An animal named in passing; one that may not be seen has no number and `isPrivate`. */
export type Ref = Omit<Sent['AnimalRef'], 'isPrivate'> & { isPrivate?: boolean };
export type IndividualItem = Sent['IndividualItemView'];
export type Individual = Sent['IndividualView'];
/** What a change of several animals does to each. */
export type ChangedTogether = Sent['ChangedTogetherView'];
/** What descends from an animal, clutch by clutch. */
export type Descendants = Sent['DescendantsView'];
export type Species = Sent['SpeciesView'];
export type Line = Sent['LineView'];
export type Source = Sent['SourceView'];
/** What is alive of a source. */
export type SourceLiving = Sent['SourceLivingView'];
/** What is said of where a source, a line or an animal comes from. */
export type Claim = Sent['ClaimView'];
/** What the register says of a whole line. */
export type LineAudit = Sent['LineAuditView'];
/** Who may be the mate of an animal. */
export type Mates = Sent['MatesView'];
export type Mate = Sent['PossibleMateView'];
/** A group of animals: every sire with every dam, and what would make it fit better. */
export type Group = Sent['GroupView'];
export type GroupMember = Sent['GroupMemberView'];
export type GroupChange = Sent['GroupChangeView'];
/** Pairs chosen for a line. */
export type Plan = Sent['PlanView'];
export type PlanPair = Sent['PlanPairView'];
/** A plan that was kept, as lists show it, and whole. */
export type KeptPlanItem = Sent['KeptPlanItemView'];
export type KeptPlan = Sent['KeptPlanView'];
export type KeptPlanPair = Sent['KeptPlanPairView'];
/** What the next generations would be like under a plan, under today's pairings and at random. */
export type PlanForecast = Sent['PlanForecastView'];
export type ForecastCourse = Sent['ForecastCourseView'];
export type ForecastFigure = Sent['ForecastFigureView'];
/** A dated photograph of an animal. */
export type Photograph = Sent['PhotographRecordView'];
/** What bears on a claim. */
export type Evidence = Sent['EvidenceView'];
/** Places that claims speak of. */
export type Places = Sent['PlacesView'];
export type ClaimedPlace = Sent['ClaimedPlaceView'];
/** What an animal or a line was called over time. */
export type LabelHistory = Sent['LabelHistoryView'];
export type LabelEvent = Sent['LabelEventView'];

export type Pairing = Sent['PairingView'];
export type PairingMember = Sent['PairingMemberView'];
/** A clutch whose recorded parents the housing contradicts. */
export type ParentCorrection = Sent['ParentCorrectionView'];

/** A clutch as lists show it. */
export type ClutchItem = Sent['ClutchItemView'];
export type Clutch = Sent['ClutchView'];
export type ClutchParents = ClutchItem['parents'];

/** What the pedigree says about one animal. */
export type Lineage = Sent['LineageView'];
export type Inbreeding = Sent['InbreedingFigureView'];
export type YoungInbreeding = Sent['YoungInbreedingView'];
/** One candidate pair of parents and how related they are. */
export type ParentPair = Sent['PairView'];
/** Where a part of a genome begins: exactly one of source, founder and unknownParentOf. */
export type OriginShare = Sent['ShareView'];
export type StandingShare = Sent['StandingShareView'];
export type Flag = Sent['FlagView'];
/** That a mark is acknowledged, as it is told beside it. */
export type Acknowledged = Sent['AcknowledgedView'];
export type Acknowledgement = Sent['AcknowledgementView'];
/** The figures of one row of the register. */
export type Figures = Sent['FigureItemView'];
/** Why F of an animal is what it is. */
export type InbreedingLoops = Sent['InbreedingLoopsView'];
/** One loop: two paths up from the parents to where they meet. */
export type InbreedingLoop = Sent['InbreedingLoopView'];
export type LoopStep = Sent['LoopStepView'];
/** A common ancestor, and what of its loops is listed. */
export type LoopAncestor = Sent['LoopAncestorView'];
/** Which coefficients an animal with uncertain ancestors can have. */
export type InbreedingSpread = Sent['InbreedingSpreadView'];
/** Figures of an animal as recorded and under assumptions. */
export type WhatIf = Sent['WhatIfView'];
/** An uncertain clutch of which other odds can be assumed. */
export type AssumableClutch = Sent['AssumableClutchView'];
/** What is measured of a set of animals. */
export type LineageSet = Sent['LineageSetView'];
/** The young of one year among a set. */
export type HatchYear = Sent['HatchYearView'];
/** Kinships of some animals, rows and columns in the order of `individuals`. */
export type Kinship = Sent['KinshipView'];
/** What young of a pairing not yet made would be. */
export type Forecast = Sent['ForecastView'];

/** Animals that pass to another keeper, or left the club. */
export type Transfer = Sent['TransferView'];
export type TransferItem = Sent['TransferItemView'];

export type ImportAnswer = Sent['ImportView'];

/** One page of a list; `next` is the cursor of the page after it, `total` is told only when asked for. */
export interface Page<T> {
  items: T[];
  next: string | null;
  total?: number;
}

/** One difference that an entry of the journal made. */
export type JournalChange = Sent['JournalChangeView'];
/** One entry of the journal: who did what to which record. */
export type JournalEntry = Sent['JournalEntryView'];
/** The newest seal of the journal, and what waits for one. */
export type JournalHead = Sent['JournalHeadView'];

/** A sheet that was taken before. */
export type PastImport = Sent['PastImportView'];

/** Two records of one animal side by side. */
export type MergeComparison = Sent['MergeComparisonView'];
export type MovedCounts = Sent['MovedCountsView'];
/** Something that says that two records may not be one animal. */
export type Obstacle = Sent['ObstacleView'];
/** That two records of one animal were merged. */
export type Merge = Sent['MergeView'];
/** A field that a merged record can take from the other. */
export type MergeField = MergeComparison['fields'][number]['field'];

/** What is about to be lost, and who carries the last of it. */
export type AtRiskList = Sent['AtRiskListView'];
export type AtRisk = Sent['AtRiskView'];
/** A founder with its source, or a source. */
export type Beginning = Sent['BeginningView'];
/** Who would bring new blood to a keeper's part of a line. */
export type NewBlood = Sent['NewBloodView'];
export type NewBloodAnimal = Sent['NewBloodAnimalView'];
/** What an exchange between two does for both. */
export type Exchange = Sent['ExchangeView'];
export type ExchangeOutcome = Sent['ExchangeOutcomeView'];
export type ProposedExchange = Sent['ProposedExchangeView'];
export type MovingAnimal = Sent['MovingAnimalView'];
export type Holding = Sent['HoldingView'];
export type LineOverTime = Sent['LineOverTimeView'];

/** What is due at the tanks. */
export type Today = Sent['TodayView'];
export type SexingGroup = Sent['SexingGroupView'];
export type ProfileGap = Sent['ProfileGapView'];
