import { kinshipLimits } from './mate-choice.ts';

/** Two animals, by their registry numbers or ids. */
export interface WishedPair {
  readonly male: string;
  readonly female: string;
}

/** In how many pairs an animal may be, as it is typed. */
export interface WishedUse {
  readonly animal: string;
  readonly most: string;
}

/** What a plan for a line is to be: what stands in the address of the page, numbers as they are typed. */
export interface PlanWish {
  pairings: string;
  weight: string;
  inbreedingTo: string;
  usesMost: string;
  /** Empty: any number of moves. */
  movesMost: string;
  reserve: string;
  reserveMonths: string;
  seconds: string;
  fixed: WishedPair[];
  forbidden: WishedPair[];
  uses: WishedUse[];
  /** Ids of keepers. */
  keptTogether: string[];
  /** Animals of other lines. */
  also: string[];
  /** Animals to choose among; empty: all living ones of the line. */
  individuals: string[];
  crossLines: boolean;
  aboveLimit: boolean;
  disputed: boolean;
}

/** Fields with one number: the least and the greatest, and what counts where nothing is said. */
export const planNumbers = {
  pairings: { least: 1, most: 200, usual: '4' },
  usesMost: { least: 1, most: 50, usual: '1' },
  movesMost: { least: 0, most: 200, usual: '' },
  reserve: { least: 0, most: 200, usual: '0' },
  reserveMonths: { least: 1, most: 600, usual: '48' },
  seconds: { least: 1, most: 40, usual: '20' },
} as const;
type NumberField = keyof typeof planNumbers;
const numberFields = Object.keys(planNumbers) as NumberField[];

const leaves = { crossLines: 'cross-lines', aboveLimit: 'above-limit', disputed: 'disputed' } as const;
type Leave = keyof typeof leaves;
const leaveFields = Object.keys(leaves) as Leave[];

const pairText = ({ male, female }: WishedPair): string => `${male}~${female}`;

/** Whether two pairs are the same two animals. */
export const isSamePair = (one: WishedPair, other: WishedPair): boolean => pairText(one) === pairText(other);

/** Reads the wish from an address; what it does not know counts as not said. */
export function planWishOf(parameters: URLSearchParams): PlanWish {
  const said = (name: string): string | undefined => parameters.get(name)?.trim();
  const list = (name: string): string[] => [...new Set((said(name) ?? '').split(',').filter(Boolean))];
  const pairs = (name: string): WishedPair[] =>
    list(name).flatMap((text) => {
      const [male = '', female = ''] = text.split('~');
      return male === '' || female === '' ? [] : [{ male, female }];
    });
  const limit = said('inbreedingTo') ?? '0.125';
  const allowed = list('allow');
  const number = (field: NumberField): string => said(field) ?? planNumbers[field].usual;
  return {
    pairings: number('pairings'),
    weight: said('weight') ?? '1',
    inbreedingTo: kinshipLimits.some(({ value }) => value === limit) ? limit : '0.125',
    usesMost: number('usesMost'),
    movesMost: number('movesMost'),
    reserve: number('reserve'),
    reserveMonths: number('reserveMonths'),
    seconds: number('seconds'),
    fixed: pairs('fixed'),
    forbidden: pairs('forbidden'),
    uses: list('uses').flatMap((text) => {
      const [animal = '', most = ''] = text.split('~');
      return animal === '' ? [] : [{ animal, most }];
    }),
    keptTogether: list('keptTogether'),
    also: list('also'),
    individuals: list('individuals'),
    crossLines: allowed.includes(leaves.crossLines),
    aboveLimit: allowed.includes(leaves.aboveLimit),
    disputed: allowed.includes(leaves.disputed),
  };
}

/** The wish as an address writes it; the number of pairs always, what else counts without being said is left out. */
export function planParameters(wish: PlanWish): Map<string, string> {
  const usual = { ...planNumbers, weight: { usual: '1' }, inbreedingTo: { usual: '0.125' } };
  const plain = [...numberFields, 'weight', 'inbreedingTo'] as const;
  const said = new Map<string, string>([['pairings', wish.pairings.trim()]]);
  for (const field of plain) if (wish[field].trim() !== usual[field].usual) said.set(field, wish[field].trim());
  const lists = {
    fixed: wish.fixed.map(pairText),
    forbidden: wish.forbidden.map(pairText),
    uses: wish.uses.map(({ animal, most }) => `${animal}~${most.trim()}`),
    keptTogether: wish.keptTogether,
    also: wish.also,
    individuals: wish.individuals,
    allow: leaveFields.filter((field) => wish[field]).map((field) => leaves[field]),
  };
  for (const [field, items] of Object.entries(lists)) if (items.length > 0) said.set(field, items.join(','));
  return said;
}

/** Parameters as the part of an address behind the question mark; commas stay readable. */
export function queryOf(parameters: ReadonlyMap<string, string>): string {
  const parts = [...parameters].map(([name, value]) => `${name}=${encodeURIComponent(value).replaceAll('%2C', ',')}`);
  return parts.length === 0 ? '' : `?${parts.join('&')}`;
}

/** What is wrong with a wish, by field, in sentences; empty where it can be asked. */
export function planRefusals(wish: PlanWish): Partial<Record<keyof PlanWish, string>> {
  const wrong: Partial<Record<keyof PlanWish, string>> = {};
  for (const field of numberFields) {
    const { least, most, usual } = planNumbers[field];
    if (wish[field].trim() === '' && usual === '') continue;
    if (whole(wish[field], least, most) === null)
      wrong[field] =
        usual === ''
          ? `Write a whole number from ${least} to ${most}, or nothing.`
          : `Write a whole number from ${least} to ${most}.`;
  }
  if (weightOf(wish.weight) === null) wrong.weight = 'Write a number from 0 to 100, such as 1 or 0.5.';
  if (wish.uses.some(({ most }) => whole(most, 0, 50) === null))
    wrong.uses = 'Write a whole number from 0 to 50 for each; 0 leaves it out.';
  if (wish.also.length > 0 && !wish.crossLines)
    wrong.also = 'These are of other lines: allow other lines, or take them out.';
  return wrong;
}

/** The question to the service; only for a wish without refusals. */
export function planQuestion(wish: PlanWish): object {
  const number = (field: NumberField): number => Number(wish[field].trim());
  return {
    pairings: number('pairings'),
    weight: weightOf(wish.weight) ?? 1,
    inbreedingTo: Number(wish.inbreedingTo),
    usesMost: number('usesMost'),
    movesMost: wish.movesMost.trim() === '' ? null : number('movesMost'),
    reserve: number('reserve'),
    reserveMonths: number('reserveMonths'),
    seconds: number('seconds'),
    fixed: wish.fixed,
    forbidden: wish.forbidden,
    uses: wish.uses.map(({ animal, most }) => ({ individual: animal, most: Number(most) })),
    keptTogether: wish.keptTogether,
    ...(wish.also.length > 0 ? { also: wish.also } : {}),
    ...(wish.individuals.length > 0 ? { individuals: wish.individuals } : {}),
    allow: leaveFields.filter((field) => wish[field]).map((field) => leaves[field]),
  };
}

/** A weight as it is typed, 0 to 100, with a point or a comma; null where it is none. */
export function weightOf(text: string): number | null {
  const value = /^\d{1,3}([.,]\d{1,6})?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : NaN;
  return value >= 0 && value <= 100 ? value : null;
}

function whole(text: string, least: number, most: number): number | null {
  const value = /^\d{1,3}$/.test(text.trim()) ? Number(text.trim()) : NaN;
  return value >= least && value <= most ? value : null;
}
