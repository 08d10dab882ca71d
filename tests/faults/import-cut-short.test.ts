import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { askAs, serversIn, setUpClub, startService } from '../support/service.ts';

const rows = 30_000;
const sheet = ['code,species,sire,dam', 'A,Epipedobates anthonyi,,', 'B,Epipedobates anthonyi,,']
  .concat(Array.from({ length: rows - 2 }, (_, at) => `Y${at},Epipedobates anthonyi,A,B`))
  .join('\n');

const send = (cookie: string, url: string): Promise<Response> =>
  askAs(cookie, `${url}/api/v1/imports`, { method: 'POST', headers: { 'content-type': 'text/csv' }, body: sheet });

const countAt = async (cookie: string, url: string): Promise<number> => {
  const page = (await (await askAs(cookie, `${url}/api/v1/individuals?limit=1&total=true`)).json()) as {
    total: number;
  };
  return page.total;
};

it.each([300, 700, 1200, 2000])(
  'a sheet whose import is killed after %i ms is in the register whole or not at all, and can be sent again',
  async (delay) => {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-cut-'));
    const environment = { DATA_DIR: join(folder, 'data') };
    try {
      const first = await startService(environment);
      const cookie = await setUpClub(first);
      const answer = send(cookie, first.url).catch(() => null);
      await new Promise((resolve) => setTimeout(resolve, delay));
      first.process.kill('SIGKILL');
      for (const pid of serversIn(environment.DATA_DIR)) process.kill(pid, 'SIGKILL');
      await Promise.all([first.ended, answer]);
      const second = await startService(environment);
      const found = await countAt(cookie, second.url);
      expect([0, rows]).toContain(found);
      expect((await send(cookie, second.url)).status).toBe(found === 0 ? 201 : 422);
      expect(await countAt(cookie, second.url)).toBe(rows);
      second.process.kill('SIGTERM');
      expect(await second.ended).toBe(0);
    } finally {
      for (const pid of serversIn(environment.DATA_DIR)) process.kill(pid, 'SIGQUIT');
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
