import { describe, expect, it } from 'vitest';
import type { ChartKey } from '../../../../client/src/lib/keys/actions/chart.ts';
import { barParts, inbreedingStep } from '../../../../client/src/lib/charts/line-time/bar-parts.ts';
import { keyOf } from '../../../../client/src/lib/charts/line-time/line-key.ts';
import { ANCESTOR, DESCENDANT, LineKin, PICKED } from '../../../../client/src/lib/charts/line-time/line-kin.ts';
import { layoutLine } from '../../../../client/src/lib/charts/line-time/line-layout.ts';
import { lineParts } from '../../../../client/src/lib/charts/line-time/line-boxes.ts';
import { sizes } from '../../../../client/src/lib/charts/line-time/line-sizes.ts';
import { drawingSize, lineSvg, room } from '../../../../client/src/lib/charts/line-time/line-svg.ts';
import { sheetHeight, sheetWidth } from '../../../../client/src/lib/charts/paper-size.ts';
import { firstOf, stepFrom } from '../../../../client/src/lib/charts/line-time/line-walk.ts';
import { usualWish, wishAddress, wishOf } from '../../../../client/src/lib/charts/line-time/line-wish.ts';
import { animalInWords, lineInWords, litInWords } from '../../../../client/src/lib/charts/line-time/line-words.ts';
import {
  animalAt,
  keptView,
  viewOf,
  wholeView,
  zoomed,
} from '../../../../client/src/lib/charts/line-time/line-views.ts';
import { yearPages } from '../../../../client/src/lib/charts/line-time/line-years.ts';
import { answerOfLine, inventedLine } from '../../../support/invented-line.ts';

const line = answerOfLine(inventedLine(260, 3), 3);
const layout = layoutLine(line);
const kin = new LineKin(layout);
const told = { line, layout, kin };
const frame = { width: 900, height: 600 };

/** All ancestors of an animal, read straight off the answer. */
function ancestorsOf(animal: number): Set<number> {
  const found = new Set<number>();
  const waiting = [animal];
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop())
    line.parents.clutch.forEach((clutch, link) => {
      const parent = line.parents.animal[link] ?? -1;
      if (clutch !== line.animals.clutch[one] || found.has(parent)) return;
      found.add(parent);
      waiting.push(parent);
    });
  return found;
}

describe('the kin of a picked animal', () => {
  it('are lit: all ancestors, all descendants, and nobody else', () => {
    for (const animal of [30, 120, 259]) {
      const { marks, ancestors, descendants } = kin.litAround(animal, 'both');
      const above = ancestorsOf(animal);
      expect(ancestors).toBe(above.size);
      marks.forEach((mark, other) => {
        const expected =
          other === animal ? PICKED : above.has(other) ? ANCESTOR : ancestorsOf(other).has(animal) ? DESCENDANT : 0;
        expect([other, mark]).toEqual([other, expected]);
      });
      expect(descendants).toBe(marks.filter((mark) => mark === DESCENDANT).length);
    }
  });

  it('are lit on one side where that is asked', () => {
    expect(kin.litAround(120, 'ancestors').descendants).toBe(0);
    expect(kin.litAround(120, 'young').ancestors).toBe(0);
    expect(litInWords(kin.litAround(259, 'ancestors'), 'ancestors')).toMatch(/^\d+ ancestors lit$/);
  });

  it('hang together by the streams that are lit', () => {
    const lit = kin.litAround(120, 'both');
    layout.links.animal.forEach((parent, link) => {
      const [above, members] = [lit.marks[parent], [...kin.membersOf(layout.links.family[link] ?? -1)]];
      const below = members.map((one) => lit.marks[one]);
      const leads =
        (above === ANCESTOR && below.some((mark) => mark === ANCESTOR || mark === PICKED)) ||
        ((above === DESCENDANT || above === PICKED) && below.includes(DESCENDANT));
      expect(kin.isLitLink(link, lit)).toBe(leads);
    });
  });
});

describe('walking a line by the arrow keys', () => {
  const step = (animal: number, key: ChartKey, came: number | null = null) => stepFrom(layout, kin, animal, key, came);

  it('goes up to the likeliest parent and down to where one came from', () => {
    const young = 200;
    const parent = step(young, 'stepUp') ?? -1;
    const likeliest = Math.max(...kin.parentsOf(young).map(({ probability }) => probability));
    expect(kin.parentsOf(young)[0]).toEqual({ animal: parent, probability: likeliest });
    expect(step(parent, 'stepDown', young)).toBe(young);
    const first = kin.membersOf(kin.familiesBelow(parent)[0] ?? -1)[0];
    expect(step(parent, 'stepDown')).toBe(first);
  });

  it('goes aside from sibling to sibling, then to the family beside', () => {
    const family = layout.families.id.findIndex((_, at) => kin.membersOf(at).length > 2);
    const members = [...kin.membersOf(family)];
    for (let at = 1; at < members.length; at++) {
      expect(step(members[at - 1] ?? -1, 'stepRight')).toBe(members[at]);
      expect(step(members[at] ?? -1, 'stepLeft')).toBe(members[at - 1]);
    }
    const beyond = step(members.at(-1) ?? -1, 'stepRight');
    const middleOf = (animal: number): number => layout.families.x[layout.animals.family[animal] ?? -1] ?? 0;
    if (beyond !== null) expect(middleOf(beyond)).toBeGreaterThan(layout.families.x[family] ?? 0);
  });

  it('begins at the earliest animal, above which there is nobody', () => {
    const first = firstOf(layout) ?? -1;
    expect(Math.min(...layout.families.y)).toBe(layout.families.y[layout.animals.family[first] ?? -1]);
    expect(step(first, 'stepUp')).toBeNull();
    expect(step(first, 'drawYoung')).toBeNull();
  });
});

describe('what bars show', () => {
  it('adds up to one for every family of the line, in each kind', () => {
    for (const kind of ['standing', 'inbreeding', 'keeper'] as const) {
      const { start, share, fill, fills } = barParts(line, layout, kind);
      layout.families.id.forEach((_, family) => {
        const parts = [...share.subarray(start[family], start[family + 1])];
        expect(parts.reduce((one, other) => one + other, 0)).toBeCloseTo(1, 9);
      });
      expect(Math.max(...fill)).toBeLessThan(fills.length);
    }
  });

  it('puts inbreeding on steps that keepers know', () => {
    expect([null, 0, 1 / 64, 1 / 32, 1 / 16, 0.1, 1 / 8, 1 / 4, 0.3].map(inbreedingStep)).toEqual([
      ...[0, 1, 2, 3, 3, 4, 4, 5, 6],
    ]);
    expect(keyOf(line, barParts(line, layout, 'inbreeding')).map(({ text }) => text)).toEqual([
      ...['F not known', 'F 0', 'to 1.6\u202f%', 'to 6.3\u202f%', 'to 12.5\u202f%', 'to 25\u202f%', 'above 25\u202f%'],
    ]);
  });

  it('names the keepers with the most animals first', () => {
    const count = (name: string): number =>
      line.animals.keeper.filter((keeper) => line.keepers[keeper]?.name === name).length;
    const names = keyOf(line, barParts(line, layout, 'keeper')).map(({ text }) => text);
    expect(names).toHaveLength(6);
    expect(names.map(count)).toEqual(names.map(count).sort((one, other) => other - one));
  });
});

describe('the view of a line', () => {
  it('shows all of it, and comes no further away', () => {
    const whole = wholeView(layout, frame);
    expect(layout.width * whole.k + whole.x).toBeLessThanOrEqual(frame.width);
    expect(layout.height * whole.k + whole.y).toBeLessThanOrEqual(frame.height);
    expect(zoomed(layout, frame, whole, 0.2, 300, 300)).toEqual(whole);
  });

  it('keeps the point under the pointer while it comes closer', () => {
    const from = zoomed(layout, frame, wholeView(layout, frame), 3, 450, 300);
    const to = zoomed(layout, frame, from, 1.3, 500, 280);
    expect((500 - to.x) / to.k).toBeCloseTo((500 - from.x) / from.k, 6);
    expect((280 - to.y) / to.k).toBeCloseTo((280 - from.y) / from.k, 6);
  });

  it('cannot lose the line out of sight', () => {
    const far = keptView(layout, frame, { k: 3, x: 1e6, y: -1e6 });
    expect(far.x).toBeLessThan(frame.width);
    expect(far.y + layout.height * far.k).toBeGreaterThan(0);
  });

  it('finds the animal that it looks at under the middle of the frame', () => {
    const animal = 130;
    const view = viewOf(layout, frame, wholeView(layout, frame), animal);
    const [x, y] = [
      (layout.animals.x[animal] ?? 0) * view.k + view.x,
      (layout.animals.y[animal] ?? 0) * view.k + view.y,
    ];
    expect(animalAt(layout, view, x + 2, y - 2, 10)).toBe(animal);
    expect(animalAt(layout, view, -500, -500, 10)).toBeNull();
  });
});

describe('a line in words', () => {
  it('says all of an animal in one line', () => {
    const words = animalInWords(told, 200);
    expect(words).toMatch(/^OT-0201, 1201-0, (male|female|not sexed), (alive|dead|gone|of unknown fate); /);
    expect(words).toMatch(/; parents OT-\d{4}.*; F [\d.]+\u202f%; /);
    expect(animalInWords(told, 0)).toMatch(/; no known parent; F 0\u202f%; \d+ young of \d+ clutch(es)?$/);
  });

  it('tells nothing of a private animal but its place', () => {
    const animals = { ...line.animals, number: line.animals.number.map((number, at) => (at === 200 ? null : number)) };
    const words = animalInWords({ ...told, line: { ...line, animals } }, 200);
    expect(words).toMatch(/^a private animal; parents /);
    expect(words).not.toContain('OT-0201');
  });

  it('says how large it is and how long it took', () => {
    expect(lineInWords(told)).toMatch(/^260 animals in \d+ clutches, 2004 to 202\d; \d+ alive$/);
  });

  it('turns over its table year by year, with every animal on one page', () => {
    const pages = yearPages(layout);
    expect(pages.reduce((sum, { animals }) => sum + animals, 0)).toBe(260);
    const years = pages.map(({ key }) => key).filter((key) => key !== 'undated');
    expect(years).toEqual([...years].sort());
    expect(pages.at(-1)?.key).toBe('undated');
  });
});

describe('a line as a file', () => {
  const colours = new Map<string, string>();
  const drawing = (lit: number | null) => ({
    ...told,
    title: 'Quebrada <Seca> & more',
    bars: barParts(line, layout, 'standing'),
    palette: (token: string) => {
      colours.set(token, `#${token}`);
      return `#${token}`;
    },
    fonts: { sans: '"A b", sans-serif', serif: 'serif' },
    lit: lit === null ? null : kin.litAround(lit, 'both'),
    out: new Uint8Array(260),
  });

  it('is one well-formed drawing with its patterns, its key and a name', () => {
    const parsed = new DOMParser().parseFromString(lineSvg(drawing(null)), 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).toBeNull();
    expect(parsed.querySelector('title')?.textContent).toBe('Quebrada <Seca> & more');
    expect([...parsed.querySelectorAll('pattern')].map(({ id }) => id)).toContain('t-stated');
    const texts = [...parsed.querySelectorAll('text')].map(({ textContent }) => textContent);
    for (const text of ['documented', 'unknown', '2010', '2020']) expect(texts).toContain(text);
    // symbols go together into paths: a file of thousands stays small
    expect(parsed.querySelectorAll('*').length).toBeLessThan(160);
  });

  it('is cut into sheets of paper that hold all of it, each family whole on one of them', () => {
    const large = answerOfLine(inventedLine(1500, 3), 3);
    const layout = layoutLine(large);
    const inPage = {
      ...drawing(null),
      ...{ line: large, layout, kin: new LineKin(layout), bars: barParts(large, layout, 'standing') },
      isInPage: true,
    };
    const { width, height } = drawingSize(inPage);
    const { columns, rows } = lineParts(inPage);
    expect(columns.length * rows.length).toBeGreaterThan(3);
    for (const [parts, least, most, end] of [
      [columns, room.left, sheetWidth - room.left, width],
      [rows, 0, sheetHeight, height],
    ] as const) {
      expect([parts[0]?.from, parts.at(-1)?.to]).toEqual([least, end]);
      for (const [at, { from, to }] of parts.entries()) {
        expect(to - from).toBeLessThanOrEqual(most);
        expect(from).toBeLessThanOrEqual(parts[at - 1]?.to ?? from);
      }
    }
    const { families } = layout;
    const cut = families.id.filter((_, family) => {
      const half = (families.width[family] ?? 0) / 2;
      const [x, y] = [room.left + (families.x[family] ?? 0), families.y[family] ?? 0];
      return !(
        columns.some(({ from, to }) => from <= x - half && x + half <= to) &&
        rows.some(({ from, to }) => from <= y && y + sizes.toYoung + (families.rows[family] ?? 1) * sizes.row <= to)
      );
    });
    expect(cut).toEqual([]);
  });

  it('marks lit kin in red, and only those', () => {
    expect(lineSvg(drawing(null))).not.toContain('"#pen"');
    expect(lineSvg(drawing(120))).toContain('"#pen"');
  });
});

describe('the address of a line over time', () => {
  it('says what differs from the usual, and nothing else', () => {
    expect(wishAddress(usualWish)).toBe('');
    const wish = { ...usualWish, animal: '1201-0', bars: 'keeper', living: true, table: true, year: '2019' } as const;
    expect(wishAddress(wish)).toBe('?animal=1201-0&bars=keeper&living=yes&table=yes&year=2019');
    expect(wishOf(new URLSearchParams(wishAddress(wish)))).toEqual(wish);
  });

  it('takes what it does not know as usual', () => {
    expect(wishOf(new URLSearchParams('bars=weight&lit=none&hatchedFrom=soon&living=maybe'))).toEqual(usualWish);
  });
});
