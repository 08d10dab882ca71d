import type { Ref } from '../api/types.ts';
import { counted, percent } from '../ui/figures.ts';
import { planNumbers, type PlanWish, type WishedPair } from './plan-wish.ts';

/** What a plan was asked for, in a sentence: on paper the fields are gone, and a plan says nothing without its conditions. */
export function planWishInWords(wish: PlanWish, known: ReadonlyMap<string, Pick<Ref, 'code' | 'number'>>): string {
  const name = (text: string): string => known.get(text)?.code ?? text;
  const pair = ({ male, female }: WishedPair): string => `${name(male)} × ${name(female)}`;
  const said = (field: keyof typeof planNumbers): boolean => wish[field] !== planNumbers[field].usual;
  const uses = wish.uses.map(({ animal, most }) =>
    most === '0' ? `without ${name(animal)}` : `${name(animal)} in ${counted(Number(most), ['pair', 'pairs'])} at most`,
  );
  const parts = [
    counted(Number(wish.pairings), ['pair', 'pairs']),
    wish.inbreedingTo === '1' ? 'however related' : `F of the young at most ${percent(Number(wish.inbreedingTo))}`,
    `weight of inbreeding ${wish.weight}`,
    said('usesMost') ? `each animal in ${counted(Number(wish.usesMost), ['pair', 'pairs'])} at most` : '',
    said('movesMost') ? `${counted(Number(wish.movesMost), ['move', 'moves'])} at most` : '',
    said('reserve')
      ? `at least ${counted(Number(wish.reserve), ['animal', 'animals'])} of ${wish.reserveMonths} months or more that have not bred`
      : '',
    wish.fixed.length > 0 ? `with ${wish.fixed.map(pair).join(', ')}` : '',
    wish.forbidden.length > 0 ? `not ${wish.forbidden.map(pair).join(', ')}` : '',
    ...uses,
    wish.keptTogether.length > 0
      ? `animals of ${counted(wish.keptTogether.length, ['keeper', 'keepers'])} kept together`
      : '',
    wish.individuals.length > 0 ? `among ${counted(wish.individuals.length, ['animal', 'animals'])} alone` : '',
    wish.also.length > 0 ? `and ${wish.also.map(name).join(', ')} of other lines` : '',
    wish.aboveLimit ? 'fixed pairs above the limit allowed' : '',
    wish.disputed ? 'disputed labels allowed' : '',
  ];
  return `Asked for: ${parts.filter((part) => part !== '').join('; ')}.`;
}
