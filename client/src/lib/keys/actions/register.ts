import type { Action } from '../action.ts';

/** What the keys of the register do; the screen does it. */
export const register = {
  search: { keys: '/', where: 'register', words: 'Go to the search', isMove: true },
  nextRow: { keys: 'J', where: 'register', words: 'Next row', isMove: true },
  previousRow: { keys: 'K', where: 'register', words: 'Row before', isMove: true },
  chooseRow: { keys: 'X', where: 'register', words: 'Choose the row, or let it go', isMove: true },
  openRow: { keys: 'Enter', where: 'register', words: 'Open the animal', isMove: true },
  nextPage: { keys: 'Space', where: 'register', words: 'Next page', isMove: true },
  matchChosen: { keys: 'M', where: 'register', words: 'Match the chosen animals' },
  chooseAll: { keys: 'C', where: 'register', words: 'Choose all animals that the sentence finds' },
  editChosen: {
    keys: 'E',
    where: 'register',
    words: 'Edit the chosen animals together',
    needs: ['change', 'individual'],
  },
  roundChosen: { keys: 'G', where: 'register', words: 'Go through the chosen animals one by one' },
  letGo: { keys: 'Escape', where: 'register', words: 'Let go of the chosen animals', isMove: true },
} as const satisfies Record<string, Action>;
