import type { Action } from '../action.ts';

/** What one can do with the clutch or the pairing whose page is open; the screen does it. */
export const housing = {
  raiseYoung: { keys: 'Y', where: 'clutch', words: 'Raise young from this clutch', needs: ['change', 'clutch'] },
  roundYoung: { keys: 'G', where: 'clutch', words: 'Go through the young of this clutch one by one' },
  clutchHere: { keys: 'C', where: 'pairing', words: 'Note a clutch of this pairing', needs: ['add', 'clutch'] },
  joinPairing: { keys: 'J', where: 'pairing', words: 'Let an animal join', needs: ['change', 'pairing'] },
  movePairing: {
    keys: 'H',
    where: 'pairing',
    words: 'Move an animal to another group',
    needs: ['change', 'pairing'],
  },
  roundMembers: { keys: 'G', where: 'pairing', words: 'Go through the animals of this pairing one by one' },
} as const satisfies Record<string, Action>;
