/** Which members of a line are measured, as the address of its page says it. Empty text means "any". */
export interface LineChoice {
  /** The living alone, or every member that was ever recorded. */
  of: 'living' | 'all';
  /** Name of a keeper. */
  keeper: string;
  /** Years of hatching, both ends included. */
  hatchedFrom: string;
  hatchedTo: string;
}

/** What a line's page shows first. */
export const usualChoice: Readonly<LineChoice> = { of: 'living', keeper: '', hatchedFrom: '', hatchedTo: '' };

/** Reads the choice of an address; what it does not know counts as the usual. */
export function choiceOf(parameters: URLSearchParams): LineChoice {
  const said = (name: string): string => (parameters.get(name) ?? '').trim();
  const year = (name: string): string => (/^(1[7-9]|2[01])\d\d$/.test(said(name)) ? said(name) : '');
  return {
    of: said('of') === 'all' ? 'all' : 'living',
    keeper: said('keeper'),
    hatchedFrom: year('hatchedFrom'),
    hatchedTo: year('hatchedTo'),
  };
}

/** The address of a line's page with a choice; what is usual is left out. */
export function lineAddress(lineId: string, choice: LineChoice, change: Partial<LineChoice> = {}): string {
  const next = { ...choice, ...change };
  const parameters = new URLSearchParams();
  for (const name of ['of', 'keeper', 'hatchedFrom', 'hatchedTo'] as const)
    if (next[name] !== usualChoice[name]) parameters.set(name, next[name]);
  const text = parameters.toString();
  return `/lines/${encodeURIComponent(lineId)}${text === '' ? '' : `?${text}`}`;
}

/** The filters by which the service finds the members. */
export function memberFilters(lineId: string, choice: LineChoice): Record<string, string> {
  const { keeper, hatchedFrom, hatchedTo } = choice;
  return { lineId, status: choice.of === 'living' ? 'alive' : '', keeper, hatchedFrom, hatchedTo };
}

/** When the members hatched, in words; empty for any time. */
export function hatchedInWords({ hatchedFrom: from, hatchedTo: to }: LineChoice): string {
  if (from === '' && to === '') return '';
  if (from === to) return `in ${from}`;
  if (to === '') return `in ${from} or later`;
  return from === '' ? `in ${to} or earlier` : `from ${from} to ${to}`;
}

/** The chosen members in words, to name them in a file or a note. */
export function choiceInWords(choice: LineChoice): string {
  const hatched = hatchedInWords(choice);
  return [
    choice.of === 'living' ? 'the living' : 'all members',
    ...(choice.keeper === '' ? [] : [`kept by ${choice.keeper}`]),
    ...(hatched === '' ? [] : [`hatched ${hatched}`]),
  ].join(', ');
}
