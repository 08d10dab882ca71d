import { Readable } from 'node:stream';
import type { Sheet } from '../../../api/exchange/sheet-reader.ts';
import { readSheet } from '../../../api/exchange/sheet-reader.ts';

/** Reads a sheet written out in a test, in pieces of the given number of bytes. */
export function sheetOf(content: string | Uint8Array, piece = 65_536): Promise<Sheet> {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  function* pieces(): Generator<Uint8Array> {
    for (let start = 0; start < bytes.length; start += piece) yield bytes.subarray(start, start + piece);
  }
  return readSheet(Readable.from(pieces()));
}
