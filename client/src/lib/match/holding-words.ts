import type { Holding } from '../api/types.ts';
import { percent, written } from '../ui/figures.ts';

/** One measure of a holding, before and after. */
export interface HoldingRow {
  readonly words: string;
  readonly before: string;
  readonly after: string;
}

/** Animals as the trade writes them: males.females.unsexed. */
export const sexesInWords = ({ males, females, unsexed }: Holding): string => `${males}.${females}.${unsexed}`;

const share = (value: number | null): string => (value === null ? '–' : percent(value));
const amount = (value: number | null): string =>
  value === null ? '–' : written(String(Math.round(value * 100) / 100));

/** The measures of a holding before and after an exchange, in the order in which they are told. */
export function holdingRows(before: Holding, after: Holding): HoldingRow[] {
  const row = (words: string, of: (holding: Holding) => string): HoldingRow => ({
    words,
    before: of(before),
    after: of(after),
  });
  return [
    row('animals', sexesInWords),
    row('gene diversity', ({ geneDiversity }) => share(geneDiversity)),
    row('mean kinship', ({ meanKinship }) => share(meanKinship)),
    row('founder genome equivalents', ({ founderGenomeEquivalents }) => amount(founderGenomeEquivalents)),
    row('founders', ({ founders }) => String(founders)),
    row('sources', ({ sources }) => String(sources)),
    row('from nobody known', ({ unknown }) => share(unknown)),
  ];
}
