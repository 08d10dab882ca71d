import { openMate } from '../../records/clutch-mates.ts';
import { goto } from '../opening.ts';
import type { AnimalAction, AnimalInHand } from '../action.ts';

const page = (animal: AnimalInHand): string => `/animals/${animal.id}`;

/** A round of this animal alone; more can follow there. */
const round =
  (task: string) =>
  (animal: AnimalInHand): unknown =>
    goto(`/round?animals=${animal.number}&do=${task}`);

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
  setSex: {
    keys: 'S',
    where: 'animal',
    words: 'Set its sex',
    about: (name) => `Set the sex of ${name}`,
    needs: ['change', 'individual'],
    run: round('sex'),
  },
  measure: {
    keys: 'M',
    where: 'animal',
    words: 'Measure it',
    about: (name) => `Measure ${name}`,
    needs: ['add', 'observation'],
    run: round('measure'),
  },
  remarkOn: {
    keys: 'O',
    where: 'animal',
    words: 'Write a remark on it',
    about: (name) => `Write a remark on ${name}`,
    needs: ['add', 'observation'],
    run: round('remark'),
  },
  moveTo: {
    keys: 'H',
    where: 'animal',
    words: 'Move it to another group',
    about: (name) => `Move ${name} to another group`,
    needs: ['add', 'pairing'],
    fits: (animal) => animal.status === 'alive',
    run: round('move'),
  },
  photographOf: {
    keys: 'P',
    where: 'animal',
    words: 'Add a photograph of it',
    about: (name) => `Add a photograph of ${name}`,
    needs: ['change', 'individual'],
    run: round('photograph'),
  },
  nextInClutch: {
    keys: 'J',
    where: 'animal',
    words: 'Next of its clutch',
    about: (name) => `Open the next of the clutch of ${name}`,
    run: (animal) => openMate(animal.id, 1),
  },
  beforeInClutch: {
    keys: 'K',
    where: 'animal',
    words: 'The one before in its clutch',
    about: (name) => `Open the one before ${name} in its clutch`,
    run: (animal) => openMate(animal.id, -1),
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
  descendantsOf: {
    where: 'animal',
    words: 'See its descendants',
    about: (name) => `See the descendants of ${name}`,
    run: (animal) => goto(`${page(animal)}/descendants`),
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
