import type { Individual } from '$lib/api/types.ts';
import { sexWords } from '$lib/records/vocabulary-words.ts';
import { word } from '$lib/words/word.ts';

/** One line of an animal's history. */
export interface HistoryLine {
  key: string;
  /** EDTF; null where nobody said when. */
  date: string | null;
  text: string;
}

/** Observations, stays in pairings and the dates of the record as one list, newest first; undated ones last. */
export function historyOf(animal: Individual): HistoryLine[] {
  const lines: HistoryLine[] = animal.observations.map((one) => ({
    key: one.id,
    date: one.observedOn,
    text: [
      [one.svlMm === null ? '' : `${one.svlMm} mm`, one.massG === null ? '' : `${one.massG} g`]
        .filter(Boolean)
        .join(', '),
      one.kind === 'health' ? 'Health:' : one.kind === 'behaviour' ? 'Behaviour:' : '',
      one.text ?? '',
    ]
      .filter(Boolean)
      .join(' '),
  }));
  for (const stay of animal.pairings) {
    lines.push({ key: `${stay.id}-in`, date: stay.joined, text: `moved to ${stay.name}` });
    if (stay.left !== null) lines.push({ key: `${stay.id}-out`, date: stay.left, text: `left ${stay.name}` });
  }
  const dates: [string, string | null, string][] = [
    ['hatched', animal.hatched, word('hatched')],
    ['out', animal.outOfWater, 'left the water'],
    ['sexed', animal.sexedOn, `sexed: ${sexWords[animal.sex]}`],
    ['died', animal.died, word('died')],
  ];
  for (const [key, date, text] of dates) if (date !== null) lines.push({ key, date, text });
  return lines.sort((a, b) => (b.date ?? '').localeCompare(a.date ?? ''));
}
