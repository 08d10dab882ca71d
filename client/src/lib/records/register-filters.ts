import type { Sex, Status } from '$shared/vocabulary.ts';
import {
  boundsInWords,
  boundsOf,
  figureSorts,
  figureWords,
  boundPhrases,
  noBounds,
  type Bounds,
  type FigureSort,
} from './figure-bounds.ts';
import { aroundPart, word } from '../words/word.ts';

/** What the register shows, as its address says it. Empty text means "any". Line, species and keeper go by name. */
export interface RegisterFilters extends Bounds {
  q: string;
  status: Status | '';
  sex: Sex | '';
  species: string;
  line: string;
  keeper: string;
  /** Years of hatching, both ends included. */
  hatchedFrom: string;
  hatchedTo: string;
  sort: Sort;
  order: 'asc' | 'desc';
  /** Cursor of the page; empty for the first. */
  after: string;
}

export const sorts = ['number', 'code', 'line', 'hatched', 'species', 'keeper', ...figureSorts] as const;
export type Sort = (typeof sorts)[number];

export const anyAnimal: Readonly<RegisterFilters> = {
  q: '',
  status: '',
  sex: '',
  species: '',
  line: '',
  keeper: '',
  hatchedFrom: '',
  hatchedTo: '',
  ...noBounds,
  sort: 'number',
  order: 'asc',
  after: '',
};

const names = Object.keys(anyAnimal) as (keyof RegisterFilters)[];
const statusWords: Record<Status, string> = {
  alive: word('alive'),
  died: word('dead'),
  gone: word('gone'),
  unknown: 'of unknown fate',
};
const sexWords: Record<Sex, string> = { male: 'male', female: 'female', unsexed: 'not sexed' };

/** Reads the filters of an address; what it does not know counts as "any". */
export function filtersOf(parameters: URLSearchParams): RegisterFilters {
  const said = (name: string): string => (parameters.get(name) ?? '').trim();
  const sort = said('sort');
  return {
    ...anyAnimal,
    q: said('q'),
    status: said('status') in statusWords ? (said('status') as Status) : '',
    sex: said('sex') in sexWords ? (said('sex') as Sex) : '',
    species: said('species'),
    line: said('line'),
    keeper: said('keeper'),
    hatchedFrom: year(said('hatchedFrom')),
    hatchedTo: year(said('hatchedTo')),
    ...boundsOf(said),
    sort: sorts.find((known) => known === sort) ?? 'number',
    order: said('order') === 'desc' ? 'desc' : 'asc',
    after: said('after'),
  };
}

/** The address that shows the filters; what is "any" is left out. A change of any filter begins at the first page. */
export function addressOf(filters: RegisterFilters, change: Partial<RegisterFilters> = {}): string {
  const next = { ...filters, after: '', ...change };
  const parameters = new URLSearchParams();
  for (const name of names) if (next[name] !== anyAnimal[name]) parameters.set(name, next[name]);
  const text = parameters.toString();
  return text === '' ? '/register' : `/register?${text}`;
}

/** The address of what is measured of the animals that the filters show, on all pages together. */
export function measuresAddress(filters: RegisterFilters): string {
  return addressOf(filters, { sort: anyAnimal.sort, order: anyAnimal.order }).replace(/^\/register/, '/measures');
}

/** The address where the animals that the filters show, on all pages together, are exported. */
export function exportAddress(filters: RegisterFilters): string {
  return addressOf(filters, { sort: anyAnimal.sort, order: anyAnimal.order }).replace(/^\/register/, '/export');
}

/** Whether anything narrows the list. */
export function isNarrowed(filters: RegisterFilters): boolean {
  return names.some((name) => !['sort', 'order', 'after'].includes(name) && filters[name] !== '');
}

type PartName = 'status' | 'sex' | 'species' | 'line' | 'hatched' | 'keeper' | 'sort' | FigureSort;

/** One underlined part of the sentence, with what stands before and behind it. */
export interface SentencePart {
  name: PartName;
  before: string;
  words: string;
  after: string;
  /** Set by the reader (bold, ink line), not "any" (dotted line). */
  isSet: boolean;
}

/** The filters as a sentence: "Animals that are *alive*, of *any line*, hatched *in 2022 or later*, …"; a figure only where it is bounded. */
export function sentenceOf(filters: RegisterFilters): SentencePart[] {
  const { status, sex, species, line, keeper, sort, order } = filters;
  const hatched = hatchedWords(filters.hatchedFrom, filters.hatchedTo);
  const part = (name: PartName, phrase: string, set: string, any: string) => ({
    name,
    phrase,
    words: set === '' ? any : set,
    isSet: set !== '',
  });
  const isUsualOrder = sort === 'number' && order === 'asc';
  const parts = [
    part('status', 'Animals that are {}', status === '' ? '' : statusWords[status], 'living, dead or gone'),
    part('sex', '{}', sex === '' ? '' : sexWords[sex], 'of any sex'),
    part('species', 'of {}', species, 'any species'),
    part('line', 'of {}', line, 'any line'),
    part('hatched', 'hatched {}', hatched, 'at any time'),
    part('keeper', 'kept by {}', keeper, word('anyone')),
    ...figureSorts
      .map((figure) => part(figure, boundPhrases[figure], boundsInWords(figure, filters), ''))
      .filter(({ isSet }) => isSet),
    part('sort', 'in order of {}', isUsualOrder ? '' : orderWords(sort, order), 'number'),
  ];
  return parts.map(({ phrase, ...rest }, place) => {
    const [before, after] = aroundPart(phrase);
    return { ...rest, before: place > 0 ? `, ${before}` : before, after };
  });
}

/** Choices of a closed part, each with the change it makes. */
export function choicesOf(name: 'status' | 'sex' | 'sort'): { words: string; change: Partial<RegisterFilters> }[] {
  if (name === 'status')
    return [
      { words: 'living, dead or gone', change: { status: '' } },
      ...Object.entries(statusWords).map(([status, words]) => ({ words, change: { status: status as Status } })),
    ];
  if (name === 'sex')
    return [
      { words: 'of any sex', change: { sex: '' } },
      ...Object.entries(sexWords).map(([sex, words]) => ({ words, change: { sex: sex as Sex } })),
    ];
  return sorts.flatMap((sort) =>
    (['asc', 'desc'] as const).map((order) => ({ words: orderWords(sort, order), change: { sort, order } })),
  );
}

function orderWords(sort: Sort, order: 'asc' | 'desc'): string {
  if (sort === 'hatched') return order === 'asc' ? 'hatching, oldest first' : 'hatching, youngest first';
  const figure = figureSorts.find((known) => known === sort);
  if (figure) return `${figureWords[figure]}, ${order === 'asc' ? word('lowest') : word('highest')} first`;
  return order === 'asc' ? sort : `${sort}, last first`;
}

function hatchedWords(from: string, to: string): string {
  if (from === '' && to === '') return '';
  if (from === to) return `in ${from}`;
  if (to === '') return `in ${from} or later`;
  return from === '' ? `in ${to} or earlier` : `from ${from} to ${to}`;
}

const year = (text: string): string => (/^\d{4}$/.test(text) ? text : '');
