import { dateInWords } from '$shared/date-words.ts';
import type { Individual } from '../api/types.ts';
import type { LabelPart, LabelText } from './label-fit.ts';
import { word } from '../words/word.ts';

/** What stands on the label of an animal: its number, and of what was chosen whatever is recorded. */
export function labelTexts(animal: Individual, chosen: Readonly<Record<LabelPart, boolean>>): LabelText[] {
  const said: Record<LabelPart, string | null> = {
    code: animal.code,
    line: animal.line,
    hatched: animal.hatched && `hatched ${hatchedOnLabel(animal.hatched)}`,
    species: animal.species,
    keeper: animal.keeper,
  };
  const texts: LabelText[] = [{ part: 'number', text: animal.number }];
  for (const part of Object.keys(said) as LabelPart[]) {
    const text = said[part];
    if (chosen[part] && text) texts.push({ part, text });
  }
  return texts;
}

/** A day stays as it is written, which is short and clear anywhere; vague dates are said in words. */
function hatchedOnLabel(date: string): string {
  return /^\d{4}-\d{2}-\d{2}$/.test(date) ? date : dateInWords(date);
}

/** Parts as the choice names them. */
export const partWords: Readonly<Record<LabelPart, string>> = {
  code: 'code and sex',
  line: word('line'),
  hatched: 'hatching date',
  species: word('species'),
  keeper: word('keeper'),
};
