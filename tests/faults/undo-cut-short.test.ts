import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { expect, it } from 'vitest';
import { hashOfSecret, tokenPrefix } from '../../api/people/secrets.ts';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase } from '../../api/platform/embedded-database.ts';
import { serversIn, startService } from '../support/service.ts';

const rows = 30_000;
const sheet = ['code,species,sire,dam', 'A,Epipedobates anthonyi,,', 'B,Epipedobates anthonyi,,']
  .concat(Array.from({ length: rows - 2 }, (_, at) => `Y${at},Epipedobates anthonyi,A,B`))
  .join('\n');
const token = tokenPrefix + randomBytes(24).toString('base64url');

interface Undone {
  readonly id: string;
  readonly withdrawn: unknown;
  readonly standing: { readonly individuals: number; readonly clutches: number; readonly species: number };
}

function ask(url: string, method: string, path: string, type = 'application/json', body?: string): Promise<Response> {
  const headers = { authorization: `Bearer ${token}`, ...(body === undefined ? {} : { 'content-type': type }) };
  return fetch(`${url}/api/v1/${path}`, { method, headers, ...(body === undefined ? {} : { body }) });
}

/** A club with one keeper, straight by SQL. */
async function addKeeper(databaseUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  await client.query(`insert into club (name) values ('Faults')`);
  await client.query(
    `with keeper as (insert into keeper (name) values ('Keeper') returning id)
     insert into access_token (keeper_id, name, scope, token_hash) select id, 'test', 'write', $1 from keeper`,
    [hashOfSecret(token)],
  );
  await client.end();
}

it.each([100, 600, 1500, 5000])(
  'an import whose undo is killed after %i ms is undone whole or not at all, and can be undone and restored again',
  async (delay) => {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-undo-'));
    try {
      const before = await startEmbeddedDatabase(folder);
      await migrate(before.url);
      await addKeeper(before.url);
      const first = await startService({ DATABASE_URL: before.url, DATA_DIR: folder });
      const taken = await ask(first.url, 'POST', 'imports', 'text/csv', sheet);
      expect(taken.status).toBe(201);
      const { id } = (await taken.json()) as Undone;
      const undo = (url: string): Promise<Response> =>
        ask(url, 'POST', `imports/${id}/withdrawal`, 'application/json', '{"reason":"the wrong file"}');
      const answer = undo(first.url).catch(() => null);
      await new Promise((resolve) => setTimeout(resolve, delay));
      first.process.kill('SIGKILL');
      for (const pid of serversIn(folder)) process.kill(pid, 'SIGKILL');
      await Promise.all([first.ended, answer]);

      const after = await startEmbeddedDatabase(folder);
      const second = await startService({ DATABASE_URL: after.url, DATA_DIR: folder });
      const look = async (): Promise<Undone> =>
        (await (await ask(second.url, 'GET', `imports/${id}`)).json()) as Undone;
      const found = await look();
      const all = { individuals: rows, clutches: rows - 2, species: 1 };
      const none = { individuals: 0, clutches: 0, species: 0 };
      expect(found.standing).toMatchObject(found.withdrawn === null ? all : none);
      expect((await undo(second.url)).status).toBe(found.withdrawn === null ? 201 : 409);
      expect((await look()).standing).toMatchObject(none);
      expect((await ask(second.url, 'DELETE', `imports/${id}/withdrawal`)).status).toBe(200);
      expect(await look()).toMatchObject({ withdrawn: null, standing: all });
      second.process.kill('SIGTERM');
      expect(await second.ended).toBe(0);
      await after.stop();
    } finally {
      for (const pid of serversIn(folder)) process.kill(pid, 'SIGQUIT');
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
