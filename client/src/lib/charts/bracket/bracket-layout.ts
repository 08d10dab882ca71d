import type { PedigreeView } from '../ancestors/pedigree-view.ts';
import { bracketSlots, type BracketSlot } from './bracket-slots.ts';

/** A slot with its place on the paper, in millimetres. */
export interface PlacedSlot extends BracketSlot {
  x: number;
  /** Middle of its height. */
  y: number;
  width: number;
  /** Its share of the paper: no other slot of its generation reaches into it. */
  height: number;
  /** Lines of text that have room in it, 1 to 6. */
  lines: number;
  /** The animal's ancestors stand to the right of it. */
  leadsOn: boolean;
}

export interface BracketLayout {
  width: number;
  height: number;
  slots: PlacedSlot[];
  /** SVG paths that join young and parents. */
  joints: string[];
  /** Size of the type and height of its lines, in millimetres. */
  type: number;
  leading: number;
}

/** Generations that a bracket can have. */
export const bracketGenerations = [3, 4, 5, 6] as const;

/** Type of 9 points at most, and of 6 points at least, in millimetres; smaller would not be read. */
const mostType = (9 * 25.4) / 72;
export const leastType = (6 * 25.4) / 72;
const leadingOfType = 1.22;
/** Between the columns: where the joints run. */
const gutter = 3.5;

/** A column holds its number, its symbol and a date, so many times as wide as the type is large. */
const columnOfType = 8.4;

/** Size of the type that a bracket of so many generations has on a paper, in millimetres. */
export function bracketType(generations: number, paper: { width: number; height: number }): number {
  const column = paper.width / (generations + 1) - gutter;
  return Math.min(mostType, paper.height / 2 ** generations / leadingOfType, column / columnOfType);
}

/**
 * A bracket on a fixed grid: a column a generation, the animal at the left, each slot in the middle of its parents'. The same places
 * whoever stands there, so that two brackets can be held against each other. Pure.
 *
 * @param paper what there is room for, in millimetres
 */
export function layoutBracket(
  view: PedigreeView,
  generations: number,
  paper: { width: number; height: number },
): BracketLayout {
  const type = bracketType(generations, paper);
  const leading = type * leadingOfType;
  const column = paper.width / (generations + 1);
  const slots = bracketSlots(view, generations);
  const written = new Set(slots.map(({ number }) => number));
  const placed = slots.map((slot): PlacedSlot => {
    const height = paper.height / 2 ** slot.generation;
    const place = slot.number - 2 ** slot.generation;
    return {
      ...slot,
      x: slot.generation * column,
      y: (place + 0.5) * height,
      width: column - gutter,
      height,
      lines: Math.max(1, Math.min(6, Math.floor(height / leading + 1e-6))),
      leadsOn: written.has(2 * slot.number),
    };
  });
  const byNumber = new Map(placed.map((slot) => [slot.number, slot]));
  const joints = placed.flatMap((slot) => {
    const sire = byNumber.get(2 * slot.number);
    const dam = byNumber.get(2 * slot.number + 1);
    if (!sire || !dam) return [];
    const from = slot.x + slot.width + 0.4;
    const to = sire.x - 0.6;
    const middle = (from + to) / 2;
    const line = (value: number): string => String(Math.round(value * 100) / 100);
    return [
      `M${line(to)} ${line(sire.y)}H${line(middle)}V${line(dam.y)}H${line(to)}M${line(from)} ${line(slot.y)}H${line(middle)}`,
    ];
  });
  return { ...paper, slots: placed, joints, type, leading };
}
