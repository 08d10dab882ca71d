import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LineOverTime } from '../../../../client/src/lib/api/types.ts';
import { decimalYear } from '../../../../client/src/lib/charts/ancestors/event-times.ts';
import { layoutLine, type LineLayout } from '../../../../client/src/lib/charts/line-time/line-layout.ts';
import { sizes } from '../../../../client/src/lib/charts/line-time/line-sizes.ts';
import { answerOfLine, inventedLine } from '../../../support/invented-line.ts';
import { shuffled } from './shuffled.ts';

const invented = (count: number, seed: number): LineOverTime => answerOfLine(inventedLine(count, seed), seed);

/** Lines of some size, with clutches whose dates are taken away or made as vague as a decade, or wrong by years. */
const lines = fc
  .record({
    count: fc.integer({ min: 1, max: 160 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
    spoilt: fc.array(fc.record({ clutch: fc.nat(200), how: fc.constantFrom('gone', 'vague', 'wrong') }), {
      maxLength: 30,
    }),
    isBare: fc.boolean(),
  })
  .map(({ count, seed, spoilt, isBare }) => {
    const line = invented(count, seed);
    const { clutches } = line;
    for (const { clutch, how } of spoilt) {
      if (clutch >= clutches.id.length) continue;
      const year = Number((clutches.earliest[clutch] ?? '2012').slice(0, 4));
      const set = (earliest: string | null, latest: string | null): void => {
        clutches.earliest[clutch] = earliest;
        clutches.latest[clutch] = latest;
      };
      if (how === 'gone') set(null, null);
      else if (how === 'vague') set(`${year - 4}-01-01`, `${year + 5}-12-31`);
      else set(`${year - 9}-05-05`, `${year - 9}-05-05`);
    }
    if (isBare) line.sources = line.sources.map((source) => ({ ...source, earliest: null, latest: null }));
    return line;
  });

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** What a family covers: ring or bracket, bar, and every symbol. */
function boxOf({ families, animals }: LineLayout, family: number): Box {
  const own = [...families.animals.subarray(families.start[family], families.start[family + 1])];
  const xs = own.map((animal) => animals.x[animal] ?? 0);
  const ys = own.map((animal) => animals.y[animal] ?? 0);
  const [x, y, half] = [families.x[family] ?? 0, families.y[family] ?? 0, (families.width[family] ?? 0) / 2];
  return {
    left: Math.min(x - half, ...xs.map((one) => one - sizes.symbol)),
    right: Math.max(x + half, ...xs.map((one) => one + sizes.symbol)),
    top: y - (families.kind[family] === 'clutch' ? sizes.ring : sizes.bracket - 3),
    bottom: Math.max(...ys) + sizes.symbol,
  };
}

/** Pairs of families that cover each other. */
function overlaps(layout: LineLayout): [number, number][] {
  const boxes = layout.families.id
    .map((_, family) => ({ family, ...boxOf(layout, family) }))
    .sort((one, other) => one.top - other.top);
  return boxes.flatMap((one, at) => {
    const found: [number, number][] = [];
    for (let next = at + 1; next < boxes.length; next++) {
      const other = boxes[next];
      if (!other || other.top >= one.bottom - 0.01) break;
      if (other.left < one.right - 0.01 && one.left < other.right - 0.01) found.push([one.family, other.family]);
    }
    return found;
  });
}

describe('the layout of a line over time', () => {
  it('lays no family over another, whatever is known of their dates', () => {
    fc.assert(
      fc.property(lines, (line) => {
        expect(overlaps(layoutLine(line))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('lays no family over another in a line of 3000 animals', () => {
    expect(overlaps(layoutLine(invented(3000, 5)))).toEqual([]);
  });

  it('hangs every clutch below all its possible parents', () => {
    fc.assert(
      fc.property(lines, (line) => {
        const { animals, families, links } = layoutLine(line);
        links.animal.forEach((parent, link) => {
          const ring = (families.y[links.family[link] ?? 0] ?? 0) - sizes.ring;
          expect(ring).toBeGreaterThan((animals.y[parent] ?? 0) + sizes.symbol);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('draws the same picture for any order of the answer', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: 1, max: 1000 }), (line, seed) => {
        const placed = (of: LineOverTime): Map<string, string> => {
          const { animals, families, width, height } = layoutLine(of);
          return new Map([
            ...of.animals.id.map((id, at): [string, string] => [id, `${animals.x[at]} ${animals.y[at]}`]),
            ...families.id.map((id, at): [string, string] => [`family ${id}`, `${families.x[at]} ${families.y[at]}`]),
            ['size', `${width} ${height}`],
          ]);
        };
        const [one, other] = [placed(line), placed(shuffled(line, seed))];
        expect([...other].sort()).toEqual([...one].sort());
      }),
      { numRuns: 30 },
    );
  });

  it('keeps clutches at their days, and says of all others that they are not', () => {
    const line = invented(900, 9);
    const { families, firstYear, perYear } = layoutLine(line);
    let firm = 0;
    families.id.forEach((_, family) => {
      if (families.kind[family] !== 'clutch') return;
      const place = families.place[family] ?? -1;
      const isDay =
        line.clutches.earliest[place] !== null && line.clutches.earliest[place] === line.clutches.latest[place];
      if (families.loose[family] === 1) return;
      firm++;
      expect(isDay).toBe(true);
      expect(firstYear + (families.y[family] ?? 0) / perYear).toBeCloseTo(
        decimalYear(line.clutches.earliest[place]) ?? 0,
        6,
      );
    });
    // four in a hundred have no date, six only a year
    expect(firm / line.clutches.id.length).toBeGreaterThan(0.8);
  });

  it('leaves a vague date within what it may mean while that lets parents stand above their young', () => {
    const line = invented(300, 4);
    const { families } = layoutLine(line);
    const vague = families.id.flatMap((_, family) =>
      families.loose[family] === 1 && !Number.isNaN(families.from[family] ?? NaN) ? [family] : [],
    );
    expect(vague.length).toBeGreaterThan(3);
    const inside = vague.filter(
      (family) =>
        (families.y[family] ?? 0) >= (families.from[family] ?? 0) - 1e-6 &&
        (families.y[family] ?? 0) <= (families.to[family] ?? 0) + 1e-6,
    );
    expect(inside.length / vague.length).toBeGreaterThan(0.9);
  });

  it('holds a line of nobody, of one animal and of three', () => {
    for (const count of [0, 1, 3]) {
      const line = invented(Math.max(1, count), 2);
      const few = count === 0 ? { ...line, animals: emptied(line.animals), parents: emptied(line.parents) } : line;
      const layout = layoutLine(few);
      expect(layout.animals.x).toHaveLength(few.animals.id.length);
      expect(Number.isFinite(layout.width) && Number.isFinite(layout.height)).toBe(true);
    }
  });

  it('puts the young of one clutch into rows where they are many', () => {
    const line = invented(40, 2);
    const many = line.animals.clutch.map((clutch) => (clutch >= 0 ? 0 : -1));
    const layout = layoutLine({ ...line, animals: { ...line.animals, clutch: many } });
    const at = layout.families.id.indexOf(line.clutches.id[0] ?? '');
    expect(layout.families.rows[at]).toBeGreaterThan(1);
    expect(overlaps(layout)).toEqual([]);
  });
});

function emptied<Columns extends object>(columns: Columns): Columns {
  return Object.fromEntries(Object.keys(columns).map((name) => [name, []])) as unknown as Columns;
}
