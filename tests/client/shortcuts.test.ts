import { afterEach, describe, expect, it, vi } from 'vitest';
import { keyboard } from '$lib/keys/keyboard.svelte.ts';
import { conflicts, keysInWords, keysOf, shortcuts } from '$lib/keys/shortcuts.ts';

describe('the table of shortcuts', () => {
  it('gives no keys two meanings in one place', () => {
    expect(conflicts(shortcuts)).toEqual([]);
  });

  it('would notice: the same keys clash everywhere and in one place, not in two places', () => {
    const does = 'something';
    expect(conflicts({ a: { keys: 'X', where: 'everywhere', does }, b: { keys: 'X', where: 'match', does } })).toEqual([
      ['a', 'b'],
    ]);
    expect(conflicts({ a: { keys: 'X', where: 'match', does }, b: { keys: 'X', where: 'match', does } })).toEqual([
      ['a', 'b'],
    ]);
    expect(conflicts({ a: { keys: 'X', where: 'match', does }, b: { keys: 'X', where: 'register', does } })).toEqual(
      [],
    );
  });

  it('writes keys as the reader sees them', () => {
    expect(keysInWords('Mod+K', false)).toBe('Ctrl K');
    expect(keysInWords('Mod+K', true)).toBe('⌘ K');
  });

  it('reads keys from a stroke', () => {
    const stroke = { key: 'k', ctrlKey: false, metaKey: true, altKey: false };
    expect(keysOf(stroke)).toBe('Mod+K');
    expect(keysOf({ ...stroke, key: ' ', metaKey: false })).toBe('Space');
  });
});

describe('a key stroke', () => {
  let stop = (): void => undefined;
  afterEach(() => {
    stop();
    keyboard.singleKeys = true;
    document.body.replaceChildren();
  });

  function press(key: string, target: Element = document.body, more: KeyboardEventInit = {}): KeyboardEvent {
    const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more });
    target.addEventListener('keydown', (heard) => keyboard.handle(heard as KeyboardEvent), { once: true });
    target.dispatchEvent(event);
    return event;
  }
  const added = <K extends keyof HTMLElementTagNameMap>(tag: K): HTMLElementTagNameMap[K] =>
    document.body.appendChild(document.createElement(tag));

  it('reaches who listens, and nobody once they stopped', () => {
    const next = vi.fn();
    stop = keyboard.listen({ nextRow: next });
    expect(press('j').defaultPrevented).toBe(true);
    expect(next).toHaveBeenCalledTimes(1);
    stop();
    expect(press('j').defaultPrevented).toBe(false);
    expect(next).toHaveBeenCalledTimes(1);
  });

  it('of a single key is left to the field one types in, but not Ctrl with a key', () => {
    const heard = vi.fn();
    stop = keyboard.listen({ nextRow: heard, palette: heard });
    const input = added('input');
    press('j', input);
    expect(heard).not.toHaveBeenCalled();
    press('k', input, { ctrlKey: true });
    expect(heard).toHaveBeenCalledTimes(1);
  });

  it('of Space is left to the button that has the focus', () => {
    const page = vi.fn();
    stop = keyboard.listen({ nextPage: page });
    press(' ', added('button'));
    expect(page).not.toHaveBeenCalled();
    press(' ');
    expect(page).toHaveBeenCalledTimes(1);
  });

  it('of a single key does nothing once single keys are switched off', () => {
    const next = vi.fn();
    stop = keyboard.listen({ nextRow: next });
    keyboard.singleKeys = false;
    press('j');
    expect(next).not.toHaveBeenCalled();
  });

  it('goes to the newest listener', () => {
    const old = vi.fn();
    const newer = vi.fn();
    const stopOld = keyboard.listen({ nextRow: old });
    stop = keyboard.listen({ nextRow: newer });
    press('j');
    expect([old.mock.calls.length, newer.mock.calls.length]).toEqual([0, 1]);
    stopOld();
  });
});
