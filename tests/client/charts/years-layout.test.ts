import { describe, expect, it } from 'vitest';
import type { LineageSet } from '../../../client/src/lib/api/types.ts';
import { fractionAxis, rootAxis, type Axis } from '../../../client/src/lib/charts/years/axes.ts';
import { yearsData } from '../../../client/src/lib/charts/years/year-rows.ts';
import { layoutYears, trackOf } from '../../../client/src/lib/charts/years/years-layout.ts';
import { inventedSet, numbersFrom } from './invented-set.ts';

const sets = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) =>
  inventedSet({
    seed,
    sources: 1 + seed * 3,
    from: 2026 - seed * seed * 3,
    to: 2026,
    others: seed % 2 === 0 ? 0.1 : 0,
  }),
);
const widths = [288, 320, 500, 639, 640, 856, 1200];

/** The same set with years and origins in another order, shares along with their origins. */
function shuffled(set: LineageSet, seed: number): LineageSet {
  const next = numbersFrom(seed);
  const order = set.contributions.items.map((_, at) => ({ at, key: next() })).sort((a, b) => a.key - b.key);
  const years = set.years
    .map((year) => ({ key: next(), year: { ...year, shares: order.map(({ at }) => year.shares[at] ?? 0) } }))
    .sort((a, b) => a.key - b.key)
    .map(({ year }) => year);
  const items = order.flatMap(({ at }) => set.contributions.items[at] ?? []);
  return { ...set, years, contributions: { ...set.contributions, items } };
}

describe('the chart of the years', () => {
  it('gives the same picture whatever the order of the answer', () => {
    // as text: the axes are functions, whose ticks are compared
    const picture = (set: LineageSet) => JSON.stringify(layoutYears(yearsData(set), 856));
    for (const [at, set] of sets.entries()) expect(picture(shuffled(set, at + 50))).toBe(picture(set));
  });

  it('fills the track in every year with young, and each stream is as wide as its share', () => {
    for (const set of sets) {
      const data = yearsData(set);
      const layout = layoutYears(data, 856);
      const track = trackOf(layout.tracks, 'sources');
      data.rows.forEach((row, at) => {
        const steps = layout.streams.map((stream) => stream.steps[at]);
        expect(steps[0]?.left).toBeCloseTo(track.left, 6);
        expect(steps[steps.length - 1]?.right).toBeCloseTo(track.left + track.width, 6);
        steps.slice(1).forEach((step, place) => expect(step?.left).toBeCloseTo(steps[place]?.right ?? NaN, 9));
        data.origins.forEach((_, place) =>
          expect((steps[place]?.right ?? 0) - (steps[place]?.left ?? 0)).toBeCloseTo(
            (row.shares[place] ?? 0) * track.width,
            6,
          ),
        );
      });
    }
  });

  it('writes no name over another or out of its stream', () => {
    let written = 0;
    for (const set of sets)
      for (const width of widths) {
        const { names, streams } = layoutYears(yearsData(set), width);
        written += names.length;
        for (const [at, name] of names.entries()) {
          const step = streams.find((stream) => stream.number === name.number)?.steps.find(({ y }) => y === name.y);
          expect(name.x - name.halfWidth).toBeGreaterThanOrEqual((step?.left ?? NaN) - 1e-6);
          expect(name.x + name.halfWidth).toBeLessThanOrEqual((step?.right ?? NaN) + 1e-6);
          for (const other of names.slice(at + 1)) {
            const apart =
              Math.abs(other.y - name.y) >= 15 || Math.abs(other.x - name.x) >= other.halfWidth + name.halfWidth;
            expect(apart, `${name.text} and ${other.text} at ${width}`).toBe(true);
          }
        }
      }
    expect(written).toBeGreaterThan(100);
  });

  it('keeps its tracks apart and inside the frame at every width, in two panels on a phone', () => {
    for (const width of widths) {
      const { tracks, panels, width: full } = layoutYears(yearsData(sets[3] as LineageSet), width);
      expect(panels).toHaveLength(width < 640 ? 2 : 1);
      for (const track of tracks) {
        expect(track.width).toBeGreaterThan(30);
        expect(track.left + track.width).toBeLessThanOrEqual(full);
        for (const other of tracks)
          if (other !== track && other.panel === track.panel)
            expect(other.left >= track.left + track.width || track.left >= other.left + other.width).toBe(true);
      }
    }
  });

  it('has a rung for every year, also for those without young, and writes years with room between them', () => {
    for (const set of sets) {
      const { rungs, pitch } = layoutYears(yearsData(set), 856);
      const first = set.years[0]?.year ?? 0;
      expect(rungs.map((rung) => rung.year)).toEqual(rungs.map((_, at) => first + at));
      expect(rungs[rungs.length - 1]?.year).toBe(2026);
      const written = rungs.filter((rung) => rung.isWritten);
      written.slice(1).forEach((rung, at) => expect(rung.y - (written[at]?.y ?? 0)).toBeGreaterThanOrEqual(15));
      expect(pitch).toBeGreaterThanOrEqual(5);
    }
  });

  it('draws nothing for a set without years, and does not fall over', () => {
    const empty = layoutYears(yearsData({ ...(sets[0] as LineageSet), years: [] }), 856);
    expect(empty.rungs).toEqual([]);
    expect(empty.streams.flatMap((stream) => stream.paths)).toEqual([]);
  });
});

describe('the axes', () => {
  const expectLegible = ({ ticks }: Axis): void => {
    const texts = ticks.filter((tick) => tick.text !== '');
    texts.slice(1).forEach((tick, at) => {
      const before = texts[at];
      if (!before) return;
      expect(tick.x - before.x).toBeGreaterThanOrEqual(((tick.text.length + before.text.length) * 6.4) / 2);
    });
  };

  it('F stands at its square root, with 1/4 at the end and 1/16 in the middle', () => {
    const axis = rootAxis(100, 200, 0.2);
    expect([0, 1 / 64, 1 / 16, 1 / 4].map((value) => axis.x(value))).toEqual([100, 150, 200, 300]);
    expect(axis.ticks).toHaveLength(6);
    expectLegible(axis);
  });

  it('reaches further where an animal is more inbred than 1/4', () => {
    expect(rootAxis(0, 100, 0.375).ticks.map((tick) => tick.text)).toContain('1/2');
    expect(rootAxis(0, 100, 0.8).x(1)).toBe(100);
  });

  it('texts never touch, however narrow', () => {
    for (const width of [60, 90, 150, 240]) {
      for (const greatest of [0.1, 0.4, 0.9]) expectLegible(rootAxis(0, width, greatest));
      for (const least of [0.02, 0.5, 0.72, 0.95, 1]) expectLegible(fractionAxis(0, width, least));
    }
  });

  it('the axis of gene diversity holds the least value and ends at 100', () => {
    for (const least of [0.03, 0.5, 0.61, 0.93, 0.999]) {
      const axis = fractionAxis(10, 100, least);
      expect(axis.x(least)).toBeGreaterThanOrEqual(10);
      expect(axis.x(1)).toBeCloseTo(110, 9);
      expect(axis.ticks[axis.ticks.length - 1]?.text).toBe('100');
    }
  });
});
