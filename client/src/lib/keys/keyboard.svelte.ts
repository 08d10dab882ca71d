import { kept } from '../ui/kept.ts';
import { actionNames, isAllowed, plainAction, recordAt, registry, type ActionName } from './actions.ts';
import { keysOf } from './key-names.ts';

export type Handlers = Partial<Record<ActionName, () => unknown>>;

const storageKey = 'linekeeper.single-keys';

/** Hands key strokes to whoever does their action now. */
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

  /** What does an action now: the newest screen that does it, else the action by itself where it applies; undefined where nothing does. */
  doing(name: ActionName): (() => unknown) | undefined {
    // the newest listener wins, so that a screen may say more exactly what a general action does on it
    const heard = this.#listeners.findLast((handlers) => handlers[name])?.[name];
    const action = plainAction(name);
    if (heard) return action && !isAllowed(action) ? undefined : heard;
    if (!action?.run || !isAllowed(action)) return undefined;
    const { run } = action;
    const id = recordAt(action.where, location.pathname);
    return id === null ? undefined : () => run(id);
  }

  /** The one handler of the window. */
  handle = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    const keys = keysOf(event);
    if (isSingle(keys) && (!this.singleKeys || isTyping(event.target) || isModalOpen())) return;
    if (isOfPage(keys) && isModalOpen()) return;
    if ((keys === 'Enter' || keys === 'Space') && isControl(event.target)) return;
    const does = this.#find(keys);
    if (!does) return;
    event.preventDefault();
    does();
  };

  #find(keys: string): (() => unknown) | undefined {
    for (const name of actionNames) {
      const does = registry[name].keys === keys ? this.doing(name) : undefined;
      if (does) return does;
    }
    return undefined;
  }
}

export const keyboard = new Keyboard();

/** A key without another held down: it belongs to the field that one types in, but for those that no field of one line uses. */
const isSingle = (keys: string): boolean => keys === '+' || (!keys.includes('+') && !keys.startsWith('Page'));

/** Keys of the page below that a dialog over it does not need itself. */
const isOfPage = (keys: string): boolean => keys.startsWith('Page') || keys === 'Alt+Enter';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target.matches('input:not([type=checkbox], [type=button]), select, textarea, [data-holds-keys]'));

const isControl = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('a, button, summary, input, [role=option], [role=button]') !== null;

const isModalOpen = (): boolean => document.querySelector('dialog[open]') !== null;
