import { partInWords, partsOf } from '$lib/ui/shares.ts';
import { word } from '../../words/word.ts';
import { sexWords } from '../../records/vocabulary-words.ts';
import type { PlacedAnimal } from './ancestor-layout.ts';
import { nameOf, probabilitiesInWords } from './ancestor-table.ts';
import type { ChartAncestor } from './shown-loops.ts';

/** What is written beside an animal's symbol, and what a screen reader says of it. */
export interface AnimalText {
  shown: string;
  number: string;
  /** How many places a common ancestor fills: "×3". */
  times: string;
  /** How likely it is a parent, where that is not certain. */
  chances: string;
  words: string;
}

/** @param common where it is a common ancestor */
export function textOf({ animal, above, probabilities }: PlacedAnimal, common: ChartAncestor | undefined): AnimalText {
  const { isPrivate } = animal;
  const name = nameOf(animal);
  const shown = isPrivate ? word('private') : name.length > 10 ? `${name.slice(0, 9)}…` : name;
  const number = animal.number === null || shown === animal.number ? '' : animal.number;
  const times = common && common.places > 1 ? `×${common.places}` : '';
  const chances = probabilitiesInWords(probabilities);
  const said = [
    // begins with what is written, so that who speaks to the screen can say what they see
    [shown, number, times, chances].filter((part) => part !== '').join(' '),
    shown === name ? '' : name,
    isPrivate ? '' : sexWords[animal.sex],
    animal.status === 'died' ? word('dead') : '',
    chances === '' ? '' : 'candidate parent',
    above === 'unknown' ? 'origin unknown' : above === 'more' ? 'more ancestors above' : '',
    common ? 'common ancestor' : '',
    isPrivate ? '' : partsOf(animal.standings).map(partInWords).join(', '),
  ];
  return { shown, number, times, chances, words: said.filter((part) => part !== '').join(', ') };
}
