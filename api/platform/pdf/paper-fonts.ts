import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create } from 'fontkit';
import { trueTypeOf } from './true-type.ts';

/** What letters are for: running text, or headings. */
export type Face = 'text' | 'heading';

/** A piece of text that one font has all characters of. */
export interface Run {
  readonly font: string;
  readonly text: string;
}

const sans = 'atkinson-hyperlegible-next';
const serif = 'brygada-1918';
const fontOf = (family: string, alphabet: string): string =>
  `@fontsource-variable/${family}/files/${family}-${alphabet}-wght-normal.woff2`;

/** Fonts are split by alphabets: the first one that has a character writes it. */
const further = ['latin-ext', 'greek', 'cyrillic', 'cyrillic-ext', 'vietnamese'].map((part) => fontOf(serif, part));
const chains: Readonly<Record<Face, readonly string[]>> = {
  text: [fontOf(sans, 'latin'), fontOf(sans, 'latin-ext'), ...further],
  heading: [fontOf(serif, 'latin'), ...further],
};

/** What is written for characters that no font has. */
const substitutes: Readonly<Record<string, string>> = {
  '→': '->',
  '←': '<-',
  '≤': '<=',
  '\u2009': '\u00a0',
  '\u202f': '\u00a0',
};

interface LoadedFont {
  readonly file: Buffer;
  readonly characters: ReadonlySet<number>;
}

const require = createRequire(import.meta.url);
/** Fonts that were read once stay: taking one out of its packing costs some 50 ms. */
const loaded = new Map<string, LoadedFont>();

function load(name: string): LoadedFont {
  const known = loaded.get(name);
  if (known) return known;
  const file = trueTypeOf(readFileSync(require.resolve(name)));
  const font = { file, characters: new Set(create(file).characterSet) };
  loaded.set(name, font);
  return font;
}

/** The file of a font that a run names, as TrueType. */
export function fontFile(name: string): Buffer {
  return load(name).file;
}

/** Text as runs; what no font has is written by what stands for it, without its accents, or as a question mark. */
export function runsOf(text: string, face: Face): Run[] {
  const runs: { font: string; text: string }[] = [];
  for (const character of text.normalize('NFC')) {
    for (const [font, written] of writable(character, chains[face])) {
      const last = runs.at(-1);
      if (last?.font === font) last.text += written;
      else runs.push({ font, text: written });
    }
  }
  return runs;
}

function writable(character: string, chain: readonly string[]): [font: string, text: string][] {
  const font = fontWith(character, chain);
  if (font !== undefined) return [[font, character]];
  const plain = substitutes[character] ?? character.normalize('NFD').replace(/\p{M}/gu, '');
  const found = [...plain].map((one) => [fontWith(one, chain), one] as const);
  if (found.every(([known]) => known !== undefined)) return found.map(([known, one]) => [known ?? '', one]);
  return [[chain[0] ?? '', '?']];
}

function fontWith(character: string, chain: readonly string[]): string | undefined {
  const code = character.codePointAt(0) ?? 0;
  return chain.find((name) => load(name).characters.has(code));
}
