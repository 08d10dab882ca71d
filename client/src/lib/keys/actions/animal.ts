import { goto } from '../opening.ts';
import type { AnimalAction, AnimalInHand } from '../action.ts';

const page = (animal: AnimalInHand): string => `/animals/${animal.id}`;

/** What one can do with one animal, in the order in which it is offered. */
export const onAnimal = {
  openAnimal: {
    where: 'animal',
    words: 'Open its page',
    about: (name) => `Open ${name}`,
    run: (animal) => goto(page(animal)),
  },
  edit: {
    keys: 'E',
    where: 'animal',
    words: 'Edit the record',
    about: (name) => `Edit the record of ${name}`,
    needs: ['change', 'individual'],
    run: (animal) => goto(`${page(animal)}?do=edit`),
  },
  clutchOf: {
    where: 'animal',
    words: 'Note a clutch of it',
    about: (name) => `Note a clutch of ${name}`,
    needs: ['add', 'clutch'],
    fits: (animal) => animal.status === 'alive',
    run: (animal) => goto(`/clutches/new?animals=${animal.id}`),
  },
  whoFor: {
    keys: 'W',
    where: 'animal',
    words: 'Who for this one?',
    about: (name) => `Who for ${name}?`,
    needs: ['ask', 'lineage'],
    run: (animal) => goto(`${page(animal)}/mates`),
  },
  labelOf: {
    where: 'animal',
    words: 'Print its label',
    about: (name) => `Print a label for ${name}`,
    run: (animal) => goto(`/labels?animals=${animal.id}`),
  },
  sheetOf: {
    where: 'animal',
    words: 'Make a provenance sheet of it',
    about: (name) => `Make a provenance sheet of ${name}`,
    needs: ['add', 'sheet'],
    run: (animal) => goto(`/sheets/new?animals=${animal.id}`),
  },
  give: {
    where: 'animal',
    words: 'Give or sell it',
    about: (name) => `Give or sell ${name}`,
    needs: ['change', 'individual'],
    fits: (animal) => animal.status === 'alive',
    run: (animal) => goto(`/transfers/new?animals=${animal.id}`),
  },
  pedigreeOf: {
    where: 'animal',
    words: 'See its ancestors',
    about: (name) => `See the ancestors of ${name}`,
    run: (animal) => goto(`${page(animal)}#ancestor-chart`),
  },
  pedigreeSheetOf: {
    where: 'animal',
    words: 'Print its pedigree',
    about: (name) => `Print the pedigree of ${name}`,
    run: (animal) => goto(`${page(animal)}/pedigree`),
  },
  recordedTwice: {
    where: 'animal',
    words: 'Merge it with another record of the same animal',
    about: (name) => `Merge ${name} with another record of the same animal`,
    needs: ['merge', 'individual'],
    run: (animal) => goto(`/merge?kept=${animal.id}`),
  },
} as const satisfies Record<string, AnimalAction>;
