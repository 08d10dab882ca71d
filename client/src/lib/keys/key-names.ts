/** The keys of an event as the registry writes them: `Mod+K`, `J`, `?`, `Space`, `PageDown`. */
export function keysOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>): string {
  const key = event.key === ' ' ? 'Space' : event.key.length === 1 ? event.key.toUpperCase() : event.key;
  return (event.ctrlKey || event.metaKey ? 'Mod+' : '') + (event.altKey ? 'Alt+' : '') + key;
}

/** The keys as a reader of this device sees them. */
export function keysInWords(keys: string, apple = isApple()): string {
  return keys
    .replace('Mod+', apple ? '⌘ ' : 'Ctrl ')
    .replace('Alt+', apple ? '⌥ ' : 'Alt ')
    .replace('Escape', 'Esc')
    .replace('PageDown', 'Page ↓')
    .replace('PageUp', 'Page ↑');
}

function isApple(): boolean {
  return typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform);
}
