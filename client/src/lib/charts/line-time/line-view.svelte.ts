import type { LineOverTime } from '$lib/api/types.ts';
import type { ChartKey } from '$lib/keys/actions/chart.ts';
import { barParts } from './bar-parts.ts';
import { layOut } from './lay-out.ts';
import { LineKin, type Lit } from './line-kin.ts';
import type { LineLayout } from './line-layout.ts';
import { firstOf, stepFrom } from './line-walk.ts';
import { keptView, panned, viewOf, viewWith, wholeView, zoomed, type Frame } from './line-views.ts';
import { usualWish, type LineWish } from './line-wish.ts';
import type { View } from './source-titles.ts';

/** How far a key or a button moves the view, as a part of the frame, and how much closer a step comes. */
const PAN = 0.25;
const CLOSER = 1.4;

/** A line over time as one looks at it now: laid out, seen from somewhere, with one animal picked or none. */
export class LineView {
  line = $state.raw<LineOverTime | null>(null);
  layout = $state.raw<LineLayout | null>(null);
  wish = $state.raw<LineWish>(usualWish);
  /** Why there is nothing to look at, if the layout failed. */
  problem = $state('');
  frame = $state.raw<Frame>({ width: 0, height: 0 });
  /** Where one looks; null for the whole line, whatever the frame becomes. */
  #looked = $state.raw<View | null>(null);
  #came: number | null = null;

  readonly kin = $derived(this.layout && new LineKin(this.layout));
  readonly bars = $derived(this.line && this.layout && barParts(this.line, this.layout, this.wish.bars));
  readonly view: View = $derived.by(() => {
    const { layout, frame } = this;
    if (!layout || frame.width === 0) return { k: 1, x: 0, y: 0 };
    return this.#looked ? keptView(layout, frame, this.#looked) : wholeView(layout, frame);
  });
  readonly isWhole = $derived(this.#looked === null);
  /** Place of the picked animal in the answer; −1 for none. */
  readonly picked = $derived(this.line && this.wish.animal !== '' ? this.find(this.wish.animal) : -1);
  readonly lit: Lit | null = $derived(
    this.kin && this.picked >= 0 ? this.kin.litAround(this.picked, this.wish.lit) : null,
  );
  /** 1 for animals that the filters set aside. */
  readonly out: Uint8Array = $derived.by(() => {
    const { line, wish } = this;
    if (!line) return new Uint8Array(0);
    const keeper = wish.keeper === '' ? -1 : line.keepers.findIndex(({ id }) => id === wish.keeper);
    return Uint8Array.from(line.animals.id, (_, animal) =>
      (wish.living && line.animals.status[animal] !== 'alive') ||
      (wish.keeper !== '' && line.animals.keeper[animal] !== keeper)
        ? 1
        : 0,
    );
  });
  readonly shown = $derived(this.out.reduce((sum, out) => sum + 1 - out, 0));

  /** Takes a new answer: lays it out, and looks at the whole again unless it is the same line, changed. */
  async take(line: LineOverTime): Promise<void> {
    try {
      const layout = await layOut(line);
      this.line = line;
      this.layout = layout;
      this.problem = '';
    } catch {
      this.problem = 'The drawing could not be laid out in this browser. The table shows the same animals.';
      this.line = line;
    }
  }

  /** Place of an animal by its id, registry number or code, exactly; −1 where there is none. */
  find(text: string): number {
    const animals = this.line?.animals;
    const wanted = text.trim().toLowerCase();
    if (!animals || wanted === '') return -1;
    return animals.id.findIndex(
      (id, at) =>
        id === wanted || animals.number[at]?.toLowerCase() === wanted || animals.code[at]?.toLowerCase() === wanted,
    );
  }

  /** The animals that a part of a code or number fits, those that begin with it first; at most so many. */
  search(text: string, most = 8): number[] {
    const { line } = this;
    const wanted = text.trim().toLowerCase();
    if (!line || wanted === '') return [];
    const [begin, hold]: [number[], number[]] = [[], []];
    line.animals.id.forEach((_, at) => {
      const names = [line.animals.code[at], line.animals.number[at]].map((name) => name?.toLowerCase() ?? '');
      if (names.some((name) => name.startsWith(wanted))) begin.push(at);
      else if (names.some((name) => name.includes(wanted))) hold.push(at);
    });
    return [...begin, ...hold].slice(0, most);
  }

  /** Picks an animal, so that its kin are lit; null lets go. It comes into sight; `isClose` looks at it closely. */
  pick(animal: number | null, isClose = false): void {
    const { line, layout, frame } = this;
    const name = animal === null ? '' : (line?.animals.number[animal] ?? line?.animals.id[animal] ?? '');
    this.wish = { ...this.wish, animal: name };
    if (animal === null || !layout || frame.width === 0) return;
    const whole = wholeView(layout, frame);
    if (isClose && whole.k < 0.9) this.#looked = viewOf(layout, frame, this.view, animal);
    else if (this.#looked) this.#looked = viewWith(layout, frame, this.view, animal);
  }

  /** Goes on by a key; gives whether there was somewhere to go. */
  step(key: ChartKey): boolean {
    const { layout, kin } = this;
    if (!layout || !kin) return false;
    const to = this.picked < 0 ? firstOf(layout) : stepFrom(layout, kin, this.picked, key, this.#came);
    if (to === null) return false;
    this.#came = key === 'stepUp' ? this.picked : null;
    this.pick(to);
    return true;
  }

  /** The whole line again. */
  seeWhole(): void {
    this.#looked = null;
  }

  /** Closer (or further, below 1) about a point of the frame; its middle if left out. */
  zoom(factor: number, x = this.frame.width / 2, y = this.frame.height / 2): void {
    const { layout, frame } = this;
    if (!layout) return;
    const view = zoomed(layout, frame, this.view, factor, x, y);
    this.#looked = view.k <= wholeView(layout, frame).k * 1.001 ? null : view;
  }

  /** One step closer, or further: about the picked animal where there is one. */
  zoomStep(isCloser: boolean): void {
    const { layout, view, picked } = this;
    const factor = isCloser ? CLOSER : 1 / CLOSER;
    if (!layout || picked < 0) {
      this.zoom(factor);
      return;
    }
    this.zoom(
      factor,
      (layout.animals.x[picked] ?? 0) * view.k + view.x,
      (layout.animals.y[picked] ?? 0) * view.k + view.y,
    );
  }

  pan(x: number, y: number): void {
    if (this.layout && this.#looked) this.#looked = panned(this.layout, this.frame, this.view, x, y);
  }

  /** A quarter of the frame in a direction of −1, 0 or 1. */
  panStep(across: number, down: number): void {
    this.pan(-across * PAN * this.frame.width, -down * PAN * this.frame.height);
  }
}
