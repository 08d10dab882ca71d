import { written } from '../ui/figures.ts';
/** Labels on a sheet of paper, or each on a piece of its own (a roll). All lengths in millimetres. */
export interface LabelPaper {
  readonly kind: PaperKind;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** From the edge of the paper to the first label. */
  readonly left: number;
  readonly top: number;
  /** Between labels. */
  readonly across: number;
  readonly down: number;
}

export type PaperKind = 'a4' | 'letter' | 'single';

export const paperSizes: Readonly<Record<Exclude<PaperKind, 'single'>, { width: number; height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

const alone = { kind: 'single', columns: 1, rows: 1, left: 0, top: 0, across: 0, down: 0 } as const;

/** Sizes that label stock is sold in (common practice, no source): each is named by its size, and all can be changed. */
export const commonPapers: readonly { readonly name: string; readonly paper: LabelPaper }[] = [
  {
    name: 'A4, 24 labels of 70 × 37 mm',
    paper: { kind: 'a4', width: 70, height: 37, columns: 3, rows: 8, left: 0, top: 0.5, across: 0, down: 0 },
  },
  {
    name: 'A4, 21 labels of 63.5 × 38.1 mm',
    paper: { kind: 'a4', width: 63.5, height: 38.1, columns: 3, rows: 7, left: 7.2, top: 15.1, across: 2.5, down: 0 },
  },
  {
    name: 'A4, 65 labels of 38.1 × 21.2 mm',
    paper: { kind: 'a4', width: 38.1, height: 21.2, columns: 5, rows: 13, left: 4.7, top: 10.7, across: 2.5, down: 0 },
  },
  {
    name: 'Letter, 30 labels of 66.7 × 25.4 mm',
    paper: {
      kind: 'letter',
      width: 66.7,
      height: 25.4,
      columns: 3,
      rows: 10,
      left: 4.8,
      top: 12.7,
      across: 3,
      down: 0,
    },
  },
  { name: 'roll, labels of 62 × 29 mm', paper: { ...alone, width: 62, height: 29 } },
  { name: 'roll, labels of 57 × 32 mm', paper: { ...alone, width: 57, height: 32 } },
  { name: 'roll, labels of 40 × 30 mm', paper: { ...alone, width: 40, height: 30 } },
];

/** Size of what goes through the printer. */
export function pageSize(paper: LabelPaper): { width: number; height: number } {
  return paper.kind === 'single' ? { width: paper.width, height: paper.height } : paperSizes[paper.kind];
}

/** Labels that one piece of paper carries. */
export function labelsOnPage({ kind, columns, rows }: LabelPaper): number {
  return kind === 'single' ? 1 : columns * rows;
}

/** Where the label stands that is put at a place of the paper, counted from 0 along the rows. */
export function placeOnPage(paper: LabelPaper, place: number): { x: number; y: number } {
  if (paper.kind === 'single') return { x: 0, y: 0 };
  const column = place % paper.columns;
  const row = Math.floor(place / paper.columns);
  return {
    x: paper.left + column * (paper.width + paper.across),
    y: paper.top + row * (paper.height + paper.down),
  };
}

/**
 * Shares labels out over pages.
 *
 * @param used places of the first page that are empty already, from the first on
 */
export function pagesOf<T>(paper: LabelPaper, labels: readonly T[], used: number): { place: number; label: T }[][] {
  const most = labelsOnPage(paper);
  const pages: { place: number; label: T }[][] = [];
  labels.forEach((label, at) => {
    const place = paper.kind === 'single' ? at : at + used;
    (pages[Math.floor(place / most)] ??= []).push({ place: place % most, label });
  });
  return pages;
}

export type PaperField = Exclude<keyof LabelPaper, 'kind'>;

/** What a measure may be. */
export const paperLimits: Readonly<Record<PaperField, { least: number; most: number; words: string }>> = {
  width: { least: 15, most: 210, words: 'label width' },
  height: { least: 10, most: 297, words: 'label height' },
  columns: { least: 1, most: 12, words: 'labels across' },
  rows: { least: 1, most: 40, words: 'labels down' },
  left: { least: 0, most: 100, words: 'left edge' },
  top: { least: 0, most: 100, words: 'top edge' },
  across: { least: 0, most: 50, words: 'gap across' },
  down: { least: 0, most: 50, words: 'gap down' },
};

/** What is wrong with measures, by field; nothing where the labels fit on the paper. */
export function paperProblems(paper: LabelPaper): Partial<Record<PaperField, string>> {
  const problems: Partial<Record<PaperField, string>> = {};
  for (const [field, { least, most }] of Object.entries(paperLimits) as [
    PaperField,
    (typeof paperLimits)[PaperField],
  ][]) {
    const value = paper[field];
    const isWhole = field !== 'columns' && field !== 'rows' ? true : Number.isInteger(value);
    if (!Number.isFinite(value) || value < least || value > most || !isWhole)
      problems[field] = isWhole
        ? `Write a number from ${least} to ${most}.`
        : `Write a whole number from ${least} to ${most}.`;
  }
  if (paper.kind === 'single' || Object.keys(problems).length > 0) return problems;
  const { width, height } = paperSizes[paper.kind];
  const right = paper.left + paper.columns * paper.width + (paper.columns - 1) * paper.across;
  const bottom = paper.top + paper.rows * paper.height + (paper.rows - 1) * paper.down;
  // a tenth of a millimetre is less than any printer keeps
  if (right > width + 0.1)
    problems.columns = `They reach to ${inMillimetres(right)}; the paper ends at ${inMillimetres(width)}.`;
  if (bottom > height + 0.1)
    problems.rows = `They reach to ${inMillimetres(bottom)}; the paper ends at ${inMillimetres(height)}.`;
  return problems;
}

const inMillimetres = (length: number): string => `${written(String(Math.round(length * 10) / 10))} mm`;
