import type { LabelKind, LossCause, ObservationKind, Sex, SexBasis, SourceKind, Status } from '$shared/vocabulary.ts';
import { word } from '../words/word.ts';

/** The closed vocabularies as choices on the screen, in the words of the trade. */

/** The sexes as a sentence names them. */
export const sexWords: Record<Sex, string> = { male: word('male'), female: word('female'), unsexed: 'not sexed' };

/** What became of an animal, in a word or two. */
export const statusWords: Record<Status, string> = {
  alive: word('alive'),
  died: word('died'),
  gone: word('gone'),
  unknown: 'not known',
};

export const sexBasisChoices: { value: SexBasis | ''; label: string }[] = [
  { value: '', label: 'not said' },
  { value: 'looks', label: 'by looks' },
  { value: 'calling', label: 'heard calling' },
  { value: 'eggs', label: 'seen with eggs' },
  { value: 'courtship', label: 'seen courting' },
  { value: 'genetic', label: 'by a genetic test' },
  { value: 'other', label: word('other') },
];

export const statusChoices: { value: Status; label: string }[] = [
  { value: 'alive', label: word('alive') },
  { value: 'died', label: word('died') },
  { value: 'gone', label: word('gone') },
  { value: 'unknown', label: 'not known' },
];

export const labelKindChoices: { value: LabelKind; label: string }[] = [
  { value: 'locality', label: 'a place' },
  { value: 'trade-name', label: 'a trade name' },
  { value: 'cross', label: 'a cross' },
  { value: 'unlabelled', label: 'no label' },
];

export const sourceKindChoices: { value: SourceKind; label: string }[] = [
  { value: 'import', label: word('import') },
  { value: 'wild-collection', label: 'wild collection' },
  { value: 'purchase', label: word('purchase') },
  { value: 'unknown', label: 'not known' },
];

export const noteKindWords: Record<ObservationKind, string> = {
  note: word('note'),
  measurement: word('measurement'),
  health: word('health'),
  behaviour: word('behaviour'),
};

export const lossWords: Record<LossCause, string> = {
  infertile: word('infertile'),
  mould: word('mould'),
  eaten: word('eaten'),
  'dried-out': 'dried out',
  deformed: word('deformed'),
  unknown: 'not known',
};
