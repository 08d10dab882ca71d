import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLabel, widthOf, type LabelText } from '$lib/labels/label-fit.ts';
import {
  commonPapers,
  labelsOnPage,
  pageSize,
  pagesOf,
  paperProblems,
  placeOnPage,
  type LabelPaper,
} from '$lib/labels/label-paper.ts';

describe('labels on a sheet', () => {
  it.each(commonPapers)('of a common size fit on the paper, none on another: $name', ({ paper }) => {
    expect(paperProblems(paper)).toEqual({});
    const { width, height } = pageSize(paper);
    const places = Array.from({ length: labelsOnPage(paper) }, (_, place) => placeOnPage(paper, place));
    for (const { x, y } of places) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + paper.width).toBeLessThanOrEqual(width + 0.1);
      expect(y + paper.height).toBeLessThanOrEqual(height + 0.1);
    }
    for (const [at, one] of places.entries())
      for (const other of places.slice(at + 1))
        expect(
          one.x + paper.width <= other.x + 1e-9 ||
            one.y + paper.height <= other.y + 1e-9 ||
            other.x + paper.width <= one.x + 1e-9,
        ).toBe(true);
  });

  it('begin behind the labels that were used up, and go on to the next page', () => {
    const paper = commonPapers[0]?.paper as LabelPaper; // the list has entries
    const pages = pagesOf(
      paper,
      Array.from({ length: 30 }, (_, at) => at),
      20,
    );
    expect(pages.map((page) => page.length)).toEqual([4, 24, 2]);
    expect(pages[0]?.[0]).toEqual({ place: 20, label: 0 });
    expect(pages[2]?.[1]).toEqual({ place: 1, label: 29 });
    const roll = commonPapers.find(({ paper: { kind } }) => kind === 'single')?.paper as LabelPaper;
    expect(pagesOf(roll, [1, 2, 3], 2).map((page) => page.length)).toEqual([1, 1, 1]);
  });

  it('that do not fit are told with what they take and what there is', () => {
    const paper: LabelPaper = { ...(commonPapers[0]?.paper as LabelPaper), columns: 4 };
    expect(paperProblems(paper)).toEqual({ columns: 'They reach to 280 mm; the paper ends at 210 mm.' });
    expect(paperProblems({ ...paper, columns: 2.5 })).toEqual({ columns: 'Write a whole number from 1 to 12.' });
    expect(paperProblems({ ...paper, columns: 3, width: NaN }).width).toBe('Write a number from 15 to 210.');
  });
});

describe('what stands on a label', () => {
  const texts: LabelText[] = [
    { part: 'number', text: '10704-4' },
    { part: 'code', text: 'RV-61' },
    { part: 'line', text: 'Río Zancaval' },
    { part: 'hatched', text: 'hatched 2026-05-02' },
    { part: 'species', text: 'Epipedobates anthonyi' },
  ];

  it('all fits on a label of 70 × 37 mm, in print that can be read', () => {
    const fit = fitLabel({ width: 70, height: 37 }, 29, texts);
    expect(fit.leftOut).toEqual([]);
    expect(fit.texts.every(({ size }) => size > 2.5)).toBe(true);
    expect(fit.qrSquare).toBeGreaterThan(0.5);
  });

  it('is given up from the least important on, and the number never', () => {
    const fit = fitLabel({ width: 25, height: 10 }, 29, texts);
    expect(fit.leftOut).toEqual(['hatched', 'species']);
    expect(fit.texts[0]?.part).toBe('number');
    expect(fitLabel({ width: 15, height: 10 }, 29, texts).texts[0]?.part).toBe('number');
  });

  it('stays inside the label whatever its size and the length of names, as far as a letter has the width that is reckoned', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 150, noNaN: true }),
        fc.double({ min: 18, max: 100, noNaN: true }),
        fc.integer({ min: 1, max: 80 }),
        (width, height, letters) => {
          const long = texts.map((text) => (text.part === 'line' ? { ...text, text: 'n'.repeat(letters) } : text));
          const { padding, qrSide, textWidth, texts: shown, isUpright } = fitLabel({ width, height }, 29, long);
          const printed = shown.reduce((sum, { size, lines }) => sum + size * lines * 1.16, 0);
          const room = isUpright ? height - qrSide - 3 * padding : height - 2 * padding;
          expect(printed).toBeLessThanOrEqual(room + 1e-9);
          expect(isUpright ? textWidth : qrSide + textWidth + 3 * padding).toBeLessThanOrEqual(width + 1e-9);
          for (const { text, size, lines } of shown)
            expect(widthOf(text) * size).toBeLessThanOrEqual(lines * textWidth + 1e-9);
        },
      ),
    );
  });
});
