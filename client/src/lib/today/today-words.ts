import type { ClutchItem, ProfileGap, SexingGroup } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { daysInWords } from '../ui/dates.ts';
import { counted } from '../ui/figures.ts';
import { drawWindow } from './window-geometry.ts';

/** Tadpoles that are left of a clutch, null where nobody counted. */
export function tadpolesLeft({
  eggs,
  hatched,
  outOfWater,
  losses,
}: Pick<ClutchItem, 'eggs' | 'hatched' | 'outOfWater' | 'losses'>): number | null {
  if (hatched === null) return null;
  const lost = losses.reduce((sum, { count }) => sum + count, 0);
  const lostInWater = Math.max(0, lost - Math.max(0, (eggs ?? hatched) - hatched));
  return Math.max(0, hatched - (outOfWater ?? 0) - lostInWater);
}

/** Who laid it, as far as it is known: "IH-72", "IH-72 or IH-73"; empty where nobody knows. */
export function mothersOf({ parents }: ClutchItem): string {
  const animals =
    parents.mode === 'lists'
      ? parents.dams.flatMap(({ individual }) => individual ?? [])
      : parents.pairs.flatMap(({ a, b }) => [a, b]);
  const names = [...new Set(animals.map(referenceName))];
  if (names.length > 3) return counted(names.length, ['animal', 'animals']);
  return names.length === 2 ? `${names[0] ?? ''} or ${names[1] ?? ''}` : names.join(', ');
}

/** What is in the dish: "14 eggs of IH-72", "7 tadpoles of IH-20". */
export function contentsInWords(clutch: ClutchItem): string {
  const mothers = mothersOf(clutch);
  const count = clutch.stage === 'egg' ? clutch.eggs : tadpolesLeft(clutch);
  if (clutch.stage === 'egg') {
    if (count === null) return mothers === '' ? 'Eggs, not counted' : `Eggs of ${mothers}`;
    const eggs = counted(count, ['egg', 'eggs']);
    return mothers === '' ? eggs : `${eggs} of ${mothers}`;
  }
  if (count === null) return mothers === '' ? 'Tadpoles, not counted' : `Tadpoles of ${mothers}`;
  const tadpoles = counted(count, ['tadpole', 'tadpoles']);
  return mothers === '' ? tadpoles : `${tadpoles} of ${mothers}`;
}

/** The window in words, for whoever does not see the drawing: "expected 26 November to 4 December 2026, day 12". */
export function windowInWords(clutch: ClutchItem, on: string): string {
  const drawn = drawWindow(clutch, on, 100);
  if (!drawn || !clutch.expected) return '';
  const days = daysInWords(clutch.expected.from, clutch.expected.to);
  if (drawn.late > 0) return `expected ${days}, ${counted(drawn.late, ['day', 'days'])} late`;
  return `expected ${days}`;
}

/** Where a tank's name is a word and a number, the number is written large: "Tank 14" is 14 over tank. */
export function placeParts(name: string): { large: string; small: string } | null {
  const [, small, large] = /^(\p{L}[\p{L}.]{1,11})\s+(\p{Lu}?\d{1,3}\p{L}?|\p{Lu})$/u.exec(name.trim()) ?? [];
  return small === undefined || large === undefined ? null : { large, small: small.toLowerCase() };
}

/** Names of the animals of a group, at most so many: "IH-94, IH-95, IH-96 and 4 more". */
export function namesInWords(animals: SexingGroup['animals'], most = 4): string {
  const names = animals.map(referenceName);
  if (names.length <= most + 1) return names.join(', ');
  return `${names.slice(0, most).join(', ')} and ${names.length - most} more`;
}

/** How old the animals of a group are. */
export const ageInMonths = ({ months }: SexingGroup): string =>
  `${counted(months, ['month', 'months'])} out of the egg`;

const lacking: Readonly<Record<string, string>> = {
  'laying-to-hatching': 'how long its eggs take to hatch',
  'hatching-to-leaving-water': 'how long its tadpoles stay in the water',
  'sexable-by-looks': 'from which age on looks tell the sex',
};

/** What a profile lacks, in words. */
export const missingInWords = ({ missing }: ProfileGap): string =>
  missing.map((trait) => lacking[trait] ?? trait).join(', ');
