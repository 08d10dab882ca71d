import type { WhatIf } from '$lib/api/types.ts';
import { decimals, percent, percentDigits } from '$lib/ui/figures.ts';
import { word } from '$lib/words/word.ts';

/** One figure as recorded and as assumed, in words. */
export interface WhatIfRow {
  name: string;
  recorded: string;
  assumed: string;
  difference: string;
}

const none = 'not known';
const share = (value: number | null): string => (value === null ? none : percent(value));
/** Percentage points with their sign; "same" where there is no difference. */
function points(difference: number | null): string {
  if (difference === null) return '';
  return difference === 0 ? word('same') : `${difference > 0 ? '+' : '−'}${percentDigits(Math.abs(difference))}`;
}
function steps(difference: number, digits = 0): string {
  return difference === 0 ? word('same') : `${difference > 0 ? '+' : '−'}${decimals(Math.abs(difference), digits)}`;
}

/** The figures side by side. Differences of shares are in percentage points. */
export function rowsOf({ recorded, assumed, difference }: WhatIf): WhatIfRow[] {
  const shares = (name: string, one: number | null, other: number | null, by: number | null): WhatIfRow => ({
    name,
    recorded: share(one),
    assumed: share(other),
    difference: points(by),
  });
  const [was, is] = [recorded.inbreeding, assumed.inbreeding];
  return [
    {
      name: 'inbreeding F, expected',
      recorded: was.nothingKnown ? 'nothing known' : share(was.expected),
      assumed: is.nothingKnown ? 'nothing known' : share(is.expected),
      difference: was.nothingKnown || is.nothingKnown ? '' : points(difference.inbreeding),
    },
    shares('F, least', was.least, is.least, difference.inbreedingLeast),
    shares('F, greatest', was.greatest, is.greatest, difference.inbreedingGreatest),
    shares('mean kinship with its line', recorded.meanKinship, assumed.meanKinship, difference.meanKinship),
    shares(
      'ancestral inbreeding',
      recorded.ancestralInbreeding,
      assumed.ancestralInbreeding,
      difference.ancestralInbreeding,
    ),
    {
      name: 'pedigree depth',
      recorded: String(recorded.depth),
      assumed: String(assumed.depth),
      difference: steps(difference.depth),
    },
    {
      name: 'complete equivalents',
      recorded: decimals(recorded.generationEquivalents, 2),
      assumed: decimals(assumed.generationEquivalents, 2),
      difference: steps(difference.generationEquivalents, 2),
    },
    shares('completeness', recorded.completeness.index, assumed.completeness.index, difference.completeness),
  ];
}

/** What follows for F, in a sentence. */
export function whatFollows({ recorded, assumed, difference }: WhatIf): string {
  const [was, is] = [recorded.inbreeding, assumed.inbreeding];
  if (is.nothingKnown) return 'Nothing would be known of its inbreeding.';
  if (was.nothingKnown) return `F would be ${percent(is.expected)}; as recorded, nothing is known of it.`;
  if (difference.inbreeding === 0) return `F would stay ${percent(was.expected)}.`;
  const by = percentDigits(Math.abs(difference.inbreeding));
  return `F would be ${percent(is.expected)} instead of ${percent(was.expected)}: ${by} points ${difference.inbreeding > 0 ? word('more') : word('less')}.`;
}
