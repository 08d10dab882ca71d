import { dateInWords } from '../../shared/date-words.ts';
import { say } from './say.ts';

/** A date as the register has it, said to whoever reads it: "2021-04-12", "about 1994", "the 1990s", "1993 to 1996". */
export function sayDate(text: string): string {
  const [from = '', to] = text.split('/');
  if (to !== undefined) {
    if (isOpen(from)) return say`before or in ${sayDate(to)}`;
    return isOpen(to) ? say`since ${sayDate(from)}` : say`${sayDate(from)} to ${sayDate(to)}`;
  }
  const plain = dateInWords(text.replace(/[~?%]$/, ''));
  const years = /^the (\d+)s$/.exec(plain)?.[1];
  const said = years === undefined ? plain : say`the ${years}s`;
  if (text.endsWith('~')) return say`about ${said}`;
  if (text.endsWith('?')) return say`${said}, uncertain`;
  return text.endsWith('%') ? say`about ${said}, uncertain` : said;
}

const isOpen = (end: string): boolean => end === '..' || end === '';
