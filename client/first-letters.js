// Takes the letters that nearly every page is written with out of the fonts, into files of their own, before the client is built: a
// phone fetches those first, and the rest of an alphabet only where a page has one of its letters.
import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
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
const firstLetters = [
  ...Array.from({ length: 95 }, (_, at) => 0x20 + at),
  ...Array.from('\u00a0°±·½×\u2002\u2003\u2009–—‘’“”…\u202f−↑↓', (letter) => letter.codePointAt(0)),
];

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

/** Writes some letters of a font into a file of their own, and gives the rule that names it. */
async function part({ rule, path, name, range, letters }) {
  const text = String.fromCodePoint(...letters);
  const options = { targetFormat: 'woff2', variationAxes: { wght: weights } };
  await writeFile(folder + name, await subsetFont(await readFile(path), text, options));
  return rule.replace(/url\([^)]+\)/, `url(./${name})`).replace(range, rangeOf(letters));
}

/** One rule of a font as it is published: the Latin one becomes two, the others stay as they are. */
async function rulesOf(rule, sheet) {
  const [, file] = /url\(\.\/files\/([^)]+)\)/.exec(rule);
  const [, range] = /unicode-range: ([^;]+);/.exec(rule);
  const path = fileURLToPath(new URL(`files/${file}`, sheet));
  if (!file.includes('-latin-wght-')) {
    await copyFile(path, folder + file);
    return [rule.replace('./files/', './')];
  }
  const letters = lettersOf(range);
  const rest = letters.filter((letter) => !firstLetters.includes(letter));
  const named = (letterSet) => file.replace('-latin-', `-${letterSet}-`);
  return Promise.all([
    part({ rule, path, range, name: named('rest'), letters: rest }),
    part({
      rule,
      path,
      range,
      name: named('first'),
      letters: letters.filter((letter) => firstLetters.includes(letter)),
    }),
  ]);
}

await mkdir(folder, { recursive: true });
const rules = [];
for (const sheet of sheets) {
  const css = await readFile(fileURLToPath(sheet), 'utf8');
  for (const [rule] of css.matchAll(/@font-face \{[^}]+\}/g)) rules.push(...(await rulesOf(rule, sheet)));
}
await writeFile(`${folder}fonts.css`, rules.join('\n'));
