import pg from 'pg';
import { LineageMemory } from '../../api/lineage/lineage-memory.ts';
import { readLineage } from '../../api/lineage/read-lineage.ts';

/*
 * A process of its own that reads a register as the service does at its start, so that the memory it takes is that and nothing else.
 * Prints one line of JSON: animals, seconds, megabytes at the peak and megabytes that stay.
 */
const client = new pg.Client({ connectionString: process.argv[2] });
await client.connect();
globalThis.gc?.();
const before = process.memoryUsage.rss();
const started = performance.now();
await client.query('begin isolation level repeatable read read only');
const { parts } = await readLineage(client, { frontierBytes: 512 * 2 ** 20 });
await client.query('commit');
const memory = new LineageMemory(parts);
const { graph } = memory.show();
const seconds = (performance.now() - started) / 1000;
const peak = process.resourceUsage().maxRSS / 1024 - before / 2 ** 20;
globalThis.gc?.();
const kept = (process.memoryUsage.rss() - before) / 2 ** 20;
await client.end();
console.log(
  JSON.stringify({ animals: graph.pedigree.clutchOf.length, seconds, peakMegabytes: peak, keptMegabytes: kept }),
);
