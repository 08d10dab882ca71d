import { kinshipLimits } from './mate-choice.ts';
import { weightOf } from './plan-wish.ts';

/** What a keeper asks of a group: what stands in the address of the page. */
export interface GroupWish {
  /** Registry numbers or ids, each once. */
  readonly animals: readonly string[];
  /** Id of a line whose living animals are taken where none is named. */
  readonly line: string;
  /** Of which size the best group is wanted, as the trade writes it: `1.2`; empty for none. */
  readonly size: string;
  /** Greatest F of the young of a pair that is proposed, as the address says it. */
  readonly inbreedingTo: string;
  /** How much F of the young weighs against their mean kinship with the line, as it is typed. */
  readonly weight: string;
  readonly crossLines: boolean;
  readonly disputed: boolean;
}

/** Most animals that a group, or the list that one is chosen from, may have; the service takes no more. */
export const groupMost = 60;

/** Reads the wish from an address; what it does not know counts as not said. */
export function groupWishOf(parameters: URLSearchParams): GroupWish {
  const said = (name: string): string => (parameters.get(name) ?? '').trim();
  const limits = kinshipLimits.map(({ value }) => value as string);
  return {
    animals: [...new Set(said('animals').split(',').filter(Boolean))].slice(0, groupMost),
    line: said('line'),
    size: said('size'),
    inbreedingTo: limits.includes(said('inbreedingTo')) ? said('inbreedingTo') : '0.125',
    weight: said('weight') === '' ? '1' : said('weight'),
    crossLines: said('crossLines') === 'true',
    disputed: said('disputed') === 'true',
  };
}

/** The address of a wish; what counts without being said is left out. */
export function groupAddress(wish: GroupWish): string {
  const usual = groupWishOf(new URLSearchParams());
  const said = Object.entries(wish)
    .map(([name, value]) => [name, Array.isArray(value) ? value.join(',') : String(value)] as const)
    .filter(([name, value]) => value !== String(usual[name as keyof GroupWish]));
  // commas stay readable: nothing else in an address needs them
  const query = said.map(([name, value]) => `${name}=${encodeURIComponent(value).replaceAll('%2C', ',')}`).join('&');
  return query === '' ? '/match/group' : `/match/group?${query}`;
}

/** How many males and females a size such as `1.2` means, 1 to 6 each; null where it says nothing such. */
export function groupSize(text: string): { males: number; females: number } | null {
  const found = /^([1-6])\.([1-6])(\.0)?$/.exec(text.trim());
  return found ? { males: Number(found[1]), females: Number(found[2]) } : null;
}

/** The question to the service. */
export function groupQuestion({ animals, size, inbreedingTo, weight, crossLines, disputed }: GroupWish): object {
  const limit = Number(inbreedingTo);
  return {
    individuals: animals,
    ...groupSize(size),
    inbreedingTo: limit,
    weight: weightOf(weight) ?? 1,
    crossLines,
    disputed,
  };
}
