import type pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';

/** What stands before the first row: a signature of 11 bytes, flags, and the length of an extension. */
const HEADER = 19;

/** One row of a binary COPY, read from its place in the bytes that arrived. Only good until the next row is read. */
export class BinaryRow {
  bytes: Buffer = Buffer.alloc(0);
  /** Where each field begins, and its length, −1 for null. */
  readonly starts: number[] = [];
  readonly lengths: number[] = [];

  isNull(field: number): boolean {
    return (this.lengths[field] ?? -1) < 0;
  }

  /** Where the 16 bytes of an id begin. */
  at(field: number): number {
    return this.starts[field] ?? 0;
  }

  /** An id as PostgreSQL writes it. */
  id(field: number): string {
    const at = this.at(field);
    const digits = this.bytes.toString('hex', at, at + 16);
    return `${digits.slice(0, 8)}-${digits.slice(8, 12)}-${digits.slice(12, 16)}-${digits.slice(16, 20)}-${digits.slice(20)}`;
  }

  /** A whole number of 8 bytes, exact up to 2^53. */
  integer(field: number): number {
    const at = this.at(field);
    return this.bytes.readInt32BE(at) * 2 ** 32 + this.bytes.readUInt32BE(at + 4);
  }

  float(field: number): number {
    return this.bytes.readDoubleBE(this.at(field));
  }

  boolean(field: number): boolean {
    return this.bytes[this.at(field)] === 1;
  }

  /** The first letter of a text, as a code. */
  letter(field: number): number {
    return this.bytes[this.at(field)] ?? 0;
  }

  text(field: number): string | null {
    const at = this.at(field);
    return this.isNull(field) ? null : this.bytes.toString('utf8', at, at + (this.lengths[field] ?? 0));
  }

  /** Reads the row that begins at an offset; gives where the next begins, −1 after the last, or null where bytes are missing. */
  read(offset: number): number | null {
    const { bytes, starts, lengths } = this;
    let at = offset + 2;
    if (at > bytes.length) return null;
    const fields = bytes.readInt16BE(offset);
    if (fields < 0) return -1;
    for (let field = 0; field < fields; field++) {
      if (at + 4 > bytes.length) return null;
      const length = bytes.readInt32BE(at);
      at += 4;
      starts[field] = at;
      lengths[field] = length;
      if (length > 0) at += length;
    }
    return at > bytes.length ? null : at;
  }
}

/**
 * Hands over the rows of a query as they arrive, without an object for any of them (about half a microsecond a row).
 *
 * @param query trusted text: it cannot carry parameters
 */
export async function forEachBinaryRow(
  client: pg.ClientBase,
  query: string,
  take: (row: BinaryRow) => void,
): Promise<void> {
  const stream = client.query(copyTo(`copy (${query}) to stdout (format binary)`));
  const row = new BinaryRow();
  let left: Buffer | null = null;
  let skip = HEADER;
  for await (const chunk of stream as AsyncIterable<Buffer>) {
    row.bytes = left === null ? chunk : Buffer.concat([left, chunk]);
    if (row.bytes.length < skip) {
      left = row.bytes;
      continue;
    }
    let offset = skip;
    skip = 0;
    for (let next = row.read(offset); next !== null; next = row.read(offset)) {
      if (next < 0) {
        offset = row.bytes.length;
        break;
      }
      take(row);
      offset = next;
    }
    left = offset < row.bytes.length ? row.bytes.subarray(offset) : null;
  }
}
