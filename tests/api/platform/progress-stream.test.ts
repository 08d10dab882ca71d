import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { InbreedingSpreadView } from '../../../api/lineage/inbreeding-spread.view.ts';
import { bodyOf, having, type ProblemBody } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { allEventsOf, eventsOf, openStream, type StreamEvent } from '../../support/event-stream.ts';
import { writeSketch } from '../../support/register-sketch.ts';
import { vagueHerd } from '../../support/vague-herd.ts';

interface Progress {
  readonly done: number;
  readonly total: number;
}

describe('a long question answered by a stream', () => {
  let api: TestApi;
  let keeper: TestKeeper;
  /** An animal whose spread takes some tenths of a second, and one whose takes a minute. */
  let quick: string;
  let slow: string;

  beforeAll(async () => {
    api = await startApi();
    keeper = await api.addKeeper('Follower');
    const { individuals } = await writeSketch(api.dataSource, vagueHerd(400));
    quick = `/api/v1/individuals/${individuals[8 * 12] ?? ''}/lineage/spread?samples=5000&seed=3`;
    slow = `/api/v1/individuals/${individuals.at(-1) ?? ''}/lineage/spread?samples=100000`;
  });
  beforeEach(() => api.dataSource.query('delete from rate_limit'));
  afterAll(() => api.close());

  it('tells its progress, then the result, which is what one JSON answer says', async () => {
    const answer = await openStream(api, quick, keeper.token);
    expect(answer.status).toBe(200);
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store, no-transform',
      'x-accel-buffering': 'no',
      'x-content-type-options': 'nosniff',
    });
    const events = await allEventsOf(answer);
    const progress = events.filter(({ event }) => event === 'progress').map(({ data }) => data as Progress);
    expect(progress.length).toBeGreaterThan(10);
    expect(progress.every(({ total }) => total === 5000)).toBe(true);
    expect(progress.map(({ done }) => done)).toEqual(progress.map(({ done }) => done).sort((a, b) => a - b));
    expect(events.at(-1)?.event).toBe('result');
    expect(events.filter(({ event }) => event === 'result')).toHaveLength(1);
    const plain = await keeper.http.get(quick).set('Accept', 'application/json').expect(200);
    expect(events.at(-1)?.data).toEqual(bodyOf<InbreedingSpreadView>(plain));
    expect(plain.headers.vary).toContain('Accept');
  });

  it('refuses what can be refused at once with a status of its own', async () => {
    const nobody = await openStream(api, '/api/v1/individuals/1-1/lineage/spread', keeper.token);
    expect([nobody.status, nobody.headers.get('content-type')]).toEqual([
      404,
      'application/problem+json; charset=utf-8',
    ]);
    const unknown = await openStream(api, quick, 'nobody');
    expect(unknown.status).toBe(401);
  });

  it('tells a problem that turns up later by an event', async () => {
    const events = await allEventsOf(await openStream(api, slow, keeper.token));
    expect(events.at(-1)).toEqual({
      event: 'problem',
      data: having({ status: 422, type: '/api/problems/invalid', instance: slow }),
    });
    const plain = await keeper.http.get(slow).expect(422);
    const fits = Number(/Ask for (\d+) samples at most/.exec(bodyOf<ProblemBody>(plain).detail)?.[1]);
    expect(fits).toBeGreaterThan(100);
  });

  const lasting = (): string => slow.replace('100000', '60000');

  it('ends the work when its reader leaves, and the next one begins at once', async () => {
    const leaving = new AbortController();
    const left: StreamEvent[] = [];
    for await (const event of eventsOf(await openStream(api, lasting(), keeper.token, leaving.signal))) {
      left.push(event);
      if (left.length === 2) break; // leaves
    }
    leaving.abort();
    expect(left.map(({ event }) => event)).toEqual(['progress', 'progress']);
    const started = performance.now();
    const events = await allEventsOf(await openStream(api, quick, keeper.token));
    expect(events.at(-1)?.event).toBe('result');
    // with one thread for questions it would have waited for the other to end, a minute or so
    expect(performance.now() - started).toBeLessThan(10_000);
  });

  it('ends the work when whoever asked for JSON leaves', async () => {
    const leaving = new AbortController();
    const asked = fetch(`${api.url}${lasting()}`, {
      headers: { Authorization: `Bearer ${keeper.token}` },
      signal: leaving.signal,
    });
    setTimeout(() => leaving.abort(), 500);
    await expect(asked).rejects.toMatchObject({ name: 'AbortError' });
    const events = await allEventsOf(await openStream(api, quick, keeper.token));
    expect(events.at(-1)?.event).toBe('result');
  });

  it('holds up no other request meanwhile', async () => {
    const leaving = new AbortController();
    const stream = eventsOf(await openStream(api, lasting(), keeper.token, leaving.signal));
    await stream.next();
    const milliseconds: number[] = [];
    for (let count = 0; count < 40; count++) {
      const start = performance.now();
      await api.stranger.get('/api/health/live').expect(200);
      milliseconds.push(performance.now() - start);
    }
    leaving.abort();
    expect(milliseconds.sort((one, other) => one - other)[20]).toBeLessThan(100);
  });

  it('is open eight times for one keeper and no more', async () => {
    const leaving = new AbortController();
    // held on to: an answer that is collected as garbage closes its connection
    const answers: Response[] = [];
    for (let line = 0; line < 9; line++) answers.push(await openStream(api, lasting(), keeper.token, leaving.signal));
    const statuses = answers.map(({ status }) => status);
    leaving.abort();
    expect(statuses).toEqual([...new Array<number>(8).fill(200), 429]);
  });

  it('is ended, and its work, when the service stops', async () => {
    const copy = await startApiOn(api.databaseUrl);
    const events: StreamEvent[] = [];
    const stream = eventsOf(await openStream(copy, lasting(), keeper.token));
    events.push((await stream.next()).value as StreamEvent);
    const started = performance.now();
    await copy.close();
    expect(performance.now() - started).toBeLessThan(5000);
    for await (const event of stream) events.push(event);
    // a stop is told where there is still time to tell it, and never as a result
    expect(events.map(({ event }) => event)).not.toContain('result');
  });
});
