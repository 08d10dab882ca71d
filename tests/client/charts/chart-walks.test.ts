import { cleanup, fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, describe, expect, it } from 'vitest';
import type { Figures, GroupMember } from '../../../client/src/lib/api/types.ts';
import { stepInGrid } from '../../../client/src/lib/charts/chart-stop.ts';
import { yearsData } from '../../../client/src/lib/charts/years/year-rows.ts';
import YearsDrawing from '../../../client/src/lib/charts/years/years-drawing.svelte';
import { layoutYears } from '../../../client/src/lib/charts/years/years-layout.ts';
import ForecastDrawing from '../../../client/src/lib/match/forecast-drawing.svelte';
import { layoutForecast } from '../../../client/src/lib/match/forecast-layout.ts';
import ForecastSharesDrawing from '../../../client/src/lib/match/forecast-shares-drawing.svelte';
import { forecastShares } from '../../../client/src/lib/match/forecast-shares.ts';
import { layoutShares } from '../../../client/src/lib/match/forecast-shares-layout.ts';
import GroupGrid from '../../../client/src/lib/match/group-grid.svelte';
import { gridParts, gridSizes, placeGrid, type GridDrawing } from '../../../client/src/lib/match/kinship-file.ts';
import { inventedForecast } from './invented-forecast.ts';
import { inventedSet } from './invented-set.ts';

afterEach(cleanup);

/** What the keyboard's place says: the name of whatever has the focus. */
const said = (): string => {
  const at = document.activeElement;
  return at?.getAttribute('aria-label') ?? at?.querySelector('.unseen')?.textContent ?? '';
};
const press = (key: string): Promise<unknown> => fireEvent.keyDown(document.activeElement ?? document.body, { key });

const member = (code: string, sex: 'male' | 'female'): GroupMember =>
  ({ id: code, code, number: `${code}-1`, sex, keeper: 'Ines', meanKinship: 0.1, isPrivate: false }) as GroupMember;

describe('walking charts by the arrow keys', () => {
  it('stays inside a grid, and goes to the ends of a row', () => {
    expect(stepInGrid('stepRight', { row: 1, column: 2 }, 2, 3)).toEqual({ row: 1, column: 2 });
    expect(stepInGrid('stepUp', { row: 1, column: 2 }, 2, 3)).toEqual({ row: 0, column: 2 });
    expect(stepInGrid('toBeginning', { row: 1, column: 2 }, 2, 3)).toEqual({ row: 1, column: 0 });
    expect(stepInGrid('toEnd', { row: 0, column: 0 }, 2, 3)).toEqual({ row: 0, column: 2 });
    expect(stepInGrid(null, { row: 0, column: 0 }, 2, 3)).toBeNull();
  });

  it('says each generation of a forecast with all its courses', async () => {
    const { courses } = inventedForecast(2);
    render(ForecastDrawing, { layout: layoutForecast(courses, 856), courses, label: 'Invented' });
    const stops = screen.getAllByRole('img');
    expect(stops.map((stop) => stop.getAttribute('tabindex'))).toEqual(['0', '-1', '-1']);
    stops[0]?.focus();
    expect(said()).toMatch(/^breeders\. this plan: gene diversity 94\u202f%/);
    await press('ArrowDown');
    expect(said()).toMatch(
      /^generation 1\. this plan: gene diversity [\d.]+\u202f%, .*; F .*\. the pairings of today: .*\. mating at random: .*\.$/,
    );
    await press('ArrowDown');
    await press('ArrowDown');
    expect(said()).toMatch(/^generation 2\./);
    expect(document.activeElement?.getAttribute('tabindex')).toBe('0');
  });

  it('says founder shares generation by generation, and from one way of breeding to the next', async () => {
    const forecast = inventedForecast(2);
    const shares = forecastShares(forecast, 9);
    render(ForecastSharesDrawing, { layout: layoutShares(shares, 856), shares, label: 'Invented' });
    screen.getAllByRole('img')[0]?.focus();
    expect(said()).toMatch(/^this plan, breeders: /);
    await press('ArrowRight');
    await press('ArrowDown');
    expect(said()).toMatch(/^the pairings of today, generation 1: /);
  });

  it('says each year of a set with its inbreeding, diversity and origins', async () => {
    const data = yearsData(inventedSet({ seed: 4, sources: 3, from: 2010, to: 2018 }));
    render(YearsDrawing, {
      layout: layoutYears(data, 856),
      origins: data.origins,
      label: 'Invented; arrow keys move between years',
      lit: null,
    });
    const years = screen.getAllByRole('button');
    years.at(-1)?.focus();
    const last = said();
    expect(last).toMatch(/^\d{4}: .*hatched; .*F.*; gene diversity .*%/);
    await press('ArrowUp');
    expect(said()).not.toBe(last);
    expect(said()).toMatch(/^\d{4}: /);
  });

  it('says each pair of a group, and goes from cell to cell', async () => {
    const [males, females] = [
      [member('M1', 'male'), member('M2', 'male')],
      [member('F1', 'female'), member('F2', 'female')],
    ];
    const cells = males.map((male) =>
      females.map((female) => ({
        ...{ male, female, expected: 0.125, range: '', isBlind: false, isAbove: false, isPencilled: false },
        words: `${male.code} with ${female.code}: F 12.5 %`,
      })),
    );
    render(GroupGrid, {
      grid: { males, females, cells },
      figures: new Map<string, Figures>(),
      limit: 0.125,
      isPencilled: false,
    });
    expect(screen.getByRole('grid').getAttribute('aria-label')).toMatch(/every sire with every dam/);
    const pairs = screen.getAllByRole('gridcell');
    expect(pairs.map((cell) => cell.getAttribute('tabindex'))).toEqual(['0', '-1', '-1', '-1']);
    pairs[0]?.focus();
    expect(said()).toBe('M1 with F1: F 12.5 %');
    await press('ArrowDown');
    await press('ArrowRight');
    expect(said()).toBe('M2 with F2: F 12.5 %');
    for (const name of [/^SVG\b.*: F of/, /^PNG\b.*: F of/, 'Print'])
      expect(screen.getByRole('button', { name })).toBeTruthy();
  });
});

describe('a kinship grid as a drawing', () => {
  const head = (key: string) => ({ key, sex: 'male' as const, name: key, told: [], keeper: '', standings: [] });
  const figure = (expected: number | null, isBlind = false) => ({
    ...{ expected, isBlind, isOver: false, range: '', isPencilled: false },
  });
  const grid: GridDrawing = {
    rows: [head('a'), head('b')],
    columns: [head('c'), head('d'), head('e')],
    cells: [
      [figure(0.25), figure(null), figure(0, true)],
      [figure(0), figure(0.03), figure(0.0625)],
    ],
  };

  it('says in every cell what the table says', () => {
    expect(placeGrid(grid).figures.map(({ text }) => text)).toEqual([
      ...['25', 'itself', 'nothing known', '0', '3', '6.3'],
    ]);
  });

  it('goes on paper in parts of whole cells where it is wider than a sheet', () => {
    expect(gridParts(grid)).toBeNull();
    const heads = Array.from({ length: 23 }, (_, at) => head(String(at)));
    const large = { rows: heads, columns: heads, cells: heads.map(() => heads.map(() => figure(0))) };
    const parts = gridParts(large);
    const { left, top, cell, row } = gridSizes;
    for (const [side, begin, step] of [
      [parts?.columns ?? [], left, cell],
      [parts?.rows ?? [], top, row],
    ] as const) {
      expect(side.length).toBeGreaterThan(1);
      expect([side[0]?.from, side.at(-1)?.to]).toEqual([begin, begin + 23 * step + 1]);
      for (const { from } of side) expect((from - begin) % step).toBe(0);
    }
  });

  it('lays no cell over another, and holds all', () => {
    const { figures, width, height } = placeGrid(grid);
    expect(new Set(figures.map(({ x, y }) => `${x} ${y}`)).size).toBe(6);
    for (const { x, y } of figures) {
      expect(x).toBeLessThan(width);
      expect(y).toBeLessThan(height);
    }
  });
});
