import type { RegisterSketch } from './register-sketch.ts';

/**
 * Group housing for many generations: every clutch of a generation may be of any of four sires and four dams of the one before, eight young in
 * four clutches. The last animal's ancestors can be put together in 16^(4·(generations−1)+1) ways.
 */
export function vagueHerd(generations: number): RegisterSketch {
  const individuals: { clutch?: number; line: number }[] = Array.from({ length: 8 }, () => ({ line: 0 }));
  const clutches: RegisterSketch['clutches'][number][] = [];
  let parents = [0, 1, 2, 3, 4, 5, 6, 7];
  const candidates = (side: readonly number[]) => side.map((individual) => ({ individual, probability: 0.25 }));
  for (let generation = 0; generation < generations; generation++) {
    const young: number[] = [];
    for (let clutch = 0; clutch < 4; clutch++) {
      for (let count = 0; count < 2; count++) {
        young.push(individuals.length);
        individuals.push({ clutch: clutches.length, line: 0 });
      }
      clutches.push({ sires: candidates(parents.slice(0, 4)), dams: candidates(parents.slice(4)) });
    }
    // one young of each clutch on either side, so that mates are clutch-mates as often as not
    parents = [0, 2, 4, 6, 1, 3, 5, 7].map((place) => young[place] ?? 0);
  }
  return { lines: [{ name: 'Vague herd' }], clutches, individuals };
}
