import { actionInWords, actionNames, kindWords } from './journal-words.ts';

/** What the journal shows, as its address says it. Empty text means "any". */
export interface JournalFilters {
  /** Id of the keeper who did it. */
  keeper: string;
  kind: string;
  action: string;
  /** Calendar days, both ends included. */
  from: string;
  to: string;
  /** Id of the record that it was done to. */
  record: string;
  /** Cursor of the page; empty for the newest. */
  after: string;
}

export const anyEntry: Readonly<JournalFilters> = {
  keeper: '',
  kind: '',
  action: '',
  from: '',
  to: '',
  record: '',
  after: '',
};

const names = Object.keys(anyEntry) as (keyof JournalFilters)[];
const isId = (text: string): boolean => /^[0-9a-f-]{36}$/i.test(text);
const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** Reads the filters of an address; what it does not know counts as "any". */
export function filtersOf(parameters: URLSearchParams): JournalFilters {
  const said = (name: string, fits: (text: string) => boolean): string => {
    const text = (parameters.get(name) ?? '').trim();
    return fits(text) ? text : '';
  };
  return {
    keeper: said('keeper', isId),
    kind: said('kind', (kind) => kind in kindWords),
    action: said('action', (action) => (actionNames as readonly string[]).includes(action)),
    from: said('from', isDay),
    to: said('to', isDay),
    record: said('record', isId),
    after: said('after', () => true),
  };
}

/** The address that shows the filters; what is "any" is left out. A change of any filter begins with the newest entry. */
export function addressOf(filters: JournalFilters, change: Partial<JournalFilters> = {}): string {
  const next = { ...filters, after: '', ...change };
  const parameters = new URLSearchParams();
  for (const name of names) if (next[name] !== '') parameters.set(name, next[name]);
  const text = parameters.toString();
  return text === '' ? '/journal' : `/journal?${text}`;
}

/** Whether anything narrows the list. */
export const isNarrowed = (filters: JournalFilters): boolean =>
  names.some((name) => name !== 'after' && filters[name] !== '');

/** Days in words: "from 2026-01-01 to 2026-03-31". */
export function daysInWords({ from, to }: Pick<JournalFilters, 'from' | 'to'>): string {
  if (from === '' && to === '') return 'at any time';
  if (from === to) return `on ${from}`;
  if (to === '') return `since ${from}`;
  return from === '' ? `until ${to}` : `from ${from} to ${to}`;
}

/** Choices of the closed parts, with the words for "any" first. */
export const actionChoices: readonly { value: string; words: string }[] = [
  { value: '', words: 'did anything' },
  ...actionNames.map((value) => ({ value, words: actionInWords(value) })),
];
export const kindChoices: readonly { value: string; words: string }[] = [
  { value: '', words: 'records of any kind' },
  ...Object.entries(kindWords).map(([value, words]) => ({ value, words })),
];
