import { EventEmitter, once } from 'node:events';
import { createServer, request, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import express from 'express';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { signalOf } from '../../../api/platform/given-up.ts';

/** `came` with the answer when a request has come, `go` to let it take its signal, `signal` with that. */
const course = new EventEmitter();
const app = express();
app.get('/', async (asked, answer) => {
  const go = once(course, 'go');
  course.emit('came', answer);
  await go;
  course.emit('signal', signalOf(asked));
});
const server = createServer(app);

beforeAll(async () => {
  await once(server.listen(0, '127.0.0.1'), 'listening');
});
afterAll(() => {
  server.close();
});

/** Asks, and gives the answer under way and how to leave. */
async function ask(): Promise<{ leave: () => Promise<void> }> {
  const came = once(course, 'came') as Promise<[ServerResponse]>;
  const { port } = server.address() as AddressInfo;
  const asker = request({ port, host: '127.0.0.1' }).on('error', () => undefined);
  asker.end();
  const [answer] = await came;
  return {
    leave: async () => {
      const closed = once(answer, 'close');
      asker.destroy();
      await closed;
    },
  };
}

async function go(): Promise<AbortSignal> {
  const signal = once(course, 'signal') as Promise<[AbortSignal]>;
  course.emit('go');
  return (await signal)[0];
}

describe('a question that nobody waits for any more', () => {
  it('is given up when the asker leaves', async () => {
    const { leave } = await ask();
    const signal = await go();
    expect(signal.aborted).toBe(false);
    await leave();
    expect(signal.aborted).toBe(true);
  });

  it('is not begun where the asker left while it was found out who asks', async () => {
    const { leave } = await ask();
    await leave();
    expect((await go()).aborted).toBe(true);
  });
});
