// Takes the letters that nearly every page is written with out of the fonts, into files of their own, before the client is built: a
// phone fetches those first, those of the neighbouring languages where a name has one of them, and the rest of an alphabet likewise.
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

const folder = fileURLToPath(new URL('src/lib/styles/fonts/', import.meta.url));
const sheets = [
  import.meta.resolve('@fontsource-variable/atkinson-hyperlegible-next/wght.css'),
  import.meta.resolve('@fontsource-variable/brygada-1918/wght.css'),
  import.meta.resolve('@fontsource-variable/brygada-1918/wght-italic.css'),
];
/** No text of the client is lighter or heavier; the forms of other weights are left out. */
const weights = { min: 400, max: 700 };
/** Italics are asides, and have one weight; what is bold in them the browser thickens. */
const italicWeight = 400;
const italicRange = '400 500';
/** What the client asks of a font, and what sets letters well; forms that only other features reach are left out. */
const keepFeatures = ['kern', 'mark', 'mkmk', 'ccmp', 'liga', 'tnum'];
const codesOf = (text) => Array.from(text, (letter) => letter.codePointAt(0));
/** Sets of letters, each in a file of its own; what none of them has is the rest. */
const letterSets = {
  first: [
    ...Array.from({ length: 95 }, (_, at) => 0x20 + at),
    ...codesOf('\u00a0°±·½×\u2002\u2003\u2009–—‘’“”…\u202f−↑↓'),
  ],
  accents: codesOf('ÀÁÂÃÄÇÈÉÊËÌÍÎÏÑÒÓÔÕÖÙÚÛÜàáâãäçèéêëìíîïñòóôõöùúûüß¡¿«»ªº'),
};

/** The letters of a range as style sheets write it: `U+0000-00FF,U+0131`. */
const lettersOf = (range) =>
  range.split(',').flatMap((part) => {
    const [from, to = from] = part
      .trim()
      .slice(2)
      .split('-')
      .map((digits) => parseInt(digits, 16));
    return Array.from({ length: to - from + 1 }, (_, at) => from + at);
  });

/** The same as style sheets write it, neighbours as one. */
function rangeOf(letters) {
  const runs = [];
  for (const letter of letters.toSorted((one, other) => one - other)) {
    const last = runs.at(-1);
    if (last?.to === letter - 1) last.to = letter;
    else runs.push({ from: letter, to: letter });
  }
  const hex = (letter) => letter.toString(16).toUpperCase();
  return runs.map(({ from, to }) => `U+${hex(from)}${to === from ? '' : `-${hex(to)}`}`).join(',');
}

/** Writes letters of a font into a file of their own (all of them, where none are named), and gives the rule that names it. */
async function part({ rule, path, name, range, letters }) {
  const isItalic = rule.includes('font-style: italic');
  const options = {
    targetFormat: 'woff2',
    keepFeatures,
    variationAxes: { wght: isItalic ? italicWeight : weights },
  };
  const text = letters ? String.fromCodePoint(...letters) : undefined;
  const font = await subsetFont(await readFile(path), text, { ...options, keepAllGlyphs: !letters });
  await writeFile(folder + name, font);
  const named = rule.replace(/url\([^)]+\)/, `url(./${name})`).replace(range, letters ? rangeOf(letters) : range);
  return isItalic ? named.replace(/font-weight: [^;]+/, `font-weight: ${italicRange}`) : named;
}

/** One rule of a font as it is published: the Latin one becomes several, the others keep their letters. */
async function rulesOf(rule, sheet) {
  const [, file] = /url\(\.\/files\/([^)]+)\)/.exec(rule);
  const [, range] = /unicode-range: ([^;]+);/.exec(rule);
  const path = fileURLToPath(new URL(`files/${file}`, sheet));
  if (!file.includes('-latin-wght-')) return [await part({ rule, path, name: file, range })];
  const letters = lettersOf(range);
  const inSets = new Set(Object.values(letterSets).flat());
  const sets = { rest: letters.filter((letter) => !inSets.has(letter)), ...letterSets };
  return Promise.all(
    Object.entries(sets).map(([set, wanted]) => {
      const name = file.replace('-latin-', `-${set}-`);
      return part({ rule, path, range, name, letters: wanted.filter((letter) => letters.includes(letter)) });
    }),
  );
}

await mkdir(folder, { recursive: true });
const rules = [];
for (const sheet of sheets) {
  const css = await readFile(fileURLToPath(sheet), 'utf8');
  for (const [rule] of css.matchAll(/@font-face \{[^}]+\}/g)) rules.push(...(await rulesOf(rule, sheet)));
}
await writeFile(`${folder}fonts.css`, rules.join('\n'));
