import type { LineScene } from './line-painter.ts';
import { sizes } from './line-sizes.ts';
import type { View } from './source-titles.ts';

/** Where the bar of a family stands on the screen, in CSS pixels. */
export interface FamilyBox {
  readonly family: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Below this scale single young cannot be told from each other. */
const FAR = 0.42;

export function isFar({ k }: View): boolean {
  return k < FAR;
}

/** From the y of a family on the plane to the top of its bar. */
export function barTop(kind: string): number {
  return kind === 'clutch' ? sizes.toBar : 3 - sizes.bracket;
}

/** The bar of a family on the screen; null where nothing of the family is in sight. */
export function boxOf({ layout: { families }, view, frame }: LineScene, family: number): FamilyBox | null {
  const width = Math.max(2, (families.width[family] ?? 0) * view.k);
  const left = (families.x[family] ?? 0) * view.k + view.x - width / 2;
  if (left > frame.width || left + width < 0) return null;
  const y = families.y[family] ?? 0;
  const top = (y + barTop(families.kind[family] ?? 'lone')) * view.k + view.y;
  const deep = (sizes.toYoung + (families.rows[family] ?? 1) * sizes.row) * view.k;
  if (top - sizes.bracket > frame.height || top + deep < 0) return null;
  return { family, left, top, width, height: Math.max(2.4, sizes.bar * view.k) };
}
