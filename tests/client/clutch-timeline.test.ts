import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysFrom } from '../../client/src/lib/today/days.ts';
import type { TimedClutch } from '../../client/src/lib/housing/timeline/clutch-stations.ts';
import { stationsOf } from '../../client/src/lib/housing/timeline/clutch-stations.ts';
import { layoutTimeline, type TimelineLayout } from '../../client/src/lib/housing/timeline/timeline-layout.ts';
import { rulerTicks } from '../../client/src/lib/housing/timeline/ruler-ticks.ts';

const clutchOf = (values: Partial<TimedClutch>): TimedClutch => ({
  laid: null,
  hatchedOn: null,
  eggs: null,
  hatched: null,
  outOfWater: null,
  losses: [],
  stage: 'egg',
  expected: null,
  young: [],
  ...values,
});

const youngOf = (outOfWater: string | null, hatched: string | null = null, status: 'alive' | 'died' = 'alive') =>
  ({ sex: 'unsexed', status, hatched, outOfWater }) as const;

function drawn(clutch: TimedClutch, on = '2024-12-01', width = 440): TimelineLayout {
  const layout = layoutTimeline(clutch, on, width);
  if (!layout) throw new Error('nothing was drawn');
  return layout;
}

const placeOf = (layout: TimelineLayout, kind: string): number =>
  layout.stations.find((station) => station.kind === kind)?.y ?? NaN;

const ended = (layout: TimelineLayout, end: string): number => layout.threads.filter((one) => one.end === end).length;

/** Nine eggs, of which one did not hatch; of eight tadpoles one was lost, the young left the water on two days. */
const whole = clutchOf({
  laid: '2024-05-26',
  hatchedOn: '2024-06-06',
  eggs: 9,
  hatched: 8,
  outOfWater: 7,
  losses: [
    { cause: 'mould', count: 1 },
    { cause: 'eaten', count: 1 },
  ],
  stage: 'out',
  young: [youngOf('2024-09-03'), youngOf('2024-09-09', null, 'died')],
});

describe('the timeline of a clutch', () => {
  it('tells laying, hatching and leaving the water at their days, each with its count and the days since the one before', () => {
    expect(stationsOf(whole).map(({ what, when, after }) => [what, when, after])).toEqual([
      ['9 eggs laid', '26 May 2024', ''],
      ['8 hatched', '6 June 2024', 'after 11 days'],
      ['7 out of the water', '3–9 September 2024', 'after 89 to 95 days'],
    ]);
  });

  it('stands to the scale of its ruler', () => {
    const layout = drawn(whole);
    const perDay = (layout.rulerBottom - layout.rulerTop) / daysFrom('2024-05-26', '2024-09-09');
    expect(placeOf(layout, 'laid')).toBeCloseTo(layout.rulerTop);
    expect(placeOf(layout, 'hatched')).toBeCloseTo(layout.rulerTop + 11 * perDay);
    expect(placeOf(layout, 'out')).toBeCloseTo(layout.rulerTop + 103 * perDay);
    const july = layout.ticks.find(({ text }) => text === 'Jul');
    expect(july?.y).toBeCloseTo(layout.rulerTop + daysFrom('2024-05-26', '2024-07-01') * perDay);
  });

  it('has a thread for each egg: seven end in a froglet, one at the hatching, one in the water', () => {
    const layout = drawn(whole);
    expect(layout.threads).toHaveLength(9);
    expect([ended(layout, 'out'), ended(layout, 'lost'), ended(layout, 'goes-on')]).toEqual([7, 2, 0]);
    const ends = layout.threads.filter(({ end }) => end === 'lost').map(({ points }) => points.at(-1)?.y);
    expect(ends.sort((a = 0, b = 0) => a - b)).toEqual([placeOf(layout, 'hatched'), placeOf(layout, 'out')]);
    expect(layout.threads.slice(0, 3).map(({ animal }) => animal?.isAlive)).toEqual([true, false, undefined]);
    expect(layout.now).toBeNull();
  });

  it('takes the day of hatching from the young where the clutch does not say, and guesses none', () => {
    const young = [youngOf(null, '2024-06-07'), youngOf(null, '2024-06-07')];
    const [, hatched] = stationsOf({ ...whole, hatchedOn: null, outOfWater: 2, young });
    expect([hatched?.when, hatched?.after]).toEqual(['7 June 2024', 'after 12 days']);
    const unsaid = stationsOf({ ...whole, hatchedOn: null, young: [] });
    expect(unsaid.map(({ when }) => when)).toEqual(['26 May 2024', 'day not noted', 'day not noted']);
    const layout = drawn({ ...whole, hatchedOn: null, young: [] });
    expect(placeOf(layout, 'hatched')).toBeGreaterThan(layout.rulerBottom);
    expect(layout.threads[0]?.points.map(({ isDated }) => isDated)).toEqual([true, false, false]);
  });

  it('shows the window that is expected and how far today is in it', () => {
    const expected = {
      event: 'hatching' as const,
      since: '2024-11-20',
      from: '2024-12-02',
      to: '2024-12-06',
      countedFrom: 'laying' as const,
      speciesId: 'x',
      species: 'Ranitomeya imitator',
    };
    const clutch = clutchOf({ laid: '2024-11-20', eggs: 4, expected });
    const layout = drawn(clutch, '2024-12-01');
    const perDay = (layout.rulerBottom - layout.rulerTop) / 16;
    expect(layout.window?.top).toBeCloseTo(layout.rulerTop + 12 * perDay);
    expect(layout.window?.bottom).toBeCloseTo(layout.rulerTop + 17 * perDay);
    expect(layout.now).toBeCloseTo(layout.rulerTop + 11 * perDay);
    expect(ended(layout, 'goes-on')).toBe(4);
    expect(layout.labels.map(({ lines }) => lines)).toEqual([
      ['4 eggs laid', '20 November 2024'],
      ['Today'],
      ['Expected to hatch', '2–6 December 2024'],
    ]);
    const late = drawn(clutch, '2026-12-01');
    expect(late.now).toBeGreaterThan(late.rulerBottom);
    expect(late.labels.at(-1)?.lines).toEqual(['Today', '725 days late']);
  });

  it('ends each froglet whose day is known at that day', () => {
    const layout = drawn(whole);
    const [first, second, third] = layout.threads.map(({ points }) => points.at(-1)?.y ?? NaN);
    expect(second).toBeCloseTo(layout.rulerBottom);
    const perDay = (layout.rulerBottom - layout.rulerTop) / daysFrom('2024-05-26', '2024-09-09');
    expect(first).toBeCloseTo(layout.rulerBottom - 6 * perDay);
    expect(third).toBe(placeOf(layout, 'out'));
  });

  it('gives words that take several lines beside a narrow drawing the room of several', () => {
    const [wide, narrow] = [440, 288].map((width) => drawn(whole, '2024-12-01', width).labels.at(-1));
    // "24 October–27 November 2024" and the like take two lines where there is room for some fifteen letters
    expect((narrow?.bottom ?? 0) - (narrow?.top ?? 0)).toBeGreaterThan((wide?.bottom ?? 0) - (wide?.top ?? 0));
  });

  it('keeps those in the water apart from those that were lost there', () => {
    const layout = drawn({ ...whole, stage: 'water', outOfWater: 3, hatched: 8, young: [] });
    // of eight, three are out, one was eaten, four are left
    expect([ended(layout, 'out'), ended(layout, 'lost'), ended(layout, 'goes-on')]).toEqual([3, 2, 4]);
  });

  it('says that nothing came of it', () => {
    const layout = drawn(clutchOf({ laid: '2024-05-26', eggs: 3, hatched: 0, stage: 'ended' }));
    expect(layout.labels.map(({ lines }) => lines[0])).toEqual(['3 eggs laid', 'Nothing came of it']);
    expect(ended(layout, 'lost')).toBe(3);
  });

  it('draws nothing where no day is known', () => {
    expect(layoutTimeline(clutchOf({ eggs: 5 }), '2024-12-01', 440)).toBeNull();
  });

  it('writes months in a long life, Mondays in a short one', () => {
    expect(rulerTicks('2024-11-20', 21, 250).map(({ text }) => text)).toEqual(['25 Nov', '2 Dec', '9 Dec']);
    expect(rulerTicks('2024-11-20', 120, 250).map(({ text }) => text)).toEqual(['Dec', '2025', 'Feb', 'Mar']);
    expect(rulerTicks('1994-01-01', 3650, 250).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['1994', '2000']) as string[],
    );
  });

  it('of any clutch keeps order, no words upon others, threads within their room, and every egg', () => {
    const days = fc
      .integer({ min: 0, max: 900 })
      .map((day) => new Date(Date.UTC(2022, 0, 1) + day * 86_400_000).toISOString().slice(0, 10));
    const date = fc.option(
      fc.oneof(
        days,
        days.map((day) => day.slice(0, 7)),
        days.map((day) => `${day.slice(0, 4)}~`),
        days.map((day) => `${day}/..`),
      ),
      { nil: null },
    );
    const count = fc.option(fc.integer({ min: 0, max: 120 }), { nil: null });
    const story = fc.record({
      laid: date,
      hatchedOn: date,
      eggs: count,
      hatched: count,
      outOfWater: count,
      stage: fc.constantFrom('egg' as const, 'water' as const, 'out' as const, 'ended' as const),
      young: fc.array(
        fc.tuple(date, date).map(([out, hatched]) => youngOf(out, hatched)),
        { maxLength: 12 },
      ),
    });
    fc.assert(
      fc.property(story, fc.integer({ min: 240, max: 700 }), (values, width) => {
        const layout = layoutTimeline(clutchOf(values), '2024-12-01', width);
        if (!layout) return;
        const places = layout.stations.map(({ y }) => y);
        expect(places).toEqual([...places].sort((a, b) => a - b));
        for (const [at, label] of layout.labels.entries()) {
          const below = layout.labels[at + 1];
          if (below) expect(label.bottom).toBeLessThanOrEqual(below.top + 1e-9);
          expect(label.top).toBeGreaterThanOrEqual(0);
          expect(label.bottom).toBeLessThanOrEqual(layout.height);
        }
        for (const { x, points } of layout.threads) {
          expect(x).toBeLessThan(layout.wordsLeft);
          for (const { y } of points) {
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(layout.height);
          }
          expect(points.map(({ y }) => y)).toEqual(points.map(({ y }) => y).sort((a, b) => a - b));
        }
        const { eggs, hatched, outOfWater, young } = values;
        const eggsDrawn = layout.threads.length * layout.perThread;
        expect(eggsDrawn).toBeGreaterThanOrEqual(Math.max(eggs ?? 0, hatched ?? 0, outOfWater ?? 0, young.length, 1));
      }),
      { numRuns: 600 },
    );
  });
});
