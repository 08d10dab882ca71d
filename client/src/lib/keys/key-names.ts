/** The keys of an event as the registry writes them: `Mod+K`, `J`, `?`, `Space`, `PageDown`, `Shift+ArrowUp`. */
export function keysOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const key = event.key === ' ' ? 'Space' : event.key.length === 1 ? event.key.toUpperCase() : event.key;
  // with characters, Shift is part of which one it is
  const shift = event.shiftKey && key.startsWith('Arrow') ? 'Shift+' : '';
  return (event.ctrlKey || event.metaKey ? 'Mod+' : '') + (event.altKey ? 'Alt+' : '') + shift + key;
}

const arrows = { Up: '↑', Down: '↓', Left: '←', Right: '→' } as const;

/** The keys as a reader of this device sees them. */
export function keysInWords(keys: string, apple = isApple()): string {
  return keys
    .replace('Mod+', apple ? '⌘ ' : 'Ctrl ')
    .replace('Alt+', apple ? '⌥ ' : 'Alt ')
    .replace('Shift+', apple ? '⇧ ' : 'Shift ')
    .replace(/Arrow(Up|Down|Left|Right)/, (_, side: keyof typeof arrows) => arrows[side])
    .replace(/^-$/, '−')
    .replace('Escape', 'Esc')
    .replace('PageDown', 'Page ↓')
    .replace('PageUp', 'Page ↑');
}

function isApple(): boolean {
  return typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform);
}
