import { goto } from '../opening.ts';
import { waiting } from '../../offline/waiting.svelte.ts';
import { session } from '../../people/session.svelte.ts';
import { theme } from '../../ui/theme.svelte.ts';
import type { Action } from '../action.ts';

async function leave(): Promise<void> {
  // what waits is not in the register yet: its keeper is told first
  if (waiting.count > 0) return void goto('/waiting?leave');
  await session.signOut();
  await goto('/sign-in', { invalidateAll: true });
}

/** What one can do wherever one is. The palette lists it in this order. */
export const everywhere = {
  palette: { keys: 'Mod+K', where: 'everywhere', words: 'Find or do anything', isMove: true },
  keysSheet: { keys: '?', where: 'everywhere', words: 'Show the keys' },
  undo: { keys: 'U', where: 'everywhere', words: 'Undo what was just done' },
  save: { keys: 'Mod+Enter', where: 'everywhere', words: 'Write down the form', isMove: true },
  noteClutch: {
    keys: 'N',
    where: 'everywhere',
    words: 'Note a clutch',
    needs: ['add', 'clutch'],
    run: () => goto('/clutches/new'),
  },
  scanLabel: { where: 'everywhere', words: 'Scan a label', needs: ['read', 'individual'], run: () => goto('/scan') },
  showWaiting: {
    where: 'everywhere',
    words: 'See what waits to be sent',
    needs: ['add', 'clutch'],
    run: () => goto('/waiting'),
  },
  addAnimal: {
    keys: 'A',
    where: 'everywhere',
    words: 'Add an animal',
    needs: ['add', 'individual'],
    run: () => goto('/animals/new'),
  },
  goRound: {
    keys: 'D',
    where: 'everywhere',
    words: 'Do a round: sex, measure, note, move or photograph one animal after the other',
    needs: ['add', 'observation'],
    run: () => goto('/round'),
  },
  houseTogether: {
    where: 'everywhere',
    words: 'House animals together',
    needs: ['add', 'pairing'],
    run: () => goto('/pairings/new'),
  },
  matchGroup: {
    where: 'everywhere',
    words: 'Match a group',
    needs: ['ask', 'lineage'],
    run: () => goto('/match/group'),
  },
  mergeRecords: {
    where: 'everywhere',
    words: 'Merge two records of one animal',
    needs: ['merge', 'individual'],
    run: () => goto('/merge'),
  },
  turnTheme: { where: 'everywhere', words: 'Turn to the day or night theme', run: () => theme.turn() },
  signOut: { where: 'everywhere', words: 'Sign out', needs: ['read', 'account'], run: leave },
} as const satisfies Record<string, Action>;
