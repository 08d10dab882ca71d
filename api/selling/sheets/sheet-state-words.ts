import type { SheetVerdict } from '../../../shared/sheet/verify-sheet.ts';
import type { SheetVerificationView } from './public-sheet.view.ts';
import type { SheetView } from './sheets.view.ts';

const dayOf = (moment: Date): string => moment.toISOString().slice(0, 10);

/** Whether a sheet still stands, in a sentence or two. */
export function stateInWords({ state, revoked, newer, validUntil }: SheetView): string {
  const sheets = [...new Set(newer.map(({ number }) => number))];
  switch (state) {
    case 'revoked':
      return `It was revoked on ${revoked ? dayOf(revoked.at) : 'some day'}: ${revoked?.reason ?? ''}`;
    case 'superseded':
      return sheets.length === 0 ? 'Newer sheets replace it.' : `It was replaced by ${sheets.join(', ')}.`;
    case 'expired':
      return `It was valid until ${validUntil}.`;
    case 'valid':
      return sheets.length === 0
        ? 'It still stands.'
        : `It still stands, though a newer sheet tells of ${newer.map(({ animal, number }) => `${animal} (${number})`).join(', ')}.`;
  }
}

/** What a file is that somebody sent, in sentences. */
export function verificationWords(
  { outcome, words, sheet }: SheetVerdict,
  whose: SheetVerificationView['whose'],
  view: SheetView | null,
): string {
  if (view) return `${words} This register issued it. ${stateInWords(view)}`;
  if (whose === 'this-register')
    return `${words} It is signed with a key of this register, which yet has no such sheet on record: ask the club before you rely on it.`;
  if (outcome === 'unknown-key' && sheet) {
    const address = sheet.issuer.address === null ? '' : ` (${sheet.issuer.address})`;
    return `It is signed with a key that is not of this register. It names “${sheet.issuer.register}”${address} as its issuer; only the keys of that register can tell whether it is genuine.`;
  }
  return words;
}
