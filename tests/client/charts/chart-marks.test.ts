import { expect, it } from 'vitest';
import type { PlacedAnimal } from '../../../client/src/lib/charts/ancestors/ancestor-layout.ts';
import { marksOf } from '../../../client/src/lib/charts/ancestors/chart-marks.ts';
import { symbolOutline } from '../../../client/src/lib/charts/symbol-outline.ts';

type Told = Partial<PlacedAnimal['animal']>;

function placed(x: number, y: number, told: Told, above: PlacedAnimal['above'] = null): PlacedAnimal {
  const animal = { id: `${x}`, sex: 'male', status: 'alive', standings: [], isPrivate: false, ...told };
  return { animal, x, y, share: 1, generation: 0, probabilities: [], above } as unknown as PlacedAnimal;
}

it('gathers the marks of all animals into a path of each kind', () => {
  const marks = marksOf([
    placed(100, 50, { status: 'died' }),
    placed(300, 50, { sex: 'female' }, 'more'),
    placed(500, 50, { sex: 'unsexed', isPrivate: true }),
  ]);
  expect(marks.symbols).toBe(symbolOutline('male', 100, 50, 8.2) + symbolOutline('female', 300, 50, 8.2));
  expect(marks.privateSymbols).toBe(symbolOutline('unsexed', 500, 50, 8.2));
  expect(marks.slashes).toBe('M89 61l22 -22');
  expect(marks.more).toBe('M300 38v-5m0 -3v-3m0 -3v-3');
});

it('fills a bar from end to end, with a line between two standings, and draws none for a private animal', () => {
  const standings = [
    { standing: 'stated', share: 0.25 },
    { standing: 'documented', share: 0.75 },
  ] as const;
  const { bands, lines } = marksOf([
    placed(100, 50, { standings: [...standings] }),
    placed(300, 50, { standings: [...standings], isPrivate: true }),
  ]);
  expect([...bands]).toEqual([
    ['documented', 'M115 67h46.5v8h-46.5z'],
    ['stated', 'M161.5 67h15.5v8h-15.5z'],
  ]);
  expect(lines).toBe('M115 67h62v8h-62zM161.5 67v8');
});

it('draws the sexes equally large to the eye', () => {
  expect(symbolOutline('male', 0, 0, 8.2)).toBe('M-7.5 -7.5h15v15h-15z');
  expect(symbolOutline('female', 0, 0, 8.2)).toBe('M-8.2 0a8.2 8.2 0 1 0 16.4 0a8.2 8.2 0 1 0 -16.4 0z');
  expect(symbolOutline('unsexed', 0, 0, 8.2)).toBe('M0 -9.6l9.6 9.6l-9.6 9.6l-9.6 -9.6z');
});
