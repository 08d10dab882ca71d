import type { LineOverTime } from '$lib/api/types.ts';
import type { BarParts } from './bar-parts.ts';
import { paintFamilies } from './paint-families.ts';
import { paintNames } from './paint-names.ts';
import { paintRuler, paintYears } from './paint-years.ts';
import { paintStreams } from './paint-streams.ts';
import { patternsOf } from './canvas-patterns.ts';
import type { Palette } from './fills.ts';
import type { Lit, LineKin } from './line-kin.ts';
import type { LineLayout } from './line-layout.ts';
import type { Frame } from './line-views.ts';
import type { View } from './source-titles.ts';

/** All that one picture of a line on a canvas depends on. */
export interface LineScene {
  readonly line: LineOverTime;
  readonly layout: LineLayout;
  readonly kin: LineKin;
  readonly bars: BarParts;
  readonly view: View;
  readonly frame: Frame;
  /** Dots of the screen for a CSS pixel. */
  readonly dots: number;
  readonly palette: Palette;
  readonly fonts: { readonly sans: string; readonly serif: string };
  readonly lit: Lit | null;
  /** 1 for animals that the filters leave out. */
  readonly out: Uint8Array;
  /** Decimal year of today. */
  readonly today: number;
}

/** A canvas to paint on with what every layer needs of it. */
export interface Easel extends LineScene {
  readonly ctx: CanvasRenderingContext2D;
  /** Fillings of the bars, by their places in `bars.fills`. */
  readonly patterns: readonly (CanvasPattern | string)[];
}

/** Paints a line: ground, streams, families, then what is written over them. */
export function paintLine(ctx: CanvasRenderingContext2D, scene: LineScene): void {
  const { dots, frame, palette } = scene;
  const easel: Easel = { ...scene, ctx, patterns: patternsOf(ctx, scene) };
  ctx.setTransform(dots, 0, 0, dots, 0, 0);
  ctx.fillStyle = palette('paper');
  ctx.fillRect(0, 0, frame.width, frame.height);
  paintYears(easel);
  paintStreams(easel);
  paintFamilies(easel);
  paintNames(easel);
  paintRuler(easel);
}
