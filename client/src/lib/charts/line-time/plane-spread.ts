import type { Room } from './family-rooms.ts';
import type { LineFamilies } from './line-families.ts';
import { sizes } from './line-sizes.ts';

/** Wished width of the plane by its height, and the least and greatest height of a year. */
const ASPECT = 1.5;
const LEAST_YEAR = 16;
const GREATEST_YEAR = 220;
/** A year that is higher than this makes room for no earlier generation: what is closer than its drawing gives way. */
const CLOSE_YEAR = 30;
/** How far a long and narrow line may be drawn apart. */
const WIDEST = 7;

/** Height of a year with which the plane becomes about as wide as wished and no drawing reaches the next generation. */
export function yearHeight({ families, familyOf, links }: LineFamilies, rooms: readonly Room[]): number {
  const years = families.flatMap(({ dating }) => (dating.year === null ? [] : [dating.year]));
  const first = years.reduce((one, other) => Math.min(one, other), Infinity);
  const last = years.reduce((one, other) => Math.max(one, other), -Infinity);
  const span = years.length === 0 ? 1 : Math.max(1, last - first);
  let least: number = LEAST_YEAR;
  for (const { animal, family } of links) {
    const above = familyOf[animal] ?? -1;
    const [from, to] = [families[above]?.dating, families[family]?.dating];
    if (!from?.isFirm || !to?.isFirm || from.year === null || to.year === null || to.year <= from.year) continue;
    least = Math.max(least, ((rooms[above]?.below ?? 0) + sizes.ring) / (to.year - from.year));
  }
  const area = rooms.reduce((sum, { width, above, below }) => sum + (width + sizes.gap) * (above + below), 0) * 2;
  const wished = Math.sqrt(area / ASPECT) / span;
  return Math.min(GREATEST_YEAR, Math.max(Math.min(least, CLOSE_YEAR), wished));
}

/** By how much a plane is drawn apart sideways to fill about what it has in height; 1 where it is wide enough. */
export function stretchOf(width: number, height: number): number {
  return Math.min(WIDEST, Math.max(1, (height * ASPECT * 0.8) / Math.max(1, width)));
}
