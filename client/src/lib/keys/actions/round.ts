import type { Action } from '../action.ts';

/** What the keys of a round do; the screen does it. */
export const round = {
  sameAgain: { keys: 'Alt+Enter', where: 'round', words: 'Write the same as for the animal before, and go on' },
  skipAnimal: { keys: 'PageDown', where: 'round', words: 'Go on without writing' },
  animalBefore: { keys: 'PageUp', where: 'round', words: 'Back to the animal before' },
} as const satisfies Record<string, Action>;
