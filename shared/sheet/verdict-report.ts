import { dateInWords } from '../date-words.ts';
import type { SheetAnimal } from './sheet-document.ts';
import type { SheetVerdict } from './verify-sheet.ts';

/** What was found of a sheet file, in lines for a person to read; what it says only where it can be believed. */
export function reportVerdict({ outcome, words, sheet }: SheetVerdict): string[] {
  const isBelieved = outcome === 'genuine' || outcome === 'expired';
  if (!sheet || !isBelieved) return [words];
  const { number, issuer, issued, keeper, animals, validUntil } = sheet;
  return [
    words,
    `Sheet ${number} of ${issuer.register}${issuer.invented ? ' (an invented club)' : ''}, issued on ${issued.slice(0, 10)}${keeper === null ? '' : ` for ${keeper}`}, ${validUntil === null ? 'valid until it is replaced or revoked' : `valid until ${validUntil}`}.`,
    ...animals.map(animalInWords),
    `Whether it was replaced or revoked since, only the register can tell: ${sheet.lookUp}`,
  ];
}

function animalInWords({ number, species, sex, hatched, label, inbreeding, depth }: SheetAnimal): string {
  const figure = inbreeding.nothingKnown
    ? 'nothing known of its inbreeding'
    : `F ${Number((100 * inbreeding.expected).toFixed(2))} % at a depth of ${depth}`;
  const parts = [
    `${species}, ${sex}`,
    hatched === null ? 'hatched nobody knows when' : `hatched ${dateInWords(hatched)}`,
    label.name === null ? 'no label' : `“${label.name}”: ${label.inWords}`,
    figure,
  ];
  return `  ${number}: ${parts.join('; ')}.`;
}
