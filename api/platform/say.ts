import { AsyncLocalStorage } from 'node:async_hooks';
import { existsSync, readFileSync } from 'node:fs';
import PO from 'pofile';

/*
 * Sentences of the service. They are made, compared, kept and signed in English; `say` remembers how one was made, and on its way out an
 * answer is put into the words of whoever reads it. A translation is a file in `api/words`, kept complete by `service-words.test.ts`.
 */

/** The languages that the service speaks besides English. */
const translations = ['es'] as const;

export type Translation = (typeof translations)[number];

type Hole = string | number | undefined;
type Tell = (hole: Hole) => string;

/** Who reads the answer: the language, and how to make each sentence anew of the reader's words. */
interface Reader {
  readonly language: Translation;
  readonly made: Map<string, (tell: Tell) => string>;
}

const readers = new AsyncLocalStorage<Reader>();
const decimalSigns: Record<Translation, string> = { es: ',' };

/** Phrases that were said while the service started, so that they stand in no answer by themselves. */
const startedWith = new Set<string>();
let isStarting = true;

/** Whether a phrase was said before the first answer: it is told in other words wherever it fills a hole. */
export const isStartingPhrase = (text: string): boolean => startedWith.has(text);

/**
 * A sentence, a phrase or a word that a keeper may read, in English: say`You have ${count} tokens.` A hole that was itself said, or is a
 * word of the catalogue, is put into the reader's words too.
 */
export function say(parts: TemplateStringsArray, ...holes: Hole[]): string {
  const text = parts.reduce((sum, part, place) => `${sum}${holes[place - 1] ?? ''}${part}`);
  const reader = readers.getStore();
  if (isStarting && holes.length === 0) startedWith.add(text);
  if (reader)
    reader.made.set(text, (tell) => {
      const words = catalogue(reader.language).get(keyOf(parts));
      return words === undefined ? text : words.replace(/\{(\d+)\}/g, (_, place: string) => tell(holes[Number(place)]));
    });
  return text;
}

/** What `put` makes of texts that were said, such as a list of them; it is made anew of the reader's words. */
export function together(texts: readonly string[], put: (texts: string[]) => string): string {
  const text = put([...texts]);
  readers.getStore()?.made.set(text, (tell) => put(texts.map(tell)));
  return text;
}

/** What was said before anybody asked, such as a constant, said for this answer: see `eitherWords`. */
export function sayAgain(text: string): string {
  const reader = readers.getStore();
  if (reader && !reader.made.has(text)) reader.made.set(text, () => catalogue(reader.language).get(text) ?? text);
  return text;
}

/** What the catalogue calls a sentence: its holes are numbered, `You have {0} tokens.` */
export function keyOf(parts: readonly string[]): string {
  return parts.reduce((sum, part, place) => `${sum}{${place - 1}}${part}`);
}

/** Runs `work` as an answer for a reader of the language that is asked for, or of English where there is no such translation. */
export function answeringIn<T>(accepts: (languages: string[]) => string | false, work: () => T): T {
  isStarting = false;
  const wished = accepts(['en', ...translations]);
  const language = translations.find((one) => one === wished);
  return language ? readers.run({ language, made: new Map() }, work) : work();
}

/** Fields of answers in which people write: what stands there stays, even where a sentence of the service happens to be the same. */
const peoplesWords = new Set([
  ...['notes', 'reason', 'policy', 'site', 'region', 'leftTo', 'code', 'givenCode'],
  ...['label', 'labelAsReceived', 'labelNote', 'receivedFrom', 'receivedBy', 'permitReferences'],
  ...['value', 'claim', 'verbatimLocality', 'locality', 'stateProvince', 'georeferencedBy', 'georeferenceSources'],
  ...['geodeticDatum', 'statedBy', 'issuedBy', 'reference', 'source', 'scientificName', 'commonName', 'species'],
  ...['keeper', 'who', 'by', 'reviewer', 'settledBy', 'club', 'clubName', 'register', 'issuer', 'address'],
  ...['line', 'lines', 'names', 'pairing'],
]);

/**
 * Fields that hold what somebody wrote or what the service says, such as the name of a group or “private animal”: only what was said for
 * this very answer is told in other words.
 */
const eitherWords = new Set([
  ...['name', 'title', 'about', 'aboutTitle', 'note', 'text'],
  ...['before', 'after', 'then', 'now', 'kept', 'duplicate'],
]);

/** Whose words a field of an answer holds. */
export type Whose = 'people' | 'either' | 'service';

/** Whose words the field of this name holds, whatever the answer. */
export function whoseWords(field: string): Whose {
  if (peoplesWords.has(field)) return 'people';
  return eitherWords.has(field) ? 'either' : 'service';
}

/** An answer in the words of its reader: each text in it that was said. */
export function inReadersWords<T>(answer: T): T {
  const reader = readers.getStore();
  return reader ? (translated(answer, reader, 'service') as T) : answer;
}

/** A sentence of the service in the words of its reader. */
export function sentenceInReadersWords(sentence: string): string {
  const reader = readers.getStore();
  return reader ? told(sentence, reader) : sentence;
}

function translated(value: unknown, reader: Reader, whose: Whose): unknown {
  if (typeof value === 'string') return isSaid(value, reader, whose) ? told(value, reader) : value;
  if (Array.isArray(value)) return value.map((item) => translated(item, reader, whose));
  if (typeof value !== 'object' || value === null || value instanceof Date) return value;
  return Object.fromEntries(
    Object.entries(value).map(([field, item]) => [field, translated(item, reader, whoseWords(field))]),
  );
}

function isSaid(text: string, reader: Reader, whose: Whose): boolean {
  if (whose === 'people') return false;
  // a single word of the service may be a code
  return whose === 'either' ? reader.made.has(text) : text.includes(' ');
}

function told(text: string, reader: Reader): string {
  const made = reader.made.get(text);
  if (made) return made((hole) => filled(hole, reader));
  return catalogue(reader.language).get(text) ?? text;
}

/** What a hole is filled with: a figure, what was said, or a word of the catalogue; anything else somebody wrote. */
function filled(hole: Hole = '', reader: Reader): string {
  const isFigure = typeof hole === 'number' || /^\d+(\.\d+)?\s?%$/.test(hole);
  if (isFigure) return String(hole).replace('.', decimalSigns[reader.language]);
  return reader.made.has(hole) || startedWith.has(hole) || !hole.includes(' ') ? told(hole, reader) : hole;
}

const catalogues = new Map<Translation, ReadonlyMap<string, string>>();

function catalogue(language: Translation): ReadonlyMap<string, string> {
  const known = catalogues.get(language);
  if (known) return known;
  // beside the sources, whether this runs from them or from `dist`
  const places = ['../words/', '../../../api/words/'].map(
    (folder) => new URL(`${folder}${language}.po`, import.meta.url),
  );
  const { items } = PO.parse(readFileSync(places.find((place) => existsSync(place)) ?? '', 'utf8'));
  const read = new Map(items.map(({ msgid, msgstr }) => [msgid, msgstr[0] ?? msgid]));
  catalogues.set(language, read);
  return read;
}
