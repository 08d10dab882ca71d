import { inflateRawSync } from 'node:zlib';
import { readName, refusedDeed } from './pdf-names.ts';
import { say } from '../../platform/say.ts';

/** Most bytes that the packed objects of one PDF may have together, unpacked. */
const mostUnpacked = 64_000_000;

/** Most streams of one PDF. */
const mostStreams = 50_000;

/** How far before a stream its dictionary may begin. */
const longestDictionary = 16_384;

const again = say`Open it, print it as a PDF anew, and send that.`;

/**
 * Looks whether a file is a PDF and nothing but a paper: a PDF from its first byte to its last, that can be read without a passphrase,
 * with no script, no program, no other file inside, and that no other program would take for an archive or a page. Objects that are
 * packed are unpacked and looked at too. Gives what is wrong and what to do, or null.
 */
export function faultOfPdf(bytes: Uint8Array): string | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const text = file.toString('latin1');
  return faultOfFrame(text) ?? faultOfDisguise(file, text) ?? faultOfDeeds(text) ?? faultOfStreams(file, text);
}

function faultOfFrame(text: string): string | null {
  if (!/^%PDF-[12]\.\d[\r\n\t ]/.test(text)) return say`This PDF does not begin as one. ${again}`;
  if (!/\bstartxref\s{1,8}\d{1,10}\s{1,8}%%EOF[\s\0]{0,64}$/.test(text.slice(-1200)))
    return say`This PDF ends too early, or something hangs behind its end. ${again}`;
  if (!/\d+\s+\d+\s+obj\b/.test(text)) return say`This PDF holds no page. ${again}`;
  return null;
}

/** Something else as well: an archive is read from its end, a page from wherever its first tag stands. */
function faultOfDisguise(file: Buffer, text: string): string | null {
  if (/<(?:!doctype\s+html|html|script|iframe|svg)[\s>]/i.test(text))
    return say`This PDF is a web page as well. ${again}`;
  for (let at = text.indexOf('PK\x05\x06'); at !== -1; at = text.indexOf('PK\x05\x06', at + 4))
    if (isEndOfArchive(file, at)) return say`This PDF is an archive as well. ${again}`;
  return null;
}

/** Four bytes come up by chance in a large scan; a whole end record does not. */
function isEndOfArchive(file: Buffer, at: number): boolean {
  if (at + 22 > file.length) return false;
  const isNearEnd = file.length - at <= 65_557;
  const [disks, entries, size] = [file.readUInt32LE(at + 4), file.readUInt32LE(at + 8), file.readUInt32LE(at + 12)];
  return isNearEnd || (disks === 0 && (entries & 0xffff) === entries >>> 16 && size <= at);
}

function faultOfDeeds(text: string): string | null {
  const deed = refusedDeed(text);
  return deed === null ? null : say`This PDF ${deed}. ${again}`;
}

function faultOfStreams(file: Buffer, text: string): string | null {
  let left = mostUnpacked;
  let streams = 0;
  for (const found of text.matchAll(/(?<!end)stream[^\r\n]{0,256}(?:\r\n|\n|\r)/g)) {
    if (++streams > mostStreams) return say`This PDF has too many parts. ${again}`;
    const dictionary = dictionaryBefore(text, found.index);
    if (dictionary === null) return say`This PDF is written in a way that cannot be checked. ${again}`;
    const packed = file.subarray(found.index + found[0].length);
    const unpacked = unpack(dictionary, packed, left);
    if (unpacked === null) return say`This PDF packs its parts in a way that cannot be checked. ${again}`;
    left -= unpacked.length;
    const fault = faultOfDeeds(unpacked);
    if (fault !== null) return fault;
  }
  return null;
}

/** What stands between the beginning of an object and its stream; null where no beginning is near. */
function dictionaryBefore(text: string, at: number): string | null {
  const before = text.slice(Math.max(0, at - longestDictionary), at);
  const beginning = before.lastIndexOf('obj');
  return beginning === -1 ? null : readName(before.slice(beginning + 3));
}

/** The objects that a stream packs, as text: none for any other stream, null where they cannot be looked at. */
function unpack(dictionary: string, packed: Buffer, most: number): string | null {
  const isDeclared = /\/(ObjStm|First)(?![^\s/[\]()<>])/.test(dictionary);
  if (isDeclared && !isPlainlyPacked(dictionary)) return null;
  const isDeflated = packed.length > 2 && ((packed[0] ?? 0) & 15) === 8 && packed.readUInt16BE(0) % 31 === 0;
  if (!isDeflated) return isDeclared && dictionary.includes('/Filter') ? null : '';
  if (!isDeclared && !beginsAsObjects(packed)) return '';
  return inflate(packed.subarray(2), most);
}

/** Whether a stream is packed in the one usual way, or not at all. */
function isPlainlyPacked(dictionary: string): boolean {
  if (/\/Predictor\s*([2-9]|1\d)|\/DecodeParms\s*\[?\s*\d/.test(dictionary)) return false;
  const filters = [...dictionary.matchAll(/\/Filter\s*(\[[^\]]*\]|\/[^\s/<>[\]()]+|\S*)/g)];
  return filters.every(([, filter]) => /^\[?\s*\/(FlateDecode|Fl)\s*\]?$/.test(filter ?? ''));
}

/** A pack of objects begins with the number and the place of each, whatever its dictionary says. */
function beginsAsObjects(packed: Buffer): boolean {
  const beginning = inflate(packed.subarray(2, 514), 1_000_000);
  return beginning !== null && /^(?:\s|%[^\r\n]*[\r\n])*\d+\s+\d+[\s<[(/]/.test(beginning);
}

/** Unpacks without looking at the sum at the end, since a reader of PDF does not mind a wrong one either. */
function inflate(packed: Buffer, most: number): string | null {
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, most), finishFlush: 2 }).toString('latin1');
  } catch {
    return null;
  }
}
