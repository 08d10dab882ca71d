import { clutchStages, type ClutchStage } from '$shared/vocabulary.ts';

/** Which clutches are listed, as the address says it. Empty text means "any". */
export interface ClutchFilters {
  stage: ClutchStage | '';
  /** Ids. */
  line: string;
  pairing: string;
  keeper: string;
  /** Years of laying, both ends included. */
  laidFrom: string;
  laidTo: string;
  /** Cursor of the page; empty for the first. */
  after: string;
}

export const anyClutch: Readonly<ClutchFilters> = {
  stage: '',
  line: '',
  pairing: '',
  keeper: '',
  laidFrom: '',
  laidTo: '',
  after: '',
};

const names = Object.keys(anyClutch) as (keyof ClutchFilters)[];
const isId = (text: string): boolean => /^[0-9a-f-]{36}$/i.test(text);
const isYear = (text: string): boolean => /^\d{4}$/.test(text);

/** Reads the filters of an address; what it does not know counts as "any". */
export function filtersOf(parameters: URLSearchParams): ClutchFilters {
  const said = (name: string, fits: (text: string) => boolean): string => {
    const text = (parameters.get(name) ?? '').trim();
    return fits(text) ? text : '';
  };
  const stage = said('stage', () => true);
  return {
    stage: clutchStages.find((known) => known === stage) ?? '',
    line: said('line', isId),
    pairing: said('pairing', isId),
    keeper: said('keeper', isId),
    laidFrom: said('laidFrom', isYear),
    laidTo: said('laidTo', isYear),
    after: said('after', () => true),
  };
}

/** The address that shows the filters; what is "any" is left out. A change of any filter begins with the newest clutch. */
export function clutchesAddress(change: Partial<ClutchFilters>, filters: ClutchFilters = anyClutch): string {
  const next = { ...filters, after: '', ...change };
  const parameters = new URLSearchParams();
  for (const name of names) if (next[name] !== '') parameters.set(name, next[name]);
  const text = parameters.toString();
  return text === '' ? '/clutches' : `/clutches?${text}`;
}

/** What the API is asked for. */
export const clutchQuery = ({ stage, line, pairing, keeper, laidFrom, laidTo, after }: ClutchFilters) => ({
  stage,
  lineId: line,
  pairingId: pairing,
  keeperId: keeper,
  laidFrom,
  laidTo,
  after,
});

/** Whether anything narrows the list. */
export const isNarrowed = (filters: ClutchFilters): boolean =>
  names.some((name) => name !== 'after' && filters[name] !== '');
