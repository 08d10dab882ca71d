import { forecastInRegister } from '../../api/match/forecast/register-forecast.ts';
import { buildShape } from './kernel-shapes.ts';
import { medianOf } from './stopwatch.ts';

/** One line of the table: what was forecast, and how long it took. */
interface ForecastRow {
  readonly animals: number;
  readonly pairs: number;
  readonly courses: string;
  readonly generations: number;
  readonly replicates: number;
  readonly loci: number;
  readonly milliseconds: number;
}

const GENERATIONS = 8;
const REPLICATES = 1000;

/** Forecasts of a plan in a line of 500, and in one of 5000; the last animals of the line breed. */
export function benchForecasts(): ForecastRow[] {
  return [
    { animals: 500, pairs: 30, loci: 32 },
    { animals: 500, pairs: 30, loci: 1 },
    { animals: 5000, pairs: 150, loci: 32 },
  ].map(({ animals, pairs: count, loci }) => {
    const pedigree = buildShape({
      name: 'one line',
      lines: 1,
      animalsPerLine: animals,
      breeders: 2 * count,
      clutchSize: 5,
      crosses: 0,
    });
    const serials = Float64Array.from(pedigree.clutchOf.keys());
    const pairs = Array.from({ length: count }, (_, pair) => ({
      sire: animals - 1 - pair,
      dam: animals - 1 - count - pair,
    }));
    const groups = pairs.map(({ sire, dam }) => ({ sires: [sire], dams: [dam], unsexed: [] }));
    const courses = ['plan', 'today', 'random'] as const;
    const question = {
      pairs,
      groups,
      courses,
      generations: GENERATIONS,
      youngKept: 4,
      replicates: REPLICATES,
      loci,
      seed: 1,
    };
    const { milliseconds } = medianOf(
      () =>
        forecastInRegister(pedigree, serials, { ...question, originsMost: 24 }, { clutches: Infinity, cost: Infinity }),
      3,
    );
    return {
      animals,
      pairs: count,
      courses: courses.join(', '),
      generations: GENERATIONS,
      replicates: REPLICATES,
      loci,
      milliseconds,
    };
  });
}
