import type { LineView } from './line-view.svelte.ts';

/** What the keys do while the stage has the focus; gives whether the key meant something here. */
export function stageKey(view: LineView, event: KeyboardEvent, open: () => void): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const pan = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
  if (pan) {
    if (event.shiftKey) view.panStep(pan[0] ?? 0, pan[1] ?? 0);
    else view.step(event.key);
    return true;
  }
  const does: Record<string, () => void> = {
    '+': () => view.zoomStep(true),
    '=': () => view.zoomStep(true),
    '-': () => view.zoomStep(false),
    '0': () => view.seeWhole(),
    Home: () => {
      view.seeWhole();
      view.pick(null);
    },
    PageUp: () => view.panStep(0, -1),
    PageDown: () => view.panStep(0, 1),
    Enter: open,
    Escape: () => view.pick(null),
  };
  const doing = does[event.key];
  if (!doing || (event.key === 'Escape' && view.picked < 0)) return false;
  doing();
  return true;
}
