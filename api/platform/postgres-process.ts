import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import pg from 'pg';

/** What the server of a cluster folder wrote about itself: its process number and its port; null where none does. */
export function readPidFile(folder: string): { pid: number; port: number } | null {
  const file = join(folder, 'postmaster.pid');
  if (!existsSync(file)) return null;
  const lines = readFileSync(file, 'utf8').split('\n');
  const pid = Number(lines[0]);
  const port = Number(lines[3]);
  return pid > 0 && port > 0 ? { pid, port } : null;
}

/**
 * A killed server that its parent has not collected yet still has its process number, and PostgreSQL would take it for
 * running. A number that no process can have lets PostgreSQL go on to its real test, whether anybody still holds the old
 * server's shared memory; without the file it would skip that test.
 */
export function giveUpZombie(folder: string): void {
  const old = readPidFile(folder);
  if (!old || isAlive(old.pid)) return;
  const file = join(folder, 'postmaster.pid');
  const [, ...rest] = readFileSync(file, 'utf8').split('\n');
  writeFileSync(file, [pidBeyondAll, ...rest].join('\n'));
}

/** Linux numbers processes below 2²². */
const pidBeyondAll = 4_194_304;

/** A process that ended but was not yet collected by its parent is not alive. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch {
    return false;
  }
  const stat = `/proc/${pid}/stat`;
  return !existsSync(stat) || !/\) Z /.test(readFileSync(stat, 'utf8'));
}

/** open: it takes our password; busy: it starts or stops; refused: nobody, or somebody else, is there. */
export async function tryConnect(url: string): Promise<'open' | 'busy' | 'refused'> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 3000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
    return 'open';
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    return code === '57P03' ? 'busy' : 'refused';
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** A port of the loopback address that is free at this moment. */
export async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no free port')),
      );
    });
  });
}

/** Waits. */
export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));
