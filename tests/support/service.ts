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
      const address = /https?:\/\/\S+/.exec(printed)?.[0];
      if (address) resolve(address);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('exit', (code) => reject(new Error(`ended with ${code}: ${printed}`)));
  });
  return { process: child, url, output: () => printed, ended };
}

/** The first administrator of a club that a test set up. */
export const administrator = { name: 'Keeper', password: 'moss under the third lamp' };

/** Sets the club of a started service up with the code that it printed. Gives the cookie of its first administrator. */
export async function setUpClub(service: Service): Promise<string> {
  const code = /with this code: (\S+)/.exec(service.output())?.[1];
  if (code === undefined) throw new Error(`no code was printed: ${service.output()}`);
  return signedIn(service, 'setup', { code, clubName: 'My register', ...administrator });
}

/** Signs in as an invented keeper of the demo club; left out, as the one who may do everything. Gives the cookie. */
export async function signInToDemo(service: Service, name = 'Orla Venndrick'): Promise<string> {
  const session = (await (await fetch(`${service.url}/api/v1/session`)).json()) as {
    demoKeepers: { id: string; name: string }[];
  };
  const keeper = session.demoKeepers.find((each) => each.name === name);
  return signedIn(service, 'session/demo', { keeperId: keeper?.id });
}

/** Sends a request as whoever the cookie belongs to, as a page of the service itself would. */
export function askAs(cookie: string, url: string, init: RequestInit = {}): Promise<Response> {
  const headers = new Headers(init.headers);
  headers.set('cookie', cookie);
  headers.set('origin', new URL(url).origin);
  return fetch(url, { ...init, headers });
}

async function signedIn(service: Service, path: string, body: object): Promise<string> {
  const answer = await fetch(`${service.url}/api/v1/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  const cookie = answer.headers.getSetCookie()[0]?.split(';')[0];
  if (answer.status !== 201 || cookie === undefined)
    throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
  return cookie;
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
