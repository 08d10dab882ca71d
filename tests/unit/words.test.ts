import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import PO from 'pofile';
import { describe, expect, it } from 'vitest';

/** The catalogues as the last build left them: it takes up every text of the client. */
const folder = fileURLToPath(new URL('../../client/src/lib/words/catalogue/', import.meta.url));
const translations = readdirSync(folder).filter((file) => file.endsWith('.po') && file !== 'en.po');

/** What a translation must carry as the source does: holes `{0}`, marks of nested text `<0>`. */
const holes = (text: string): string => (text.match(/\{\d*\}|<\/?\d+\/?>/g) ?? []).sort().join(' ');

/** What no text begins or ends with: it would be a piece of a sentence glued together, and the catalogue takes ` of` and `of` for one. */
const isPiece = (text: string): boolean => /^\s|\s$/.test(text);

describe('the catalogue of words', () => {
  it('has a language beside English, and the source was gone through', () => {
    expect(translations).toContain('es.po');
    expect(existsSync(`${folder}en.po`), 'build the client first: npm run build').toBe(true);
  });

  describe.each(translations)('%s', (file) => {
    const items = PO.parse(readFileSync(folder + file, 'utf8')).items.filter((item) => !item.obsolete);

    it('says every text of the client', () => {
      expect(items.length).toBeGreaterThan(2000);
      const missing = items.filter(({ msgstr }) => msgstr.length === 0 || msgstr.some((said) => said === ''));
      expect(missing.map(({ msgid, references }) => `${references[0] ?? ''}: ${msgid}`)).toEqual([]);
    });

    it('says whole phrases', () => {
      const pieces = items.flatMap(({ msgid, msgid_plural: plural, msgstr }) => [msgid, plural ?? '', ...msgstr]);
      expect(pieces.filter(isPiece)).toEqual([]);
    });

    it('keeps the holes and the nested parts of each', () => {
      const wrong = items.flatMap(({ msgid, msgid_plural: plural, msgstr }) =>
        msgstr
          .filter((said, form) => {
            const source = form === 1 && plural ? plural : msgid;
            return holes(said) !== holes(source);
          })
          .map((said) => `${JSON.stringify(msgid)} is said ${JSON.stringify(said)}`),
      );
      expect(wrong).toEqual([]);
    });
  });
});
