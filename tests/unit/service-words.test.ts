import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import PO from 'pofile';
import { describe, expect, it } from 'vitest';
import { readServiceSentences } from '../support/service-sentences.ts';

const folder = fileURLToPath(new URL('../../api/words/', import.meta.url));
const { said, unsaid } = readServiceSentences();
const holes = (text: string): string => (text.match(/\{\d+\}/g) ?? []).sort().join(' ');

/** Writes a catalogue anew: what is said, in the order of the sources, with what was translated before. */
function renew(file: string): void {
  const before = existsSync(file) ? PO.parse(readFileSync(file, 'utf8')) : new PO();
  const known = new Map(before.items.map(({ msgid, msgstr }) => [msgid, msgstr]));
  before.headers['Content-Type'] = 'text/plain; charset=UTF-8';
  before.items = [...said].map(([msgid, places]) => {
    const item = new PO.Item();
    Object.assign(item, { msgid, msgstr: known.get(msgid) ?? [''], references: [...new Set(places)] });
    return item;
  });
  writeFileSync(file, before.toString());
}

describe('the words of the service', () => {
  const files = readdirSync(folder).filter((file) => file.endsWith('.po'));
  if (process.env['UPDATE_WORDS'] !== undefined) for (const file of files) renew(folder + file);

  it('finds what the service says, and no refusal in words that nobody could translate', () => {
    expect(said.size).toBeGreaterThan(500);
    expect(unsaid.map(({ file, line, text }) => `${file}:${line}: ${text}`)).toEqual([]);
  });

  it.each(files)('%s says all of it, with its holes, and nothing else', (file) => {
    const items = PO.parse(readFileSync(folder + file, 'utf8')).items;
    const known = new Map(items.map(({ msgid, msgstr }) => [msgid, msgstr[0] ?? '']));
    expect([...said.keys()].filter((key) => !known.get(key))).toEqual([]);
    expect([...known.keys()].filter((key) => !said.has(key))).toEqual([]);
    expect([...known].filter(([key, words]) => holes(words) !== holes(key))).toEqual([]);
  });
});
