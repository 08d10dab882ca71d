import { once } from 'node:events';
import { CsvError, parse } from 'csv-parse';
import { ProblemList } from './problem-list.ts';
import { guessDelimiter } from './sheet-delimiter.ts';
import { SheetRows, quoting } from './sheet-rows.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** A register sheet as read: its cells, and what was wrong with them as cells. */
export interface Sheet {
  readonly table: SheetTable;
  readonly problems: ProblemList;
  readonly warnings: ProblemList;
}

/** How much of the file is looked at before reading begins; the header row must fit into it. */
const headBytes = 65_536;
/** Longest row in characters: above all a guard against a quotation mark that swallows the rest of the file. */
const longestRow = 400_000;

/**
 * Reads a register sheet from a stream of bytes, holding no more than the table that comes out of it. Nothing about the
 * content makes it throw; all that is wrong goes into `problems`. Errors of the stream itself pass through.
 */
export async function readSheet(chunks: AsyncIterable<Uint8Array>): Promise<Sheet> {
  const problems = new ProblemList();
  const warnings = new ProblemList();
  const rows = new SheetRows(problems, warnings);
  const pending: Buffer[] = [];
  let pendingBytes = 0;
  let parser: RowParser | null = null;
  for await (const chunk of chunks) {
    if (rows.stopped) continue; // drain the rest, so that whoever sends it hears the answer
    const bytes = Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength);
    if (parser === null) {
      pending.push(bytes);
      pendingBytes += bytes.length;
      if (pendingBytes >= headBytes) parser = await begin(Buffer.concat(pending), rows, problems);
    } else await parser.write(bytes);
  }
  parser ??= await begin(Buffer.concat(pending), rows, problems);
  await parser?.end();
  if (problems.total === 0) {
    if (!rows.hasHeader)
      problems.add(1, '', say`The file is empty. The first row must name the columns, at least "code".`);
    else if (rows.table.length === 0)
      problems.add(rows.row, '', say`The sheet has a header and no animals. Each row below the header is one animal.`);
  }
  return { table: rows.table, problems, warnings };
}

async function begin(head: Buffer, rows: SheetRows, problems: ProblemList): Promise<RowParser | null> {
  const wrongEncoding = encodingProblem(head);
  if (wrongEncoding !== null) {
    problems.add(1, '', wrongEncoding);
    rows.stopped = true;
    return null;
  }
  const { delimiter, start } = openingOf(head);
  const parser = new RowParser(delimiter ?? guessDelimiter(head.subarray(start, headBytes + start)), rows, problems);
  await parser.write(head.subarray(start));
  return parser;
}

/** Where the rows begin: after a byte order mark and after the line `sep=;` that some spreadsheet programs put first. */
function openingOf(head: Buffer): { delimiter: string | null; start: number } {
  const mark = head.subarray(0, 3).equals(Buffer.from([0xef, 0xbb, 0xbf])) ? 3 : 0;
  const line = /^"?sep=([,;\t])"?(?:\r\n|\n|\r)/i.exec(head.subarray(mark, mark + 16).toString('latin1'));
  return { delimiter: line?.[1] ?? null, start: mark + (line?.[0].length ?? 0) };
}

function encodingProblem(head: Buffer): string | null {
  const [first, second] = head;
  const marked = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  if (marked || head.subarray(0, 4).includes(0))
    return say`The file is UTF-16, not UTF-8. Save the sheet as CSV in UTF-8 ("CSV UTF-8" in most spreadsheet programs).`;
  const isArchive = head.subarray(0, 4).equals(Buffer.from('PK\x03\x04', 'latin1'));
  if (isArchive || head.subarray(0, 4).equals(Buffer.from('\xd0\xcf\x11\xe0', 'latin1')))
    return say`The file is a workbook or an archive, not text. Save the sheet as CSV in UTF-8 and send that file.`;
  return null;
}

/** The CSV library, fed with bytes, handing rows on. */
class RowParser {
  readonly #parser: ReturnType<typeof parse>;
  readonly #rows: SheetRows;
  readonly #problems: ProblemList;
  #failure: Error | undefined;

  constructor(delimiter: string, rows: SheetRows, problems: ProblemList) {
    this.#rows = rows;
    this.#problems = problems;
    this.#parser = parse({
      delimiter,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      relax_quotes: true,
      max_record_size: longestRow,
      on_record: (record: string[]) => {
        rows.take(record);
        return null; // rows go into the table, none waits in the stream
      },
    });
    this.#parser.on('error', (error) => this.#fail(error));
    this.#parser.resume();
  }

  async write(bytes: Buffer): Promise<void> {
    if (!this.#rows.stopped && !this.#parser.write(bytes)) await this.#settled('drain');
  }

  async end(): Promise<void> {
    if (!this.#rows.stopped) {
      this.#parser.end();
      await this.#settled('end');
    }
    this.#parser.destroy();
  }

  /** Waits for an event of the library, or for its failure. Throws what is no fault of the file. */
  async #settled(event: 'drain' | 'end'): Promise<void> {
    await once(this.#parser, event).catch((error: unknown) => this.#fail(error));
    if (this.#failure !== undefined) throw this.#failure;
  }

  #fail(error: unknown): void {
    if (this.#rows.stopped) return;
    this.#rows.stopped = true;
    const row = this.#rows.row + 1;
    if (!(error instanceof CsvError)) this.#failure = error instanceof Error ? error : new Error(String(error));
    else if (error.code === 'CSV_QUOTE_NOT_CLOSED')
      this.#problems.add(row, '', say`A quotation mark opened in this row is never closed. ${quoting}`);
    else if (error.code === 'CSV_MAX_RECORD_SIZE')
      this.#problems.add(
        row,
        '',
        say`This row is longer than ${longestRow} characters; probably a quotation mark in it is not closed. ${quoting}`,
      );
    else this.#problems.add(row, '', say`This row cannot be read as CSV. ${quoting}`);
  }
}
