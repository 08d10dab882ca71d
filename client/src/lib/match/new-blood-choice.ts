/** What a keeper looks at on the page of new blood: it stands in the address of the page. */
export interface NewBloodChoice {
  /** Id of the keeper whose animals get it; empty: whoever looks; `line`: the whole line. */
  readonly keeper: string;
  readonly sort: '' | 'animal' | 'young' | 'lacking';
  readonly crossLines: boolean;
  readonly unsexed: boolean;
  readonly disputed: boolean;
  /** Whether all that is about to be lost in the club is shown, not what is of this line alone. */
  readonly wholeClub: boolean;
  /** How many carriers count as few. */
  readonly few: string;
  /** Id of the keeper to exchange with; empty: none yet. */
  readonly other: string;
  /** Ids of the animals that go, and that come. */
  readonly give: readonly string[];
  readonly take: readonly string[];
  readonly sameSex: boolean;
}

const sorts = ['animal', 'young', 'lacking'] as const;

/** Reads the choice from an address; what it does not know counts as not chosen. */
export function newBloodChoiceOf(parameters: URLSearchParams): NewBloodChoice {
  const sort = sorts.find((one) => one === parameters.get('sort')) ?? '';
  const few = parameters.get('few') ?? '';
  const list = (name: string): string[] => (parameters.get(name) ?? '').split(',').filter((id) => id !== '');
  const isOn = (name: string): boolean => parameters.get(name) === 'true';
  return {
    keeper: parameters.get('keeper') ?? '',
    sort,
    crossLines: isOn('crossLines'),
    unsexed: isOn('unsexed'),
    disputed: isOn('disputed'),
    wholeClub: isOn('wholeClub'),
    few: /^[1-5]$/.test(few) ? few : '1',
    other: parameters.get('other') ?? '',
    give: list('give'),
    take: list('take'),
    sameSex: isOn('sameSex'),
  };
}

/** The choice as an address writes it; what counts without being said is left out. */
export function newBloodParameters(choice: NewBloodChoice): URLSearchParams {
  const said = new URLSearchParams();
  const usual = newBloodChoiceOf(said);
  for (const [name, value] of Object.entries(choice)) {
    const text = Array.isArray(value) ? value.join(',') : String(value);
    const usually = usual[name as keyof NewBloodChoice];
    if (text !== (Array.isArray(usually) ? usually.join(',') : String(usually))) said.set(name, text);
  }
  return said;
}

/** The question about what is about to be lost, as the service takes it. */
export function atRiskQuestion(lineId: string, { wholeClub, few }: NewBloodChoice): URLSearchParams {
  return new URLSearchParams({ ...(wholeClub ? {} : { lineId }), mostCarriers: few, limit: '20' });
}

/** The question about what a holding lacks, as the service takes it. */
export function newBloodQuestion({ keeper, sort, crossLines, unsexed, disputed }: NewBloodChoice): URLSearchParams {
  const question = new URLSearchParams({ limit: '20' });
  if (keeper === 'line') question.set('of', 'line');
  else if (keeper !== '') question.set('keeperId', keeper);
  if (sort !== '') question.set('sort', sort);
  for (const [name, isOn] of Object.entries({ crossLines, unsexed, disputed })) if (isOn) question.set(name, 'true');
  return question;
}

/** The question about an exchange, as the service takes it; null while it is open who exchanges. */
export function exchangeQuestion(lineId: string, choice: NewBloodChoice, ownId: string): object | null {
  const one = choice.keeper === '' ? ownId : choice.keeper;
  if (choice.other === '' || one === 'line' || one === '') return null;
  const allow = [...(choice.disputed ? ['disputed'] : []), ...(choice.unsexed ? ['unsexed'] : [])];
  return {
    lineId,
    one: { keeperId: one },
    other: { keeperId: choice.other },
    give: choice.give,
    take: choice.take,
    sameSex: choice.sameSex,
    allow,
  };
}
