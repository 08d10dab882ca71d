import { standings, type Standing } from '$shared/vocabulary.ts';
import type { HatchYear, LineageSet } from '../../api/types.ts';
import { originName } from '../../records/source-parts.ts';

/** A source, founder or unknown parent of a set, as the chart and its key number it. */
export interface NumberedOrigin {
  /** 1, 2, …: by standing, then by share, then by name. */
  number: number;
  key: string;
  name: string;
  href: string | null;
  standing: Standing;
  /** Its share of the whole set, 0 to 1. */
  share: number;
}

/** One year with the shares of the origins in the order of their numbers. */
export interface YearRow extends HatchYear {
  /** Shares that no numbered origin has. */
  othersShare: number;
}

/** What the chart of the years draws. */
export interface YearsData {
  origins: NumberedOrigin[];
  /** Every year in which an animal of the set hatched, in order. */
  rows: YearRow[];
}

/** Orders the answer's origins and years, whatever order they came in, so that the same set always gives the same picture. */
export function yearsData(set: Pick<LineageSet, 'contributions' | 'years'>): YearsData {
  const sorted = set.contributions.items
    .map((item, at) => ({ at, origin: { ...originName(item), standing: item.standing, share: item.share } }))
    .sort(
      ({ origin: one }, { origin: other }) =>
        standings.indexOf(one.standing) - standings.indexOf(other.standing) ||
        other.share - one.share ||
        compare(one.name, other.name) ||
        compare(one.key, other.key),
    );
  const rows = set.years
    .map((year) => {
      const shares = sorted.map(({ at }) => year.shares[at] ?? 0);
      const rest = 1 - shares.reduce((sum, share) => sum + share, 0);
      // what rounding leaves is no origin
      return { ...year, shares, othersShare: rest > 1e-9 ? rest : 0 };
    })
    .sort((one, other) => one.year - other.year);
  return { origins: sorted.map(({ origin }, place) => ({ number: place + 1, ...origin })), rows };
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);
