import { cleanup, render, screen } from '@testing-library/svelte';
import { afterEach, describe, expect, it } from 'vitest';
import type { PlanForecast } from '../../../client/src/lib/api/types.ts';
import ForecastSharesTable from '../../../client/src/lib/match/forecast-shares-table.svelte';
import { forecastShares } from '../../../client/src/lib/match/forecast-shares.ts';
import { layoutShares } from '../../../client/src/lib/match/forecast-shares-layout.ts';
import { inventedForecast } from './invented-forecast.ts';

afterEach(cleanup);

const outcome = (mean: number) => ({
  mean,
  from: mean / 2,
  to: Math.min(1, mean * 1.5),
  least: 0,
  greatest: 1,
  standardError: 0.01,
});

/** Founders whose shares are told of every generation; all figures invented. */
function withFounders(shares: readonly number[], generations = 3): PlanForecast {
  const forecast = inventedForecast(generations);
  return {
    ...forecast,
    origins: shares.map((_, at) => ({
      founder: { id: `f${at}`, number: `${at}-0`, code: `F-${at}`, sex: 'male' as const, isPrivate: false },
      standing: at % 2 === 0 ? ('stated' as const) : ('documented' as const),
    })),
    courses: forecast.courses.map((course) => ({
      ...course,
      generations: course.generations.map((generation) => ({
        ...generation,
        shares: shares.map(outcome),
        otherShare: outcome(Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0))),
      })),
    })),
  };
}

describe('founder shares of the next generations', () => {
  it('are numbered by standing, then by share, and add up to all genes of each generation', () => {
    const { origins, courses } = forecastShares(withFounders([0.1, 0.2, 0.4, 0.3]), 9);
    expect(origins.map(({ number, name }) => [number, name])).toEqual([
      [1, 'F-3'],
      [2, 'F-1'],
      [3, 'F-2'],
      [4, 'F-0'],
    ]);
    expect(courses.map(({ course }) => course)).toEqual(['plan', 'today', 'random']);
    for (const { rows } of courses) {
      expect(rows.map(({ year }) => year)).toEqual([0, 1, 2, 3]);
      for (const { shares, othersShare } of rows) {
        expect(shares.reduce((sum, share) => sum + share, othersShare)).toBeCloseTo(1, 12);
        expect(othersShare).toBe(0);
      }
    }
  });

  it('keep their number by their size, and put what has none together', () => {
    const { origins, courses } = forecastShares(withFounders([0.05, 0.5, 0.25, 0.1]), 2);
    expect(origins.map(({ name }) => name)).toEqual(['F-1', 'F-2']);
    expect(courses[0]?.rows[0]?.othersShare).toBeCloseTo(0.25, 12);
  });

  it('are drawn the same whatever the order of courses and generations', () => {
    const forecast = withFounders([0.6, 0.4]);
    const turned = {
      ...forecast,
      courses: [...forecast.courses]
        .reverse()
        .map((course) => ({ ...course, generations: [...course.generations].reverse() })),
    };
    const picture = (of: PlanForecast) => JSON.stringify(layoutShares(forecastShares(of, 9), 856));
    expect(picture(turned)).toBe(picture(forecast));
  });

  it.each([288, 320, 640, 856, 1400])('fill each track from edge to edge at %i pixels', (width) => {
    const { tracks, ...layout } = layoutShares(forecastShares(withFounders([0.1, 0.2, 0.3, 0.35]), 9), width);
    expect(tracks).toHaveLength(3);
    for (const { left, width: wide, top, streams } of tracks) {
      expect(left + wide).toBeLessThanOrEqual(layout.width);
      expect(top + layout.ladder).toBeLessThanOrEqual(layout.height);
      for (const [at] of layout.rungs.entries()) {
        const steps = streams.map(({ steps: of }) => of[at]);
        expect(steps[0]?.left).toBeCloseTo(left, 6);
        expect(steps.at(-1)?.right).toBeCloseTo(left + wide, 6);
        steps.slice(1).forEach((step, place) => expect(step?.left).toBeCloseTo(steps[place]?.right ?? NaN, 6));
      }
    }
    const lefts = new Set(tracks.map(({ left }) => left)).size;
    expect(lefts).toBe(width < 640 ? 1 : 3);
  });

  it('are told as a table that says the same', () => {
    render(ForecastSharesTable, { shares: forecastShares(withFounders([0.6, 0.4], 2), 9) });
    const tables = screen.getAllByRole('table');
    expect(tables).toHaveLength(3);
    const rows = [...(tables[0]?.querySelectorAll('tbody tr') ?? [])].map((row) =>
      [...row.children].map((cell) => cell.textContent.trim()),
    );
    expect(rows).toEqual([
      ['1\u2002F-1', 'documented', '40', '40', '40', '20 to 60'],
      ['2\u2002F-0', 'stated', '60', '60', '60', '30 to 90'],
    ]);
  });
});
