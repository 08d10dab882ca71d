import { goto } from '$app/navigation';
import type { IndividualItem } from '../api/types.ts';
import { shortcuts, type ShortcutName } from '../keys/shortcuts.ts';
import { AnimalSearch } from '../records/animal-search.svelte.ts';
import type { Action } from '../people/permissions.ts';
import { session } from '../people/session.svelte.ts';
import { kept } from './kept.ts';
import { theme } from './theme.svelte.ts';

/** One line of the palette: an animal to open or a thing to do. */
export type Entry =
  | {
      kind: 'animal';
      key: string;
      animal: Pick<IndividualItem, 'id' | 'number' | 'code' | 'sex' | 'status' | 'line' | 'species'>;
    }
  | {
      kind: 'action';
      key: string;
      verb: string;
      words: string;
      shortcut?: ShortcutName;
      /** What one must be allowed to do; left out: nothing. */
      needs?: readonly [Action, string];
      run: () => unknown;
    };

const recentKey = 'linekeeper.recent-animals';

/** Finds an animal or an action by a few letters; recent animals first, then what one can do with the first of them. */
class PaletteState {
  open = $state(false);
  text = $state('');
  at = $state(0);
  recent = $state.raw<Extract<Entry, { kind: 'animal' }>['animal'][]>([]);
  /** Address of the page that it was opened on. */
  here = $state('');
  readonly search = new AnimalSearch();

  entries = $derived.by((): Entry[] => {
    const typed = this.text.trim();
    const found = typed === '' ? this.recent : this.search.items;
    const animals = found.map((animal): Entry => ({ kind: 'animal', key: animal.id, animal }));
    const first = found[0];
    const about = first && typed !== '' ? actionsOn(first).filter(isOffered) : [];
    const general = [...actionsHere(this.here), ...actions];
    return [...animals, ...about, ...general.filter((action) => isOffered(action) && fits(action, typed))];
  });

  current = $derived(Math.min(this.at, this.entries.length - 1));

  show(): void {
    this.text = '';
    this.at = 0;
    this.recent = readRecent();
    this.here = location.pathname;
    this.open = true;
  }

  type(): void {
    this.at = 0;
    if (this.text.trim() !== '') this.search.ask(this.text);
  }

  move(step: 1 | -1): void {
    const count = this.entries.length;
    if (count > 0) this.at = (this.current + step + count) % count;
  }

  /** Does what an entry says and closes. */
  run(entry: Entry | undefined): void {
    if (!entry) return;
    this.open = false;
    if (entry.kind === 'action') return void entry.run();
    remember(entry.animal, this.recent);
    void goto(`/animals/${entry.animal.id}`);
  }
}

export const palette = new PaletteState();

const go = (address: string) => () => goto(address);

async function leave(): Promise<void> {
  await session.signOut();
  await goto('/sign-in', { invalidateAll: true });
}

const isOffered = (action: { needs?: readonly [Action, string] }): boolean =>
  action.needs === undefined || session.may(...action.needs);

const actions: Extract<Entry, { kind: 'action' }>[] = [
  {
    kind: 'action',
    key: 'note',
    verb: 'note',
    words: 'a clutch',
    needs: ['add', 'clutch'],
    shortcut: 'noteClutch',
    run: go('/clutches/new'),
  },
  {
    kind: 'action',
    key: 'add',
    verb: 'add',
    words: 'an animal',
    needs: ['add', 'individual'],
    shortcut: 'addAnimal',
    run: go('/animals/new'),
  },
  {
    kind: 'action',
    key: 'house',
    verb: 'house',
    words: 'animals together',
    needs: ['add', 'pairing'],
    run: go('/pairings/new'),
  },
  { kind: 'action', key: 'register', verb: 'go to', words: 'Register', shortcut: 'goRegister', run: go('/register') },
  {
    kind: 'action',
    key: 'lines',
    verb: 'go to',
    words: 'Lines',
    needs: ['read', 'line'],
    shortcut: 'goLines',
    run: go('/lines'),
  },
  {
    kind: 'action',
    key: 'plans',
    verb: 'go to',
    words: 'Kept plans',
    needs: ['read', 'plan'],
    run: go('/plans'),
  },
  {
    kind: 'action',
    key: 'sources',
    verb: 'go to',
    words: 'Sources',
    needs: ['read', 'source'],
    run: go('/sources'),
  },
  {
    kind: 'action',
    key: 'places',
    verb: 'go to',
    words: 'Map of places',
    needs: ['read', 'claim'],
    run: go('/places'),
  },
  {
    kind: 'action',
    key: 'review',
    verb: 'go to',
    words: 'Evidence to review',
    needs: ['review', 'evidence'],
    run: go('/review'),
  },
  {
    kind: 'action',
    key: 'pairings',
    verb: 'go to',
    words: 'Pairings',
    needs: ['read', 'pairing'],
    run: go('/pairings'),
  },
  {
    kind: 'action',
    key: 'transfers',
    verb: 'go to',
    words: 'Transfers: animals given and received',
    needs: ['read', 'transfer'],
    run: go('/transfers'),
  },
  { kind: 'action', key: 'match', verb: 'go to', words: 'Match', needs: ['ask', 'lineage'], run: go('/match') },
  {
    kind: 'action',
    key: 'group',
    verb: 'match',
    words: 'a group',
    needs: ['ask', 'lineage'],
    run: go('/match/group'),
  },
  {
    kind: 'action',
    key: 'import',
    verb: 'import',
    words: 'a register sheet',
    needs: ['add', 'import'],
    run: go('/import'),
  },
  { kind: 'action', key: 'journal', verb: 'go to', words: 'Journal', needs: ['read', 'journal'], run: go('/journal') },
  { kind: 'action', key: 'club', verb: 'go to', words: 'Club', needs: ['read', 'club'], run: go('/club') },
  {
    kind: 'action',
    key: 'account',
    verb: 'go to',
    words: 'My account',
    needs: ['read', 'account'],
    run: go('/club/account'),
  },
  {
    kind: 'action',
    key: 'merge',
    verb: 'merge',
    words: 'two records of one animal',
    needs: ['merge', 'individual'],
    run: go('/merge'),
  },
  { kind: 'action', key: 'figures', verb: 'help', words: 'what the figures say', run: go('/help/figures') },
  { kind: 'action', key: 'out', verb: 'sign', words: 'out', needs: ['read', 'account'], run: leave },
  { kind: 'action', key: 'theme', verb: 'turn', words: 'day and night theme', run: () => theme.turn() },
];

function actionsOn(animal: { id: string; code: string | null; number: string }): Extract<Entry, { kind: 'action' }>[] {
  const name = animal.code ?? animal.number;
  return [
    {
      kind: 'action',
      key: 'match-one',
      verb: 'match',
      words: `who for ${name}`,
      needs: ['ask', 'lineage'],
      run: go(`/animals/${animal.id}/mates`),
    },
    {
      kind: 'action',
      key: 'label-one',
      verb: 'print',
      words: `a label for ${name}`,
      run: go(`/labels?animals=${animal.id}`),
    },
    {
      kind: 'action',
      key: 'sheet-one',
      verb: 'make',
      words: `a provenance sheet of ${name}`,
      needs: ['add', 'sheet'],
      run: go(`/sheets/new?animals=${animal.id}`),
    },
  ];
}

/** What can be done with what the page shows. */
function actionsHere(address: string): Extract<Entry, { kind: 'action' }>[] {
  const line = /^\/lines\/([^/]+)/.exec(address)?.[1];
  if (line === undefined) return [];
  return [
    {
      kind: 'action',
      key: 'blood-line',
      verb: 'match',
      words: 'new blood for this line',
      needs: ['ask', 'lineage'],
      run: go(`/lines/${line}/new-blood`),
    },
  ];
}

function fits(action: Extract<Entry, { kind: 'action' }>, typed: string): boolean {
  const words = `${action.verb} ${action.words}`.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((part) => words.includes(part));
}

/** The shortcut of an action as the table writes it. */
export const keysOfEntry = (entry: Entry): string | undefined =>
  entry.kind === 'action' && entry.shortcut ? shortcuts[entry.shortcut].keys : undefined;

function readRecent(): PaletteState['recent'] {
  try {
    const read: unknown = JSON.parse(kept.get(recentKey) ?? '[]');
    return Array.isArray(read) ? read.filter(isAnimal).slice(0, 5) : [];
  } catch {
    // Garbled: nothing is recent.
    return [];
  }
}

const isAnimal = (read: unknown): read is PaletteState['recent'][number] =>
  typeof read === 'object' && read !== null && 'id' in read && 'number' in read && 'sex' in read;

function remember(animal: PaletteState['recent'][number], before: PaletteState['recent']): void {
  const recent = [animal, ...before.filter((other) => other.id !== animal.id)].slice(0, 5);
  kept.set(recentKey, JSON.stringify(recent));
}
