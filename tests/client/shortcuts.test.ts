import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { render } from '@testing-library/svelte';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { placeNames } from '$lib/keys/action.ts';
import { actionNames, actions, conflicts, plainAction, registry, type ActionName } from '$lib/keys/actions.ts';
import { chartKey } from '$lib/keys/chart-key.ts';
import { keyboard } from '$lib/keys/keyboard.svelte.ts';
import { keysInWords, keysOf } from '$lib/keys/key-names.ts';
import KeysSheet from '$lib/keys/keys-sheet.svelte';
import { session } from '$lib/people/session.svelte.ts';

/** Every file of the client that is written by hand. */
const files: ReadonlyMap<string, string> = new Map(
  readdirSync('client/src', { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(svelte|ts)$/.test(file) && !file.endsWith('openapi.d.ts'))
    .map((file) => [file.replaceAll('\\', '/'), readFileSync(join('client/src', file), 'utf8')]),
);

/** What stands between the brackets of each call of `keyboard.listen`. */
const listened: string = [...files.values()].flatMap((text) => callsIn(text, 'keyboard.listen(')).join('\n');

function callsIn(text: string, opening: string): string[] {
  return text
    .split(opening)
    .slice(1)
    .map((rest) => {
      let depth = 1;
      for (let at = 0; at < rest.length; at++) {
        if (rest[at] === '(') depth++;
        if (rest[at] === ')') depth--;
        if (depth === 0) return rest.slice(0, at);
      }
      return rest;
    });
}

/** Widgets that answer to the keys of their own kind, each while it has the focus. */
const widgets = [
  'lib/audit/acknowledged-flag.svelte',
  'lib/charts/line-time/line-find.svelte',
  'lib/housing/young-rows.svelte',
  'lib/records/animal-picker.svelte',
  'lib/ui/palette.svelte',
  'lib/ui/sentence-part.svelte',
];
/** Charts and grids: what a key means on them they ask the registry, by `chartKey`. */
const charts = [
  'lib/charts/ancestors/ancestor-drawing.svelte',
  'lib/charts/chart-stops.svelte',
  'lib/charts/descendants/descendant-drawing.svelte',
  'lib/charts/descendants/descendant-node.svelte',
  'lib/charts/line-time/line-stage.svelte',
  'lib/charts/years/years-drawing.svelte',
  'lib/match/group-grid.svelte',
  'routes/match/kinship-grid.svelte',
];
/** Where charts say what they do at which key. */
const chartFiles = [...files].filter(([file]) => file.startsWith('lib/charts/') || charts.includes(file));

describe('the registry of actions', () => {
  it('gives no keys two meanings in one place', () => {
    expect(conflicts(registry)).toEqual([]);
  });

  it('would notice: the same keys clash everywhere and in one place, not in two places', () => {
    expect(conflicts({ a: { keys: 'X', where: 'everywhere' }, b: { keys: 'X', where: 'animal' } })).toEqual([
      ['a', 'b'],
    ]);
    expect(conflicts({ a: { keys: 'X', where: 'animal' }, b: { keys: 'X', where: 'animal' } })).toEqual([['a', 'b']]);
    expect(conflicts({ a: { keys: 'X', where: 'animal' }, b: { keys: 'X', where: 'register' } })).toEqual([]);
    expect(conflicts({ a: { where: 'animal' }, b: { where: 'animal' } })).toEqual([]);
  });

  it('holds no action that nothing does: it says how itself, or a screen listens for it', () => {
    const undone = actionNames.filter((name) => {
      const action = plainAction(name);
      if (action === null || action.run !== undefined) return false;
      const heard = action.where === 'chart' ? chartFiles.map(([, text]) => text).join('\n') : listened;
      return !new RegExp(`\\b${name}\\b`).test(heard);
    });
    expect(undone).toEqual([]);
  });

  it('holds no action without a way to it: keys, or its words in the palette', () => {
    const hidden = actionNames.filter((name) => plainAction(name)?.isMove && registry[name].keys === undefined);
    expect(hidden).toEqual([]);
  });

  it('is the only place that hears keys, but for widgets that have the focus', () => {
    const hearing = [...files].flatMap(([file, text]) =>
      /onkey(down|up|press)|['"]key(down|up|press)['"]/.test(text) ? [file] : [],
    );
    expect(hearing.sort()).toEqual([...widgets, ...charts, 'routes/+layout.svelte'].sort());
    const layout = files.get('routes/+layout.svelte');
    expect(layout).toContain('<svelte:window onkeydown={hear} />');
    expect(layout).toContain('else keyboard.handle(event);');
    expect(layout, 'a key is named in the registry, or by the widget that takes it').not.toMatch(/event\.key\b/);
  });

  it('tells the charts what a key means on them: none of them knows a key by itself', () => {
    const knowing = chartFiles.filter(
      ([file, text]) => !widgets.includes(file) && /event\.key|'Arrow|'Escape'/.test(text),
    );
    expect(knowing.map(([file]) => file)).toEqual([]);
    const stroke = { key: 'ArrowUp', ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };
    expect(chartKey(stroke)).toBe('stepUp');
    expect(chartKey({ ...stroke, shiftKey: true })).toBe('lookUp');
    expect(chartKey({ ...stroke, ctrlKey: true })).toBeNull();
    expect(['+', '=', '-', '0', ' ', 'x'].map((key) => chartKey({ ...stroke, key }))).toEqual([
      'comeCloser',
      'comeCloser',
      'goFurther',
      'seeWhole',
      'drawYoung',
      null,
    ]);
  });

  it('writes keys as the reader sees them', () => {
    expect(keysInWords('Mod+K', false)).toBe('Ctrl K');
    expect(keysInWords('Mod+K', true)).toBe('⌘ K');
    expect(keysInWords('Alt+Enter', false)).toBe('Alt Enter');
    expect(keysInWords('Shift+ArrowLeft', false)).toBe('Shift ←');
    expect([keysInWords('+'), keysInWords('-')]).toEqual(['+', '−']);
  });

  it('reads keys from a stroke', () => {
    const stroke = { key: 'k', ctrlKey: false, metaKey: true, altKey: false, shiftKey: false };
    expect(keysOf(stroke)).toBe('Mod+K');
    expect(keysOf({ ...stroke, key: ' ', metaKey: false })).toBe('Space');
  });
});

describe('the sheet of keys', () => {
  it('shows every action that has keys, with its keys, under its place', () => {
    const { container, unmount } = render(KeysSheet, { props: { open: true } });
    const shown = [...container.querySelectorAll('dt')].map(
      (term) => `${term.textContent}: ${term.nextElementSibling?.textContent ?? ''}`,
    );
    const keyed = actionNames.filter((name) => registry[name].keys !== undefined);
    const expected = placeNames.flatMap((place) =>
      keyed
        .filter((name) => registry[name].where === place)
        .map((name) => `${keysInWords(registry[name].keys ?? '')}: ${registry[name].words}`),
    );
    expect(shown).toEqual(expected);
    expect(shown.length).toBeGreaterThan(15);
    unmount();
  });
});

describe('a key stroke', () => {
  let stop = (): void => undefined;
  afterEach(() => {
    stop();
    keyboard.singleKeys = true;
    document.body.replaceChildren();
    vi.restoreAllMocks();
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

  it('does an action by itself where no screen does it, if whoever presses it may', () => {
    const may = vi.spyOn(session, 'may').mockReturnValue(false);
    const name: ActionName = 'noteClutch';
    const run = vi.spyOn(actions.noteClutch, 'run').mockResolvedValue(undefined);
    expect(keyboard.doing(name)).toBeUndefined();
    expect(press('n').defaultPrevented).toBe(false);
    may.mockReturnValue(true);
    expect(press('n').defaultPrevented).toBe(true);
    expect(run).toHaveBeenCalledTimes(1);
  });
});
