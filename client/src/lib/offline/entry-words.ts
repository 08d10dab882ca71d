import type { LossCause } from '$shared/vocabulary.ts';
import { lossWords, noteKindWords } from '../records/vocabulary-words.ts';
import { dateBeside } from '../ui/typed-dates.ts';
import { decimalSign } from '../words/language.ts';
import { word } from '../words/word.ts';
import { sameValue } from './outcome.ts';

type Fields = Readonly<Record<string, unknown>>;

/** What the fields of entries are called, in the order in which they are told. What is not named here is not told one by one. */
const fieldWords: Readonly<Record<string, string>> = {
  laid: word('laid'),
  observedOn: word('when'),
  kind: word('kind'),
  text: 'what was seen',
  svlMm: 'length in mm',
  massG: 'mass in g',
  eggs: word('eggs'),
  fertile: word('fertile'),
  hatched: word('hatched'),
  hatchedOn: 'hatched on',
  outOfWater: 'out of water',
  losses: word('losses'),
  site: word('site'),
  code: word('code'),
  notes: word('notes'),
  visibility: word('visibility'),
};

const fieldNames = Object.keys(fieldWords);

/** The value of a field in words; `–` where nothing is said. */
function valueInWords(field: string, value: unknown): string {
  if (value === null || value === undefined || value === '') return '–';
  if (field === 'losses') return lossesInWords(value as readonly { cause: LossCause; count: number }[]);
  if (typeof value === 'number') return String(value).replace('.', decimalSign);
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  if (field === 'kind') return (noteKindWords as Readonly<Record<string, string>>)[text] ?? text;
  return ['laid', 'observedOn', 'hatchedOn'].includes(field) ? (dateBeside(text) ?? text) : text;
}

const lossesInWords = (losses: readonly { cause: LossCause; count: number }[]): string =>
  losses.length === 0 ? word('none') : losses.map(({ cause, count }) => `${count} ${lossWords[cause]}`).join(', ');

/** What is said, field by field: `hatched: 9; out of water: 5`. */
export function saidInWords(body: Fields): string {
  return fieldNames
    .filter((field) => field in body && body[field] !== null && !isUsual(field, body[field]))
    .map((field) => `${fieldWords[field] ?? field}: ${valueInWords(field, body[field])}`)
    .join('; ');
}

/** What is so unless somebody says otherwise needs no words. */
const isUsual = (field: string, value: unknown): boolean =>
  (field === 'kind' && (value === 'note' || value === 'measurement')) || (field === 'visibility' && value === 'club');

/** One field of an entry beside what the register has. */
export interface ComparedField {
  readonly field: string;
  readonly label: string;
  readonly mine: string;
  /** What the register has now. */
  readonly now: string;
  /** What it was when the entry was written. */
  readonly base: string;
  /** Somebody changed this very field. */
  readonly isTheirs: boolean;
}

/** An entry beside the record as it is now, field by field. */
export function comparedFields(body: Fields, base: Fields | null, now: Fields): ComparedField[] {
  return fieldNames
    .filter((field) => field in body)
    .map((field) => ({
      field,
      label: fieldWords[field] ?? field,
      mine: valueInWords(field, body[field]),
      now: valueInWords(field, now[field]),
      base: valueInWords(field, base?.[field]),
      isTheirs: base !== null && !sameValue(base[field], now[field]),
    }));
}
