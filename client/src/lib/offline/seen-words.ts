import { writingTag } from '../words/language.ts';

/** A moment as this device tells it: `26 Nov, 08:40`, with the year where it is another one. */
export function seenInWords(moment: number | string, now = new Date()): string {
  const seen = new Date(moment);
  const year = seen.getFullYear() === now.getFullYear() ? {} : ({ year: 'numeric' } as const);
  return seen.toLocaleString(writingTag, {
    day: 'numeric',
    month: 'short',
    ...year,
    hour: '2-digit',
    minute: '2-digit',
  });
}
