import { randomUUID } from 'node:crypto';
import { buffer } from 'node:stream/consumers';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import pg from 'pg';
import { from, to } from 'pg-copy-streams';
import { migrate } from '../../api/platform/data-source.ts';
import {
  candidateTarget,
  clutchTarget,
  individualTarget,
  lineTarget,
  pairTarget,
  sourceTarget,
  speciesTarget,
} from '../../api/exchange/planned-records.ts';
import { sheetOfClub } from './import-sheet.ts';

/** One line of the bench table. */
export interface ImportRow {
  readonly what: string;
  readonly animals: number;
  readonly seconds: number;
  /** Times the bare COPY. */
  readonly ratio: number;
  /** Most memory of this process meanwhile, above what it had before; the service runs in it. */
  readonly peakMegabytes: number | string;
}

/** A running service with an empty register behind it. */
export interface EmptyRegister {
  /** Address of the service, `http://127.0.0.1:port`. */
  readonly url: string;
  readonly databaseUrl: string;
  /** Of a keeper who may write. */
  readonly token: string;
}

const targets = [speciesTarget, lineTarget, sourceTarget, clutchTarget, individualTarget, candidateTarget, pairTarget];

/**
 * Measures `POST /imports` of a sheet of 100 000 animals against a bare COPY of the same rows into the same tables of another
 * database of the server, and returns the rows of a table. The register is full afterwards.
 *
 * @throws Error where the sheet is refused
 */
export async function benchImport({ url, databaseUrl, token }: EmptyRegister, animals = 100_000): Promise<ImportRow[]> {
  const sheet = Buffer.from(sheetOfClub(animals));
  const dry = await timed(() => send(token, `${url}/api/v1/imports?dryRun=true`, sheet, 200));
  const whole = await timed(() => send(token, `${url}/api/v1/imports`, sheet, 201));
  const bare = await bareCopy(databaseUrl);
  const naked = await bareCopy(databaseUrl, 'naked');
  const row = (what: string, seconds: number, peakMegabytes: number | string): ImportRow => ({
    what,
    animals,
    seconds,
    ratio: seconds / bare,
    peakMegabytes,
  });
  return [
    row('bare COPY of the rows', bare, ''),
    row('the same into tables without keys, indexes and triggers', naked, ''),
    row('sheet checked only', dry.seconds, dry.peakMegabytes),
    row('sheet taken', whole.seconds, whole.peakMegabytes),
  ];
}

async function send(token: string, url: string, sheet: Buffer, status: number): Promise<void> {
  const answer = await fetch(url, {
    method: 'POST',
    headers: { 'Content-Type': 'text/csv', Authorization: `Bearer ${token}` },
    body: new Uint8Array(sheet),
  });
  const text = await answer.text();
  if (answer.status !== status) throw new Error(`the sheet was refused: ${text.slice(0, 500)}`);
}

async function timed(work: () => Promise<void>): Promise<{ seconds: number; peakMegabytes: number }> {
  globalThis.gc?.();
  const before = process.memoryUsage.rss();
  let peak = before;
  const sampling = setInterval(() => (peak = Math.max(peak, process.memoryUsage.rss())), 10);
  const started = performance.now();
  await work();
  const seconds = (performance.now() - started) / 1000;
  clearInterval(sampling);
  peak = Math.max(peak, process.memoryUsage.rss());
  return { seconds, peakMegabytes: (peak - before) / 2 ** 20 };
}

/**
 * Seconds that a COPY of all rows takes in a database that has the schema, the keepers, the import and nothing else; `naked`: into copies of
 * the tables that have columns only.
 */
async function bareCopy(databaseUrl: string, kind: 'real' | 'naked' = 'real'): Promise<number> {
  const full = await connected(databaseUrl);
  const name = `bench_${randomUUID().replaceAll('-', '')}`;
  const address = new URL(databaseUrl);
  address.pathname = `/${name}`;
  await full.query(`create database ${name}`);
  try {
    await migrate(address.href);
    const empty = await connected(address.href);
    try {
      for (const table of ['keeper', 'register_import']) await copyIn(empty, table, await copyOut(full, table));
      const rows: [string, Buffer][] = [];
      for (const target of targets) rows.push([target, await copyOut(full, target)]);
      if (kind === 'naked') await stripTables(empty);
      const started = performance.now();
      await empty.query('begin');
      for (const [target, text] of rows) await copyIn(empty, target, text);
      await empty.query('commit');
      return (performance.now() - started) / 1000;
    } finally {
      await empty.end();
    }
  } finally {
    await full.query(`drop database ${name} with (force)`);
    await full.end();
  }
}

/** Puts tables with the same columns and nothing else before the real ones. */
async function stripTables(client: pg.Client): Promise<void> {
  await client.query('create schema naked');
  for (const target of targets) {
    const table = /^\w+/.exec(target)?.[0] ?? '';
    await client.query(`create table naked.${table} as select * from public.${table} limit 0`);
  }
  await client.query('set search_path = naked');
}

async function connected(connectionString: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString });
  await client.connect();
  return client;
}

const copyOut = (client: pg.Client, target: string): Promise<Buffer> =>
  buffer(client.query(to(`copy ${target} to stdout`)));

async function copyIn(client: pg.Client, target: string, text: Buffer): Promise<void> {
  const pieces = function* (): Generator<Buffer> {
    for (let start = 0; start < text.length; start += 65_536) yield text.subarray(start, start + 65_536);
  };
  await pipeline(Readable.from(pieces(), { objectMode: false }), client.query(from(`copy ${target} from stdin`)));
}
