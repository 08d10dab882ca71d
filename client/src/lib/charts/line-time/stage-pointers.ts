import type { LineView } from './line-view.svelte.ts';

/** A pointer that moved less than this, in pixels, pressed a place and dragged nothing. */
const STILL = 5;

interface Held {
  x: number;
  y: number;
}

/**
 * What fingers, pens and mice do on the stage: a drag moves the view, two fingers bring it closer, a tap picks. All of it can be done by
 * keys and buttons as well.
 */
export class StagePointers {
  readonly #of: () => LineView;
  readonly #pick: (x: number, y: number, isTouch: boolean) => void;
  readonly #held = new Map<number, Held>();
  #moved = 0;

  /** @param pick takes a tap at a place of the stage */
  constructor(of: () => LineView, pick: (x: number, y: number, isTouch: boolean) => void) {
    this.#of = of;
    this.#pick = pick;
  }

  get #view(): LineView {
    return this.#of();
  }

  get isHeld(): boolean {
    return this.#held.size > 0;
  }

  down(event: PointerEvent): void {
    if (event.button !== 0 && event.pointerType === 'mouse') return;
    if (this.#held.size === 0) this.#moved = 0;
    this.#held.set(event.pointerId, placeOf(event));
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId);
  }

  move(event: PointerEvent): void {
    const held = this.#held.get(event.pointerId);
    if (!held) return;
    const place = placeOf(event);
    const [other] = [...this.#held].flatMap(([id, one]) => (id === event.pointerId ? [] : [one]));
    this.#moved += Math.hypot(place.x - held.x, place.y - held.y);
    if (other) {
      const [before, after] = [apart(held, other), apart(place, other)];
      if (before > 0) this.#view.zoom(after / before, (place.x + other.x) / 2, (place.y + other.y) / 2);
    } else if (this.#moved > STILL) this.#view.pan(place.x - held.x, place.y - held.y);
    this.#held.set(event.pointerId, place);
  }

  up(event: PointerEvent): void {
    if (!this.#held.delete(event.pointerId) || this.#held.size > 0 || this.#moved > STILL) return;
    const { x, y } = placeOf(event);
    this.#pick(x, y, event.pointerType !== 'mouse');
  }

  cancel(event: PointerEvent): void {
    this.#held.delete(event.pointerId);
    this.#moved = STILL + 1;
  }

  /** A wheel with Ctrl, or two fingers on a pad, comes closer; without, it pans as far as there is more to see, else the page scrolls. */
  wheel(event: WheelEvent): void {
    const { x, y } = placeOf(event);
    const lines = event.deltaMode === 1 ? 16 : 1;
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      this.#view.zoom(Math.exp(-event.deltaY * lines * 0.004), x, y);
      return;
    }
    const before = this.#view.view;
    const [across, down] = event.shiftKey ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
    this.#view.pan(-across * lines, -down * lines);
    const after = this.#view.view;
    if (before.x !== after.x || before.y !== after.y) event.preventDefault();
  }
}

function placeOf(event: MouseEvent): Held {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

const apart = (one: Held, other: Held): number => Math.hypot(one.x - other.x, one.y - other.y);
