import type { LineLayout } from './line-layout.ts';

/** The families that began in one year, for a page of the table. */
export interface YearPage {
  /** The year, or `undated`. */
  readonly key: string;
  /** Families in the order of time. */
  readonly families: readonly number[];
  readonly animals: number;
}

/** The pages of the table, in the order of time; families without any recorded date together at the end. */
export function yearPages({ families, firstYear, perYear }: LineLayout): YearPage[] {
  const pages = new Map<string, number[]>();
  const order = families.id.map((_, family) => family);
  order.sort(
    (one, other) =>
      (families.y[one] ?? 0) - (families.y[other] ?? 0) || (families.x[one] ?? 0) - (families.x[other] ?? 0),
  );
  for (const family of order) {
    const isRecorded = families.loose[family] === 0 || !Number.isNaN(families.from[family] ?? NaN);
    const year = Math.floor(firstYear + (families.y[family] ?? 0) / perYear + 1e-6);
    const key = isRecorded ? String(year) : 'undated';
    pages.set(key, [...(pages.get(key) ?? []), family]);
  }
  const size = (family: number): number => (families.start[family + 1] ?? 0) - (families.start[family] ?? 0);
  const all = [...pages].map(([key, list]) => ({
    key,
    families: list,
    animals: list.reduce((sum, family) => sum + size(family), 0),
  }));
  return [...all.filter(({ key }) => key !== 'undated'), ...all.filter(({ key }) => key === 'undated')];
}
