import { dateInWords } from '$shared/date-words.ts';
import { dateBounds } from '$shared/edtf.ts';
import type { Species } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { daysInWords, today } from '../ui/dates.ts';
import { oneOf } from '../ui/listed.ts';
import type { ClutchDraft } from './clutch-draft.svelte.ts';
import { word } from '../words/word.ts';

/** The clutch as a sentence that writes itself while one taps: "17 eggs of IH-61 by LK-01, in a cup in tank 14, today." `isOfToday`: days near today are called so. */
export function clutchSentence(draft: ClutchDraft, isOfToday = true): string {
  const { eggs, parents, siteWords, pairing, laid } = draft;
  const count = eggs.trim() === '' ? 'Some eggs' : eggs.trim() === '1' ? 'One egg' : `${eggs.trim()} eggs`;
  const name = (animal: { code: string | null; number: string | null } | null): string =>
    animal ? referenceName(animal) : word('another');
  const side = (list: typeof parents.sires): string => oneOf(list.map((candidate) => name(candidate.animal)));
  const of =
    parents.mode === 'pairs'
      ? pairsInWords(parents.group.map(name))
      : sidesInWords(side(parents.dams), side(parents.sires));
  const where = siteWords === '' ? '' : pairing ? `in a ${siteWords} in ${pairing.name}` : `in a ${siteWords}`;
  const place = where === '' && pairing ? `in ${pairing.name}` : where;
  const day =
    isOfToday && laid === today()
      ? word('today')
      : isOfToday && laid === today(1)
        ? word('yesterday')
        : laid === ''
          ? 'on a day not known'
          : dateInWords(laid);
  return `${[`${count} ${of}`, place, day].filter((part) => part !== '').join(', ')}.`;
}

function sidesInWords(dams: string, sires: string): string {
  if (dams !== '' && sires !== '') return `of ${dams} by ${sires}`;
  if (dams !== '') return `of ${dams}`;
  return sires === '' ? 'of parents not known' : `by ${sires}`;
}

const pairsInWords = (names: string[]): string =>
  names.length < 2 ? 'of parents not known' : `of two of ${names.join(', ')}`;

/** "They hatch about 5 to 9 December 2026.", from the species profile; empty where it says nothing or the day is vague. */
export function hatchingSentence(laid: string, species: Species | null): string {
  const range = species?.ranges.find((one) => one.trait === 'laying-to-hatching');
  const bounds = laid === '' ? null : dateBounds(laid);
  if (!range || !bounds || bounds.earliest === null || bounds.earliest !== bounds.latest) return '';
  const { usualLeast, usualMost } = range;
  if (usualLeast === null && usualMost === null) return '';
  const first = plusDays(bounds.earliest, usualLeast ?? usualMost ?? 0);
  const last = plusDays(bounds.earliest, usualMost ?? usualLeast ?? 0);
  return `They hatch about ${daysInWords(first, last)}.`;
}

/** "usual: 6 to 8", from the species profile. */
export function usualEggs(species: Species | null): string {
  const range = species?.ranges.find((one) => one.trait === 'eggs-per-clutch');
  if (!range || range.usualLeast === null || range.usualMost === null) return '';
  return `usual: ${range.usualLeast} to ${range.usualMost}`;
}

function plusDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
