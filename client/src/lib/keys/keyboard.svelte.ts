import { kept } from '../ui/kept.ts';
import { keysOf, shortcutNames, shortcuts, type ShortcutName } from './shortcuts.ts';

type Handlers = Partial<Record<ShortcutName, () => void>>;

const storageKey = 'linekeeper.single-keys';

/** Hands key strokes to whoever listens for their shortcut now. */
class Keyboard {
  /** Single keys can be switched off by those whose voice or hand would press them unmeant. */
  singleKeys = $state(true);
  #listeners: Handlers[] = [];

  start(): void {
    this.singleKeys = kept.get(storageKey) !== 'off';
  }

  setSingleKeys(on: boolean): void {
    this.singleKeys = on;
    kept.set(storageKey, on ? 'on' : 'off');
  }

  /** Listens until the returned function is called: `$effect(() => keyboard.listen({ nextRow }))`. */
  listen(handlers: Handlers): () => void {
    this.#listeners.push(handlers);
    return () => {
      this.#listeners = this.#listeners.filter((other) => other !== handlers);
    };
  }

  /** The one handler of the window. */
  handle = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    const keys = keysOf(event);
    const single = !keys.includes('+');
    if (single && (!this.singleKeys || isTyping(event.target) || isModalOpen())) return;
    if ((keys === 'Enter' || keys === 'Space') && isControl(event.target)) return;
    const handler = this.#find(keys);
    if (!handler) return;
    event.preventDefault();
    handler();
  };

  /** The newest listener wins, so that a screen may say more exactly what a general key does on it. */
  #find(keys: string): (() => void) | undefined {
    const names = shortcutNames.filter((name) => shortcuts[name].keys === keys);
    for (const handlers of this.#listeners.toReversed())
      for (const name of names) if (handlers[name]) return handlers[name];
    return undefined;
  }
}

export const keyboard = new Keyboard();

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || target.matches('input:not([type=checkbox], [type=button]), select, textarea'));

const isControl = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('a, button, summary, input, [role=option], [role=button]') !== null;

const isModalOpen = (): boolean => document.querySelector('dialog[open]') !== null;
