import { sexes, standings, statuses, type Sex, type Standing, type Status } from '../../../shared/vocabulary.ts';
import { Shown, ShownDay } from '../../platform/fields.ts';
import { AsOfView } from '../lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const texts = { type: 'array', items: { type: 'string' } } as const;
const maybeTexts = { type: 'array', items: { type: 'string', nullable: true } } as const;
const maybeDays = { type: 'array', items: { type: 'string', format: 'date', nullable: true } } as const;
const places = { type: 'array', items: { type: 'integer', minimum: -1 } } as const;
const shares = { type: 'array', items: share } as const;
const maybeShares = { type: 'array', items: { ...share, nullable: true } } as const;

/** Animals as columns: the entries at one place of all lists tell of one animal. */
export class AnimalColumnsView {
  @Shown({ description: 'Id; "private-1" and so on for one that may not be seen.', ...texts })
  id: string[];

  @Shown({ description: 'Registry number; null where the animal may not be seen.', ...maybeTexts })
  number: (string | null)[];

  @Shown({ description: "The keeper's own code.", ...maybeTexts })
  code: (string | null)[];

  @Shown({ description: 'Sex as recorded.', type: 'array', items: { type: 'string', enum: [...sexes] } })
  sex: Sex[];

  @Shown({ description: 'Status as recorded.', type: 'array', items: { type: 'string', enum: [...statuses] } })
  status: Status[];

  @Shown({ description: 'Place in `clutches` of the clutch that it hatched from; −1 where none is told.', ...places })
  clutch: number[];

  @Shown({ description: 'Place in `sources` of its source; −1 without one.', ...places })
  source: number[];

  @Shown({ description: 'Place in `keepers` of its keeper; −1 where that is not told.', ...places })
  keeper: number[];

  @Shown({
    description: 'Place in `lines` of its line; −1 for a member of the line asked about, and where it is not told.',
    ...places,
  })
  line: number[];

  @Shown({ description: 'Hatching date, EDTF.', ...maybeTexts })
  hatched: (string | null)[];

  @Shown({ description: 'First calendar day that the hatching date may mean; null where open.', ...maybeDays })
  earliest: (string | null)[];

  @Shown({ description: 'Last calendar day that the hatching date may mean; null where open.', ...maybeDays })
  latest: (string | null)[];

  @Shown({
    description:
      'Expected inbreeding coefficient, 0 to 1 (Wright 1922), to six decimals. Null where nothing is known or the animal may not be seen.',
    ...maybeShares,
  })
  inbreeding: (number | null)[];

  @Shown({
    description:
      'How a founder stands under the label of the line; null for animals of a clutch, of another line, and private ones.',
    type: 'array',
    items: { type: 'string', enum: [...standings], nullable: true },
  })
  standing: (Standing | null)[];
}

/** Expected genome shares of clutches by how well the label of the line is carried, to six decimals. */
export class StandingColumnsView implements Record<Standing, number[]> {
  @Shown({ description: 'A primary paper names the place.', ...shares })
  documented: number[];

  @Shown({ description: 'Two independent papers agree.', ...shares })
  corroborated: number[];

  @Shown({ description: "Somebody's word.", ...shares })
  stated: number[];

  @Shown({ description: 'Named by appearance.', ...shares })
  'by-looks': number[];

  @Shown({ description: 'A paper contradicts.', ...shares })
  disputed: number[];

  @Shown({ description: 'No claim, or parents that nobody knows.', ...shares })
  unknown: number[];
}

/** Clutches as columns. What all young of a clutch share stands here once. */
export class ClutchColumnsView {
  @Shown({ description: 'Id; "private-clutch-1" and so on for one that may not be seen.', ...texts })
  id: string[];

  @Shown({ description: "The keeper's own code.", ...maybeTexts })
  code: (string | null)[];

  @Shown({ description: 'Laying date, EDTF.', ...maybeTexts })
  laid: (string | null)[];

  @Shown({ description: 'First calendar day that the laying date may mean; null where open.', ...maybeDays })
  earliest: (string | null)[];

  @Shown({ description: 'Last calendar day that the laying date may mean; null where open.', ...maybeDays })
  latest: (string | null)[];

  @Shown({
    description: 'Least inbreeding coefficient of its young over the candidate parents, 0 to 1; null where not told.',
    ...maybeShares,
  })
  inbreedingLeast: (number | null)[];

  @Shown({
    description:
      'Greatest inbreeding coefficient of its young over the candidate parents, 0 to 1; null where not told.',
    ...maybeShares,
  })
  inbreedingGreatest: (number | null)[];

  @Shown({ description: 'Probability that the sire is a frog nobody knows, 0 to 1.', ...shares })
  unknownSire: number[];

  @Shown({ description: 'Probability that the dam is a frog nobody knows, 0 to 1.', ...shares })
  unknownDam: number[];

  @Shown({
    description: 'Genome shares of the young by standing; they sum to 1, to 0 where the clutch may not be seen.',
    type: StandingColumnsView,
  })
  standings: StandingColumnsView;
}

/** Recorded candidate parents as columns, clutch by clutch. */
export class ParentColumnsView {
  @Shown({ description: 'Place of the clutch in `clutches`.', ...places })
  clutch: number[];

  @Shown({ description: 'Place of the parent in `animals`.', ...places })
  animal: number[];

  @Shown({
    description: 'As what; `either` where sexes are not known.',
    type: 'array',
    items: { type: 'string', enum: ['sire', 'dam', 'either'] },
  })
  role: ('sire' | 'dam' | 'either')[];

  @Shown({ description: 'Probability that it is one, above 0, at most 1.', ...shares })
  probability: number[];
}

/** A source that founders came from. */
export class OverTimeSourceView {
  @Shown({ description: 'Id of the source; "private-source-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'What it is called.', example: 'Import, about 1994' })
  title: string;

  @Shown({ description: 'Date of the source, EDTF.', type: String, nullable: true })
  date: string | null;

  @ShownDay('First', 'date')
  earliest: string | null;

  @ShownDay('Last', 'date')
  latest: string | null;

  @Shown({ description: 'How well it stands under the label of the line, by rule.', enum: standings })
  standing: Standing;
}

/** A keeper of animals. */
export class OverTimeKeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper.' })
  name: string;
}

/** Every animal and clutch of a line, as columns. */
export class LineOverTimeView {
  @Shown({ description: 'How many of the animals are members of the line that may be seen; they come first.' })
  members: number;

  @Shown({ description: 'The members in the order of their numbers, then other animals that are parents.' })
  animals: AnimalColumnsView;

  @Shown({ description: 'The clutches that they hatched from.' })
  clutches: ClutchColumnsView;

  @Shown({ description: 'Who may be a parent of which clutch.' })
  parents: ParentColumnsView;

  @Shown({ description: 'The sources of founders among the animals.', type: [OverTimeSourceView] })
  sources: OverTimeSourceView[];

  @Shown({ description: 'Keepers of the animals.', type: [OverTimeKeeperView] })
  keepers: OverTimeKeeperView[];

  @Shown({ description: 'Names of the other lines that parents come from.', type: [String] })
  lines: string[];

  @Shown({
    description:
      'Whether the figures follow every change of the register; false while figures of some of the animals are still being recomputed.',
  })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
