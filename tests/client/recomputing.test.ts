// @vitest-environment node
import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { eventReader, readEvents, type StreamEvent } from '$lib/api/event-stream.ts';
import { currencyOf, Recomputing } from '$lib/figures/recomputing.svelte.ts';

/** The page as far as this looks at it: whether it is in sight. */
const page = Object.assign(new EventTarget(), { hidden: false });
const show = (isShown: boolean): void => {
  page.hidden = !isShown;
  page.dispatchEvent(new Event('visibilitychange'));
};

let server: Server;
let address = '';
let asked: ServerResponse[] = [];
let answer: (response: ServerResponse) => void;

beforeAll(async () => {
  vi.stubGlobal('document', page);
  server = createServer((_request, response) => {
    asked.push(response);
    answer(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/lineage/progress`;
});
afterAll(() => {
  vi.unstubAllGlobals();
  server.closeAllConnections();
  server.close();
});
beforeEach(() => {
  asked = [];
  answer = (response) => response.writeHead(200, { 'Content-Type': 'text/event-stream' }).flushHeaders();
});

const told = (data: object): string => `event: progress\ndata: ${JSON.stringify(data)}\n\n`;
const until = (condition: () => boolean) => vi.waitFor(() => expect(condition()).toBe(true), { timeout: 8000 });

describe('a stream of events', () => {
  const text =
    ': here\n\nevent: progress\ndata: {"done":1}\r\n\r\nevent: result\ndata: {"words":\ndata: "Ä"}\n\ndata: 7\n\n';
  const events: StreamEvent[] = [
    { name: 'progress', data: { done: 1 } },
    { name: 'result', data: { words: 'Ä' } },
    { name: 'message', data: 7 },
  ];

  it('is read the same wherever it is cut', () => {
    for (let size = 1; size <= text.length; size++) {
      const found: StreamEvent[] = [];
      const take = eventReader((event) => found.push(event));
      for (let at = 0; at < text.length; at += size) take(text.slice(at, at + size));
      expect(found).toEqual(events);
    }
  });

  it('keeps back what has not ended', () => {
    const found: StreamEvent[] = [];
    eventReader((event) => found.push(event))('event: progress\ndata: {"done":1}\n');
    expect(found).toEqual([]);
  });

  it('tells a refusal as the service says it', async () => {
    answer = (response) =>
      response
        .writeHead(403, { 'Content-Type': 'application/problem+json' })
        .end(JSON.stringify({ title: 'Not yours', detail: 'Only members may ask.' }));
    await expect(readEvents(address, () => undefined)).rejects.toMatchObject({
      status: 403,
      detail: 'Only members may ask.',
    });
  });
});

describe('what an answer says of its figures', () => {
  it('is read from itself or from the entries of a list', () => {
    expect(currencyOf({ current: false })).toBe(false);
    expect(currencyOf({ items: [{ current: true }, { current: false }] })).toBe(false);
    expect(currencyOf({ items: [{ current: true }, {}] })).toBe(true);
    // the problem of a record that was changed meanwhile has a record under that name
    for (const other of [null, 'text', {}, { items: 3 }, { current: { id: 'a' } }])
      expect(currencyOf(other)).toBeUndefined();
  });
});

describe('figures that are being recomputed', () => {
  it('are followed from the first old answer until they are current, and only then', async () => {
    const watch = new Recomputing(address);
    watch.hear({ current: true });
    watch.hear({ items: [] });
    expect(watch.isOn).toBe(false);
    watch.hear({ current: false });
    watch.hear({ current: false });
    expect(watch.isOn).toBe(true);
    await until(() => asked.length === 1);
    asked[0]?.write(told({ current: false, done: 42, total: 100 }));
    await until(() => watch.part === 0.42);
    asked[0]?.write(told({ current: true, done: 100, total: 100 }));
    await until(() => watch.finished === 1);
    expect(watch.isOn).toBe(false);
    await until(() => asked[0]?.destroyed === true || asked[0]?.closed === true);
    expect(asked).toHaveLength(1);
  });

  it('are looked for once after a change, and followed where they are old', async () => {
    const watch = new Recomputing(address);
    answer = (response) => response.writeHead(200).end(JSON.stringify({ current: true, done: 0, total: 0 }));
    watch.hear({ id: 'a' }, true);
    await until(() => asked.length === 1);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(watch.isOn).toBe(false);
    answer = (response) => response.writeHead(200).end(JSON.stringify({ current: false, done: 0, total: 0 }));
    watch.hear({ id: 'a' }, true);
    await until(() => watch.isOn);
    answer = (response) => response.writeHead(200).write(told({ current: true }));
    await until(() => watch.finished === 1);
  });

  it('are asked for again after a lost connection', async () => {
    const watch = new Recomputing(address);
    watch.hear({ current: false });
    await until(() => asked.length === 1);
    asked[0]?.destroy();
    await until(() => asked.length === 2);
    asked[1]?.write(told({ current: true, done: 0, total: 0 }));
    await until(() => watch.finished === 1);
  });

  it('are left alone where the service refuses to tell', async () => {
    answer = (response) => response.writeHead(404).end();
    const watch = new Recomputing(address);
    watch.hear({ current: false });
    await until(() => !watch.isOn);
    expect(watch.finished).toBe(0);
  });

  it('are not listened to while the page is hidden', async () => {
    show(false);
    const watch = new Recomputing(address);
    watch.hear({ current: false });
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(asked).toHaveLength(0);
    show(true);
    await until(() => asked.length === 1);
    show(false);
    await until(() => asked[0]?.destroyed === true || asked[0]?.closed === true);
    show(true);
    await until(() => asked.length === 2);
    asked[1]?.write(told({ current: true }));
    await until(() => watch.finished === 1);
  });
});
