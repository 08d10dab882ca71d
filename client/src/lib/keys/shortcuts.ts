/**
 * Every shortcut of the client, once: the handlers, the sheet that `?` opens and the test for conflicts read this table.
 * Single keys work outside fields only and can be switched off.
 */
export const shortcuts = {
  palette: { keys: 'Mod+K', where: 'everywhere', does: 'find or do anything' },
  keysSheet: { keys: '?', where: 'everywhere', does: 'show the keys' },
  noteClutch: { keys: 'N', where: 'everywhere', does: 'note a clutch' },
  addAnimal: { keys: 'A', where: 'everywhere', does: 'add an animal' },
  goRegister: { keys: 'R', where: 'everywhere', does: 'go to the register' },
  goLines: { keys: 'L', where: 'everywhere', does: 'go to the lines' },
  undo: { keys: 'U', where: 'everywhere', does: 'undo what was just done' },
  save: { keys: 'Mod+Enter', where: 'everywhere', does: 'write down the form' },
  search: { keys: '/', where: 'register', does: 'go to the search' },
  nextRow: { keys: 'J', where: 'register', does: 'next row' },
  previousRow: { keys: 'K', where: 'register', does: 'row before' },
  chooseRow: { keys: 'X', where: 'register', does: 'choose the row, or let it go' },
  openRow: { keys: 'Enter', where: 'register', does: 'open the animal' },
  nextPage: { keys: 'Space', where: 'register', does: 'next page' },
  matchChosen: { keys: 'M', where: 'register', does: 'match the chosen animals' },
  letGo: { keys: 'Escape', where: 'register', does: 'let go of the chosen animals' },
  edit: { keys: 'E', where: 'animal', does: 'edit the record' },
} as const satisfies Record<string, Shortcut>;

export interface Shortcut {
  keys: string;
  where: 'everywhere' | 'register' | 'animal' | 'match';
  does: string;
}

export type ShortcutName = keyof typeof shortcuts;

export const shortcutNames = Object.keys(shortcuts) as ShortcutName[];

/** Pairs of shortcuts that would answer to the same keys at the same time. */
export function conflicts(table: Record<string, Shortcut>): [string, string][] {
  const entries = Object.entries(table);
  return entries.flatMap(([name, one], at) =>
    entries
      .slice(at + 1)
      .filter(([, other]) => other.keys === one.keys)
      .filter(([, other]) => other.where === one.where || other.where === 'everywhere' || one.where === 'everywhere')
      .map(([otherName]): [string, string] => [name, otherName]),
  );
}

/** The keys of an event as the table writes them: `Mod+K`, `J`, `?`, `Space`. */
export function keysOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>): string {
  const key = event.key === ' ' ? 'Space' : event.key.length === 1 ? event.key.toUpperCase() : event.key;
  return (event.ctrlKey || event.metaKey ? 'Mod+' : '') + (event.altKey ? 'Alt+' : '') + key;
}

/** The keys as a reader of this device sees them. */
export function keysInWords(keys: string, apple = isApple()): string {
  return keys.replace('Mod+', apple ? '⌘ ' : 'Ctrl ').replace('Escape', 'Esc');
}

function isApple(): boolean {
  return typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform);
}
