import { standings, type Standing } from '$shared/vocabulary.ts';

/** Colours of the page that the drawing uses, by the names they have in tokens.css. */
export const tokens = [
  'paper',
  'card',
  'sunk',
  'ink',
  'ink-2',
  'ink-3',
  'hair',
  'firm',
  'pen',
  'pen-wash',
  'st-documented',
  'st-corroborated',
  'st-stated',
  'st-by-looks',
  'st-disputed',
  'st-unknown',
] as const;
export type Token = (typeof tokens)[number];

/** Gives the colour of a token, as the page shows it now or as a name that the page fills in. */
export type Palette = (token: Token) => string;

type Mark =
  | { readonly kind: 'rect'; readonly x: number; readonly y: number; readonly w: number; readonly h: number }
  | { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly r: number };

/** A filling: marks in one colour on a ground, repeated in squares, perhaps turned by 45 degrees. */
export interface Fill {
  readonly id: string;
  readonly size: number;
  readonly isTurned: boolean;
  readonly ground: Token;
  readonly pen: Token;
  readonly marks: readonly Mark[];
}

const rect = (x: number, y: number, w: number, h: number): Mark => ({ kind: 'rect', x, y, w, h });
const dot = (x: number, y: number, r: number): Mark => ({ kind: 'dot', x, y, r });
const cross = (size: number, width: number): Mark[] => [rect(0, 0, size, width), rect(0, 0, width, size)];

function fill(id: string, pen: Token, size: number, isTurned: boolean, marks: readonly Mark[]): Fill {
  return { id, size, isTurned, ground: 'card', pen, marks };
}

/** The fine fillings of the standings, as patterns.svelte has them for bars. */
export const standingFills: Readonly<Record<Standing, Fill>> = {
  documented: fill('t-documented', 'st-documented', 4, false, [rect(0, 0, 4, 4)]),
  corroborated: fill('t-corroborated', 'st-corroborated', 3, true, [rect(0, 0, 2, 3)]),
  stated: fill('t-stated', 'st-stated', 5, true, [rect(0, 0, 1.7, 5)]),
  'by-looks': fill('t-by-looks', 'st-by-looks', 5, false, [dot(1.25, 1.25, 1), dot(3.75, 3.75, 1)]),
  disputed: fill('t-disputed', 'st-disputed', 5, true, cross(5, 1.3)),
  unknown: fill('t-unknown', 'st-unknown', 4, false, [rect(0, 0, 4, 4)]),
};

/** Inbreeding in steps that are even by their square roots, ever denser; the first for nothing known, which is no step. */
export const inbreedingFills: readonly Fill[] = [
  fill('t-f-blind', 'ink-3', 6, false, [dot(3, 3, 0.8)]),
  fill('t-f-0', 'ink', 4, false, []),
  fill('t-f-1', 'ink', 6, true, [rect(0, 0, 1, 6)]),
  fill('t-f-2', 'ink', 4, true, [rect(0, 0, 1.2, 4)]),
  fill('t-f-3', 'ink', 3.4, true, [rect(0, 0, 1.9, 3.4)]),
  fill('t-f-4', 'ink', 3.4, true, [...cross(3.4, 1.9)]),
  fill('t-f-5', 'ink', 4, false, [rect(0, 0, 4, 4)]),
];

/** Keepers, those with the most animals first; the last for all further ones and whoever is not told. */
export const keeperFills: readonly Fill[] = [
  fill('t-k-0', 'ink', 4, false, [rect(0, 0, 4, 4)]),
  fill('t-k-1', 'ink', 4, true, [rect(0, 0, 1.4, 4)]),
  fill('t-k-2', 'ink', 5, false, [dot(1.25, 1.25, 1.1), dot(3.75, 3.75, 1.1)]),
  fill('t-k-3', 'ink', 3.5, false, [rect(0, 0, 3.5, 1.6)]),
  fill('t-k-4', 'ink', 3.5, false, [rect(0, 0, 1.6, 3.5)]),
  fill('t-k-5', 'ink', 5, true, cross(5, 1.2)),
  fill('t-k-6', 'ink', 4.5, false, cross(4.5, 1)),
  fill('t-k-7', 'ink', 4, false, []),
];

export const standingFillList: readonly Fill[] = standings.map((standing) => standingFills[standing]);
