import type { LineOverTime } from '$lib/api/types.ts';
import { symbolOutline } from '../symbol-outline.ts';
import type { Token } from './fills.ts';
import type { LineLayout } from './line-layout.ts';
import { sizes } from './line-sizes.ts';

/** Many symbols as one path. */
export interface SymbolPath {
  readonly token: Token;
  readonly isFilled: boolean;
  readonly path: string;
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
