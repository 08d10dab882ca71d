// @vitest-environment node
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ApiClient } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';

interface Heard {
  method: string;
  url: string;
  headers: IncomingMessage['headers'];
  body: string;
}

let server: Server;
let base = '';
let heard: Heard[] = [];
let answer: (request: Heard, response: ServerResponse) => void;

beforeAll(async () => {
  server = createServer((request, response) => {
    let body = '';
    request.on('data', (chunk) => (body += String(chunk)));
    request.on('end', () => {
      const one = { method: request.method ?? '', url: request.url ?? '', headers: request.headers, body };
      heard.push(one);
      answer(one, response);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api/v1`;
});
afterAll(() => new Promise((resolve) => server.close(resolve)));
beforeEach(() => {
  heard = [];
  answer = (_request, response) => json(response, 200, { id: '7', version: 3 }, { ETag: '"3"' });
});

function json(response: ServerResponse, status: number, body: unknown, headers: Record<string, string> = {}): void {
  response.writeHead(status, { 'Content-Type': 'application/json', ...headers }).end(JSON.stringify(body));
}

const refusalOf = async (asked: Promise<unknown>): Promise<ProblemError> => {
  const error = await asked.then(
    () => null,
    (problem: unknown) => problem,
  );
  if (!(error instanceof ProblemError)) throw new Error(`expected a problem, got ${String(error)}`);
  return error;
};

describe('a read', () => {
  it('leaves out what is not asked and escapes what is', async () => {
    await new ApiClient(base).get('/individuals', {
      query: { q: 'Ä & B', line: '', after: undefined, limit: 50, total: true },
    });
    expect(heard[0]?.url).toBe('/api/v1/individuals?q=%C3%84+%26+B&limit=50&total=true');
  });
});

describe('a change', () => {
  it('is sent with the version that was last read of that record', async () => {
    const api = new ApiClient(base);
    await api.get('/clutches/7');
    await api.patch('/clutches/7', { eggs: 9 });
    expect(heard[1]?.headers['if-match']).toBe('"3"');
    expect(JSON.parse(heard[1]?.body ?? '')).toEqual({ eggs: 9 });
  });

  it('of a part of a record goes by the version of the record', async () => {
    const api = new ApiClient(base);
    await api.get('/clutches/7');
    await api.post('/clutches/7/withdrawal', { reason: 'twice' });
    expect(heard[1]?.headers['if-match']).toBe('"3"');
  });

  it('remembers the version that a new record is born with', async () => {
    const api = new ApiClient(base);
    await api.post('/clutches', { eggs: 8 });
    await api.patch('/clutches/7', { eggs: 9 });
    expect(heard[1]?.headers['if-match']).toBe('"3"');
  });

  it('says the version that its writer saw, even when another was read since', async () => {
    const api = new ApiClient(base);
    await api.get('/clutches/7');
    await api.patch('/clutches/7', { eggs: 9 }, { version: 2 });
    expect(heard[1]?.headers['if-match']).toBe('"2"');
  });

  it('knows nothing of the versions of other records', async () => {
    const api = new ApiClient(base);
    await api.get('/clutches/7');
    await api.patch('/clutches/71', { eggs: 9 });
    expect(heard[1]?.headers['if-match']).toBeUndefined();
  });
});

describe('a POST', () => {
  it('carries a fresh key each time it writes, and none when it only asks', async () => {
    const api = new ApiClient(base);
    await api.post('/clutches', {});
    await api.post('/clutches', {});
    await api.ask('/lineage/figures', { individuals: [] });
    const keys = heard.map((request) => request.headers['idempotency-key']);
    expect(keys[0]).toMatch(/^[0-9a-f]{32}$/);
    expect(keys[1]).not.toBe(keys[0]);
    expect(keys[2]).toBeUndefined();
  });
});

describe('a refusal', () => {
  it('is thrown with its places', async () => {
    answer = (_request, response) =>
      json(response, 422, {
        type: '/api/problems/invalid',
        title: 'Not valid',
        status: 422,
        detail: 'Two fields are wrong.',
        errors: [{ pointer: '/laid', detail: 'No date.' }, 'garbage'],
      });
    const problem = await refusalOf(new ApiClient(base).post('/clutches', {}));
    expect(problem).toMatchObject({
      status: 422,
      slug: 'invalid',
      title: 'Not valid',
      detail: 'Two fields are wrong.',
    });
    expect(problem.errors).toEqual([{ pointer: '/laid', detail: 'No date.' }]);
  });

  it('is understood even when a server in between speaks HTML', async () => {
    answer = (_request, response) => response.writeHead(502).end('<h1>Bad gateway</h1>');
    const problem = await refusalOf(new ApiClient(base).get('/club'));
    expect(problem.status).toBe(502);
    expect(problem.detail).toContain('502');
  });

  it('by silence says that nothing typed is lost', async () => {
    answer = (_request, response) => response.destroy();
    const problem = await refusalOf(new ApiClient(base).post('/clutches', {}));
    expect(problem.status).toBe(0);
    expect(problem.detail).toContain('still here');
  });
});

it('takes an answer without a body', async () => {
  answer = (_request, response) => response.writeHead(204).end();
  expect(await new ApiClient(base).delete('/clutches/7/warnings/old/confirmation')).toBeUndefined();
});
