import {
  labelKinds,
  observationKinds,
  sexBases,
  sexes,
  statuses,
  type LabelKind,
  type ObservationKind,
  type Sex,
  type SexBasis,
  type Status,
  type Visibility,
} from '../../../shared/vocabulary.ts';
import { Shown, ShownVisibility } from '../../platform/fields.ts';
import { RecordView } from '../record.view.ts';
import { WarningView } from '../warnings/warning.view.ts';

/** An animal as other records name it; of one that may not be seen, only that it is there. */
class AnimalRefView {
  @Shown({
    description: 'Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen.',
  })
  id: string;

  @Shown({
    description: 'Registry number with its check character; null where it may not be seen.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({ description: "The keeper's own code.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Sex; unsexed where it may not be seen.', enum: sexes })
  sex: Sex;

  @Shown({ description: 'Whether it is a private animal that whoever asks may not see.' })
  isPrivate: boolean;
}

/** An animal as other records name it, with its status. */
export class AnimalStatusView extends AnimalRefView {
  @Shown({ description: 'Whether it lives; unknown where it may not be seen.', enum: statuses })
  status: Status;
}

/** An animal as lists show it. */
export class IndividualItemView extends RecordView {
  @Shown({ description: 'Registry number with its check character.', example: '10704-4' })
  number: string;

  @Shown({ description: "The keeper's own code, at most 40 characters.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Scientific name of its species.' })
  species: string;

  @Shown({ description: 'Id of its species.', format: 'uuid' })
  speciesId: string;

  @Shown({ description: 'Name of its line.', type: String, nullable: true })
  line: string | null;

  @Shown({ description: 'Id of its line.', type: String, format: 'uuid', nullable: true })
  lineId: string | null;

  @Shown({ description: "What the line's label is.", enum: labelKinds, nullable: true })
  labelKind: LabelKind | null;

  @Shown({ description: 'Sex.', enum: sexes })
  sex: Sex;

  @Shown({ description: 'Whether it lives.', enum: statuses })
  status: Status;

  @Shown({ description: 'When it hatched, EDTF.', type: String, nullable: true })
  hatched: string | null;

  @Shown({ description: 'When it left the water, EDTF.', type: String, nullable: true })
  outOfWater: string | null;

  @Shown({ description: 'Name of its keeper; null where a stranger asks.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Id of its keeper; null where a stranger asks.', type: String, format: 'uuid', nullable: true })
  keeperId: string | null;

  @ShownVisibility()
  visibility: Visibility;
}

/** The source that an animal came from. */
export class OriginSourceView {
  @Shown({ description: 'Id of the source; "private-source-1" where it may not be seen.' })
  id: string;

  @Shown({ description: 'Code of the source.', type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'What people call it, such as "Import, about 1994".' })
  title: string;

  @Shown({ description: 'Whether it is a private source that whoever asks may not see.' })
  isPrivate: boolean;
}

/** The clutch that an animal came from. */
export class OriginClutchView {
  @Shown({ description: 'Id of the clutch; "private-clutch-1" where it may not be seen.' })
  id: string;

  @Shown({ description: 'Code of the clutch.', type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'What people call it, such as "clutch of 2021-04-12".' })
  title: string;

  @Shown({ description: 'When it was laid, EDTF.', type: String, nullable: true })
  laid: string | null;

  @Shown({ description: 'Whether it is a private clutch that whoever asks may not see.' })
  isPrivate: boolean;
}

/** A stay in a pairing. */
export class StayView {
  @Shown({ description: 'Id of the pairing.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the pairing.' })
  name: string;

  @Shown({
    description:
      'Males.females.unsexed housed now; of all who ever were, where none is left. Animals that may not be seen are not counted.',
    example: '1.2.0',
  })
  notation: string;

  @Shown({ description: 'When the animal joined, EDTF.', type: String, nullable: true })
  joined: string | null;

  @Shown({ description: 'When the animal left, EDTF.', type: String, nullable: true })
  left: string | null;
}

export class OwnClutchView {
  @Shown({ description: 'Id of the clutch.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What people call it.' })
  title: string;

  @Shown({ description: 'When it was laid, EDTF.', type: String, nullable: true })
  laid: string | null;

  @Shown({ description: 'Eggs.', type: 'integer', nullable: true, minimum: 0 })
  eggs: number | null;

  @Shown({ description: 'Eggs that hatched.', type: 'integer', nullable: true, minimum: 0 })
  hatched: number | null;

  @Shown({ description: 'Young that left the water.', type: 'integer', nullable: true, minimum: 0 })
  outOfWater: number | null;

  @Shown({
    description: 'The role of the animal; "either" in a group that cannot be sexed.',
    enum: ['sire', 'dam', 'either'],
  })
  role: 'sire' | 'dam' | 'either';

  @Shown({ description: 'Probability that the animal is a parent of it, over 0 to 1.', minimum: 0, maximum: 1 })
  probability: number;
}

export class MateView extends AnimalRefView {
  @Shown({
    description: 'Probability of being the other parent (in a group: of being the pair with this animal), over 0 to 1.',
    minimum: 0,
    maximum: 1,
  })
  probability: number;
}

/** One of its young. */
export class YoungAnimalView extends AnimalStatusView {
  @Shown({
    description:
      'Whether a clutch that may be seen names it as a possible parent; false where it may not be seen itself.',
  })
  hasYoung: boolean;
}

/** One clutch of an animal, with whom, and what came of it. */
export class YoungView {
  @Shown({ description: 'The clutch.', type: OwnClutchView })
  clutch: OwnClutchView;

  @Shown({ description: 'Who may be the other parent, most probable first.', type: [MateView] })
  mates: MateView[];

  @Shown({ description: 'Its young in the register, by number.', type: [YoungAnimalView] })
  animals: YoungAnimalView[];
}

/** A dated remark, as the animal shows it. */
export class RemarkView {
  @Shown({ description: 'Id of the observation.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Kind of remark.', enum: observationKinds })
  kind: ObservationKind;

  @Shown({ description: 'When it was observed, EDTF.', type: String, nullable: true })
  observedOn: string | null;

  @Shown({ description: 'What was observed.', type: String, nullable: true })
  text: string | null;

  @Shown({ description: 'Snout-vent length in millimetres.', type: Number, nullable: true, minimum: 0, maximum: 500 })
  svlMm: number | null;

  @Shown({ description: 'Mass in grams.', type: Number, nullable: true, minimum: 0, maximum: 5000 })
  massG: number | null;
}

/** Another record of the same animal. */
export class MergedIntoView {
  @Shown({ description: 'Id of that record.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Its registry number with its check character.', example: '10704-4' })
  number: string;
}

/** A record of the same animal that was merged into this one. */
export class MergedRecordOfView extends MergedIntoView {
  @Shown({ description: 'Id of the merging, by which it can be undone.', format: 'uuid' })
  mergeId: string;
}

/** One animal, whole. */
export class IndividualView extends IndividualItemView {
  @Shown({ description: 'How the sex came to be known.', enum: sexBases, nullable: true })
  sexBasis: SexBasis | null;

  @Shown({ description: 'When the sex came to be known, EDTF.', type: String, nullable: true })
  sexedOn: string | null;

  @Shown({ description: 'The source it came from.', type: OriginSourceView, nullable: true })
  source: OriginSourceView | null;

  @Shown({ description: 'The clutch it came from.', type: OriginClutchView, nullable: true })
  clutch: OriginClutchView | null;

  @Shown({ description: 'When it died, EDTF.', type: String, nullable: true })
  died: string | null;

  @Shown({ description: 'Notes.', type: String, nullable: true })
  notes: string | null;

  @Shown({ description: 'Whether a clutch that is certainly its own has hatched; computed.' })
  proven: boolean;

  @Shown({ description: 'What looks implausible; it never blocks.', type: [WarningView] })
  warnings: WarningView[];

  @Shown({ description: 'Pairings it lives or lived in, newest first.', type: [StayView] })
  pairings: StayView[];

  @Shown({ description: 'Clutches that are or may be its own, newest first.', type: [YoungView] })
  young: YoungView[];

  @Shown({
    description: 'The record of the same animal that goes on in the place of this one; null where it was not merged.',
    type: MergedIntoView,
    nullable: true,
  })
  mergedInto: MergedIntoView | null;

  @Shown({
    description: 'Records of the same animal that were merged into this one, by number.',
    type: [MergedRecordOfView],
  })
  merges: MergedRecordOfView[];

  @Shown({ description: 'The last 50 remarks, newest first.', type: [RemarkView] })
  observations: RemarkView[];
}
