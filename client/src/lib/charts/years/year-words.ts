import { counted, percent, percentRange } from '../../ui/figures.ts';
import type { NumberedOrigin, YearRow } from './year-rows.ts';

/** Mean F of the young of a year with its range, or that nothing is known. */
export function inbreedingInWords({ inbreeding }: YearRow): string {
  const { mean, least, greatest } = inbreeding;
  if (mean === null || least === null || greatest === null) return 'F not known';
  return least === greatest ? `F ${percent(mean)}` : `mean F ${percent(mean)}, from ${percentRange(least, greatest)}`;
}

/** The largest shares of a year in words, at most `most` of them. */
export function sharesInWords(row: YearRow, origins: readonly NumberedOrigin[], most = 4): string[] {
  return origins
    .map((origin, at) => ({ origin, share: row.shares[at] ?? 0 }))
    .filter(({ share }) => share > 0)
    .sort((one, other) => other.share - one.share || one.origin.number - other.origin.number)
    .slice(0, most)
    .map(({ origin, share }) => `${percent(share)} ${origin.name}`);
}

/** A whole year of the chart in one sentence, for those who do not see it. */
export function yearInWords(row: YearRow, origins: readonly NumberedOrigin[]): string {
  const parts = [
    `${row.year}: ${counted(row.animals, ['animal', 'animals'])} hatched`,
    inbreedingInWords(row),
    `gene diversity ${percent(row.geneDiversity)}`,
    ...sharesInWords(row, origins),
  ];
  return parts.join('; ');
}
