/** Which mates a keeper wants to see: what stands in the address of the page, under the names that the service takes. */
export interface MateChoice {
  readonly sort: 'kinship' | 'diversity';
  /** Greatest kinship, as the address says it. */
  readonly kinshipTo: string;
  /** Whether they have bred: `true`, `false` or, empty, both. */
  readonly proven: '' | 'true' | 'false';
  readonly crossLines: boolean;
  readonly unsexed: boolean;
  readonly disputed: boolean;
}

/** Limits of kinship in the words of the trade; the first is what counts where the address names none. */
export const kinshipLimits = [
  { value: '0.125', label: 'half-sibs at most, 12.5\u202f%' },
  { value: '0.0625', label: 'cousins at most, 6.3\u202f%' },
  { value: '0', label: 'nobody related, 0\u202f%' },
  { value: '0.25', label: 'full sibs at most, 25\u202f%' },
  { value: '1', label: 'whoever it is' },
] as const;

const isOne = <T extends string>(value: string | null, of: readonly T[]): value is T => of.some((one) => one === value);

/** Reads the choice from an address; what it does not know counts as not chosen. */
export function mateChoiceOf(parameters: URLSearchParams): MateChoice {
  const [sort, limit, proven] = ['sort', 'kinshipTo', 'proven'].map((name) => parameters.get(name));
  const limits = kinshipLimits.map(({ value }) => value);
  return {
    sort: sort === 'diversity' ? 'diversity' : 'kinship',
    kinshipTo: isOne(limit ?? null, limits) ? (limit ?? '0.125') : '0.125',
    proven: proven === 'true' || proven === 'false' ? proven : '',
    crossLines: parameters.get('crossLines') === 'true',
    unsexed: parameters.get('unsexed') === 'true',
    disputed: parameters.get('disputed') === 'true',
  };
}

/** The choice as an address or a question writes it; what counts without being said is left out. */
export function mateParameters(choice: MateChoice): URLSearchParams {
  const said = new URLSearchParams();
  const usual = mateChoiceOf(said);
  for (const [name, value] of Object.entries(choice))
    if (value !== usual[name as keyof MateChoice]) said.set(name, String(value));
  return said;
}
