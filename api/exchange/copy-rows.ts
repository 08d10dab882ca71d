import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ClientBase } from 'pg';
import { from } from 'pg-copy-streams';

/** A value of a column; null is SQL's null. */
export type CopyValue = string | number | null;

/** How much text goes to the database at once. */
const chunkLength = 65_536;

/**
 * Writes rows by COPY, in one statement, holding no more than a chunk of them.
 *
 * @param target table and columns as SQL: `line (id, name)`
 */
export async function copyRows(
  client: ClientBase,
  target: string,
  rows: Iterable<readonly CopyValue[]>,
): Promise<void> {
  const stream = client.query(from(`copy ${target} from stdin`));
  await pipeline(Readable.from(chunks(rows), { objectMode: false }), stream);
}

function* chunks(rows: Iterable<readonly CopyValue[]>): Generator<Buffer> {
  let text = '';
  for (const row of rows) {
    text += `${row.map(copyText).join('\t')}\n`;
    if (text.length < chunkLength) continue;
    yield Buffer.from(text);
    text = '';
  }
  if (text !== '') yield Buffer.from(text);
}

/** A value in PostgreSQL's text format of COPY. Numbers keep every digit. */
function copyText(value: CopyValue): string {
  if (value === null) return '\\N';
  if (typeof value === 'number') return String(value);
  return /[\\\n\r\t]/.test(value)
    ? value.replace(/[\\\n\r\t]/g, (character) => escapes[character] ?? character)
    : value;
}

const escapes: Record<string, string> = { '\\': '\\\\', '\n': '\\n', '\r': '\\r', '\t': '\\t' };
