import type { LineOverTime } from '$lib/api/types.ts';
import type { Token } from './fills.ts';
import type { LineLayout } from './line-layout.ts';
import { sizes } from './line-sizes.ts';

/** Many symbols as one path. */
export interface SymbolPath {
  readonly token: Token;
  readonly isFilled: boolean;
  readonly path: string;
}

const round = (value: number): string => String(Math.round(value * 10) / 10);

/** The outline of an animal's symbol: a square for a male, a circle for a female, a diamond for one that is not sexed. */
export function symbolOutline(sex: string, x: number, y: number, r: number): string {
  if (sex === 'male') return `M${round(x - r)} ${round(y - r)}h${2 * r}v${2 * r}h${-2 * r}z`;
  if (sex === 'female') return `M${round(x - r)} ${round(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
  const d = r * 1.2;
  return `M${round(x)} ${round(y - d)}l${d} ${d}l${-d} ${d}l${-d} ${-d}z`;
}

/** All symbols, filled where an animal lives, gathered by their colours; private animals open and pale. */
export function symbolPaths(
  { animals }: LineOverTime,
  layout: LineLayout,
  tokenOf: (animal: number) => Token,
): SymbolPath[] {
  const groups = new Map<string, { token: Token; isFilled: boolean; parts: string[] }>();
  animals.id.forEach((_, animal) => {
    const token = animals.number[animal] === null ? 'firm' : tokenOf(animal);
    const isFilled = animals.status[animal] === 'alive';
    const key = `${token} ${isFilled}`;
    const group = groups.get(key) ?? { token, isFilled, parts: [] };
    const [x, y] = [layout.animals.x[animal] ?? 0, layout.animals.y[animal] ?? 0];
    group.parts.push(symbolOutline(animals.sex[animal] ?? 'unsexed', x, y, sizes.symbol - 0.5));
    groups.set(key, group);
  });
  return [...groups.values()].map(({ token, isFilled, parts }) => ({ token, isFilled, path: parts.join('') }));
}
