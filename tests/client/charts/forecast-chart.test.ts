import { cleanup, fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, describe, expect, it } from 'vitest';
import ForecastChart from '../../../client/src/lib/match/forecast-chart.svelte';
import ForecastDrawing from '../../../client/src/lib/match/forecast-drawing.svelte';
import { forecastSizes, layoutForecast } from '../../../client/src/lib/match/forecast-layout.ts';
import { forecastRows, howForecast, outcomeInWords } from '../../../client/src/lib/match/forecast-words.ts';
import { inventedCourse, inventedForecast } from './invented-forecast.ts';

afterEach(cleanup);

const widths = [288, 320, 559, 560, 856, 1400];
const layouts = widths.flatMap((width) =>
  [1, 6, 10].map((generations) => layoutForecast(inventedForecast(generations).courses, width)),
);

describe('the drawing of a forecast', () => {
  it('is the same whatever the order of the courses and generations', () => {
    const { courses } = inventedForecast();
    const other = [...courses]
      .reverse()
      .map((course) => ({ ...course, generations: [...course.generations].reverse() }));
    const picture = (of: typeof courses) => JSON.stringify(layoutForecast(of, 856));
    expect(picture(other)).toBe(picture(courses));
  });

  it('keeps every mark between the ends of its interval, and all within its track', () => {
    for (const { curves, tracks, width, height } of layouts) {
      expect(curves).toHaveLength(6);
      for (const { kind, marks } of curves) {
        const track = tracks.find((one) => one.kind === kind);
        if (!track) throw new Error(`no track of ${kind}`);
        for (const { x, from, to, y } of marks) {
          expect([from, x, to]).toEqual([from, x, to].sort((one, other) => one - other));
          expect(from).toBeGreaterThanOrEqual(track.left - 0.1);
          expect(to).toBeLessThanOrEqual(track.left + track.width + 0.1);
          expect(y).toBeGreaterThan(track.top);
        }
        expect(track.left + track.width).toBeLessThan(width);
        expect(Math.max(...marks.map(({ y }) => y))).toBeLessThan(height);
      }
    }
  });

  it('never lays an interval over that of another course or generation', () => {
    for (const { curves } of layouts)
      for (const kind of ['diversity', 'inbreeding']) {
        const heights = curves.filter((curve) => curve.kind === kind).flatMap(({ marks }) => marks.map(({ y }) => y));
        const sorted = heights.sort((one, other) => one - other);
        sorted.slice(1).forEach((y, at) => expect(y - (sorted[at] ?? 0)).toBeGreaterThanOrEqual(forecastSizes.step));
      }
  });

  it('lets more diversity stand further right, and generations run down', () => {
    const { curves } = layoutForecast(inventedForecast().courses, 856);
    const lastOf = (course: string) =>
      curves.find((curve) => curve.course === course && curve.kind === 'diversity')?.marks.at(-1)?.x ?? NaN;
    expect(lastOf('plan')).toBeGreaterThan(lastOf('today'));
    expect(lastOf('today')).toBeGreaterThan(lastOf('random'));
    for (const { marks } of curves)
      marks.slice(1).forEach(({ y }, at) => expect(y).toBeGreaterThan(marks[at]?.y ?? NaN));
  });

  it('stands in two panels on a phone', () => {
    const [narrow, wide] = [320, 856].map((width) => layoutForecast(inventedForecast().courses, width));
    expect(new Set(narrow?.tracks.map(({ left }) => left)).size).toBe(1);
    expect(new Set(wide?.tracks.map(({ top }) => top)).size).toBe(1);
    expect(narrow?.width).toBe(320);
  });

  it('tells courses apart by shape and stroke alone', () => {
    const { courses } = inventedForecast();
    const layout = layoutForecast(courses, 856);
    const { container } = render(ForecastDrawing, { layout, courses, label: 'Invented' });
    const lines = [...container.querySelectorAll('path.line')].map((line) => line.getAttribute('stroke-dasharray'));
    expect(new Set(lines).size).toBe(3);
    const marks = ['circle', 'rect', 'path.open'].map((shape) => container.querySelectorAll(`svg ${shape}`).length);
    expect(marks).toEqual([14, 14, 14]);
  });
});

describe('a forecast in words', () => {
  it('has a row for each course in each generation, with interval and error of the mean', () => {
    const rows = forecastRows([inventedCourse('random', 0.03, 1), inventedCourse('plan', 0.015, 1)]);
    expect(rows.map(({ generation, course }) => [generation, course])).toEqual([
      ['breeders', 'this plan'],
      ['breeders', 'mating at random'],
      ['generation 1', 'this plan'],
      ['generation 1', 'mating at random'],
    ]);
    expect(rows[2]?.diversity).toEqual({
      mean: '92.6\u202f%',
      interval: '91.6 to 93.6\u202f%',
      standardError: '± 0.02',
    });
  });

  it('says what comes of each course, the best first, and how it was found', () => {
    expect(outcomeInWords(inventedForecast(2).courses)).toMatch(
      /^Gene diversity in generation 2: 91.2\u202f% .* under this plan; .* of today; .* at random\.$/,
    );
    expect(outcomeInWords([])).toBe('');
    expect(howForecast({ replicates: 1000, loci: 32, seed: 7 })).toContain('bred 1\u202f000 times');
    expect(howForecast({ replicates: 100, loci: 1, seed: 7 })).toContain('one gene was');
  });

  it('stands beside the drawing for those who do not see it, and in its place for those who want it', async () => {
    const missing = [{ course: 'today' as const, detail: 'Enter your pairings to compare with them.' }];
    const forecast = { ...inventedForecast(), missing, courses: inventedForecast().courses.slice(0, 2) };
    render(ForecastChart, { forecast, name: 'Quebrada Inventada' });
    expect(screen.getByText(/Not told for the pairings of today: Enter your pairings/)).toBeTruthy();
    expect(screen.getByText('Founders count as unrelated unless their source states a base kinship.')).toBeTruthy();
    expect(screen.getByText('Invented rule of plan.')).toBeTruthy();
    await fireEvent.click(screen.getByRole('button', { name: 'Table' }));
    expect(screen.getAllByRole('row')).toHaveLength(1 + 2 * 7);
    expect(screen.getByRole('button', { name: 'Chart' }).getAttribute('aria-pressed')).toBe('true');
  });

  it('says why there is nothing to draw where no course can be told', () => {
    const missing = [{ course: 'today' as const, detail: 'Enter your pairings to compare with them.' }];
    render(ForecastChart, { forecast: { ...inventedForecast(), courses: [], missing }, name: 'Quebrada Inventada' });
    expect(screen.queryByRole('button')).toBeNull();
    expect(screen.getByText(/Enter your pairings/)).toBeTruthy();
  });
});
