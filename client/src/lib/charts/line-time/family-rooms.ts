import type { Family } from './line-families.ts';
import { sizes } from './line-sizes.ts';

/** The room a family takes around its x and y. */
export interface Room {
  readonly width: number;
  readonly above: number;
  readonly below: number;
  readonly rows: number;
  readonly abreast: number;
}

/** The room of a family, by how many it holds. */
export function roomOf({ kind, animals }: Family): Room {
  const most = kind === 'clutch' ? sizes.abreast : sizes.foundersAbreast;
  const rows = Math.max(1, Math.ceil(animals.length / most));
  const abreast = Math.ceil(animals.length / rows);
  const width = Math.max(abreast * sizes.pitch, sizes.narrowest) + sizes.gap;
  const deep = (rows - 1) * sizes.row + sizes.symbol;
  return kind === 'clutch'
    ? { width, above: sizes.ring + 2, below: sizes.toYoung + deep + sizes.below, rows, abreast }
    : { width, above: sizes.bracket, below: deep + sizes.below, rows, abreast };
}

/** Where an animal stands in its family, from the middle, by its place among the others. */
export function columnOf(place: number, room: Room | undefined, count: number): number {
  const abreast = room?.abreast ?? 1;
  const row = Math.floor(place / abreast);
  const inRow = Math.min(abreast, count - row * abreast);
  return ((place % abreast) - (inRow - 1) / 2) * sizes.pitch;
}
