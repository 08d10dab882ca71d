import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('../../dist/api/main.js', import.meta.url));

/** The built service, run as a person runs it. */
export interface Service {
  readonly process: ChildProcess;
  readonly url: string;
  /** Everything it printed so far. */
  output(): string;
  /** Resolves with the exit code. */
  readonly ended: Promise<number | null>;
}

/** Starts the built service and waits for the line that tells its address. Rejects with its output if it ends before. */
export async function startService(
  environment: Record<string, string>,
  options: { program?: string; user?: number } = {},
): Promise<Service> {
  if (!existsSync(options.program ?? program)) throw new Error('build the service first: npm run build');
  const child = spawn(process.execPath, [options.program ?? program], {
    env: { PATH: process.env['PATH'], HOME: '/nonexistent', PORT: '0', SEED_DEMO: 'false', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
    ...(options.user === undefined ? {} : { uid: options.user, gid: options.user }),
  });
  let printed = '';
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const url = await new Promise<string>((resolve, reject) => {
    const listen = (chunk: Buffer): void => {
      printed += chunk.toString();
      const address = /http:\/\/\S+/.exec(printed)?.[0];
      if (address) resolve(address);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('exit', (code) => reject(new Error(`ended with ${code}: ${printed}`)));
  });
  return { process: child, url, output: () => printed, ended };
}

/** Process numbers of the PostgreSQL servers whose cluster was started for this folder. */
export function serversIn(dataDir: string): number[] {
  const file = `${dataDir}/postgres/postmaster.pid`;
  if (!existsSync(file)) return [];
  const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
  return isRunning(pid) ? [pid] : [];
}

/** Whether a process runs (one that ended and waits for its parent does not). */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return !/\) Z /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    return false;
  }
}
