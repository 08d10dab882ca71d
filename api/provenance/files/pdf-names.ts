import { say } from '../../platform/say.ts';
/** What a PDF can do besides showing its pages, by the names that stand for it in the file, and what people call it. */
const refused: Readonly<Record<string, string>> = {
  Encrypt: say`is locked with a passphrase or against copying`,
  JavaScript: say`holds a script`,
  Rendition: say`holds a film or sound`,
  Launch: say`starts a program`,
  EmbeddedFile: say`holds another file`,
  EmbeddedFiles: say`holds another file`,
  FileAttachment: say`holds another file`,
  GoToE: say`holds another file`,
  RichMedia: say`holds a film or a program`,
  SubmitForm: say`sends a form away`,
  ImportData: say`fetches data from elsewhere`,
  XFA: say`holds a form with a program of its own`,
};

const delimiter = '\\0\\t\\n\\f\\r ()<>\\[\\]{}/%';
const plainName = new RegExp(`/(${Object.keys(refused).join('|')})(?![^${delimiter}])`);
/** A name of which some characters are written as their numbers, so that they are read only by those who know. */
const escapedName = new RegExp(`/([^${delimiter}]{0,127}#[0-9A-Fa-f]{2}[^${delimiter}]{0,127})`, 'g');
const attachedFile = /\/EF\s*(<<|\d+\s+\d+\s+R)/;

/** What a piece of a PDF would do that no paper does; null where there is nothing. */
export function refusedDeed(text: string): string | null {
  const plain = plainName.exec(text)?.[1];
  if (plain !== undefined) return refused[plain] ?? null;
  if (attachedFile.test(text)) return say`holds another file`;
  for (const [, name] of text.matchAll(escapedName)) {
    const deed = refused[readName(name ?? '')];
    if (deed !== undefined) return deed;
  }
  return null;
}

/** Text of a PDF with the numbers of its names replaced by the characters that they stand for. */
export function readName(text: string): string {
  return text.replace(/#([0-9A-Fa-f]{2})/g, (_, digits: string) => String.fromCharCode(parseInt(digits, 16)));
}
