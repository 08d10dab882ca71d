import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { writeSketch } from '../../support/register-sketch.ts';

interface Progress {
  readonly current: boolean;
  readonly done: number;
  readonly total: number;
}

/** Reads the events of a stream until one pleases, and leaves. */
async function follow(api: TestApi, token: string, pleases: (progress: Progress) => boolean): Promise<Progress[]> {
  const leaving = new AbortController();
  const answer = await fetch(`${api.url}/api/v1/lineage/progress`, {
    headers: { Accept: 'text/event-stream', Authorization: `Bearer ${token}` },
    signal: leaving.signal,
  });
  expect(answer.headers.get('content-type')).toContain('text/event-stream');
  const seen: Progress[] = [];
  let text = '';
  for await (const chunk of answer.body as unknown as AsyncIterable<Uint8Array>) {
    text += new TextDecoder().decode(chunk);
    const events = text.split('\n\n');
    text = events.pop() ?? '';
    for (const event of events) {
      const data = /^event: progress\ndata: (.*)$/.exec(event)?.[1];
      if (data !== undefined) seen.push(JSON.parse(data) as Progress);
    }
    const last = seen.at(-1);
    if (last && pleases(last)) break;
  }
  leaving.abort();
  return seen;
}

describe('the progress of the figures', () => {
  let api: TestApi;
  let other: TestApi;
  let keeper: TestKeeper;

  beforeAll(async () => {
    api = await startApi();
    other = await startApiOn(api.databaseUrl);
    keeper = await api.addKeeper('Follower');
    await writeSketch(api.dataSource, { clutches: [], individuals: Array.from({ length: 30 }, () => ({})) });
  });
  afterAll(async () => {
    await other.close();
    await api.close();
  });

  const changeEverything = (): Promise<unknown> =>
    api.dataSource.query(
      `with next as (update lineage_revision set revision = revision + 1 returning revision)
       insert into lineage_change (revision, kind) select revision, 'everything' from next`,
    );

  it('is told by one answer', async () => {
    await changeEverything();
    const answer = await keeper.http.get('/api/v1/lineage/progress').expect(200);
    expect(answer.body).toMatchObject({ current: false });
  });

  it('is followed from another copy of the service until the figures are current', async () => {
    await changeEverything();
    const following = follow(other, keeper.token, ({ current }) => current);
    // any change of the lineage asks for the job
    await api.http.post('/api/v1/clutches').send({}).expect(201);
    const seen = await following;
    expect(seen[0]?.current).toBe(false);
    expect(seen.at(-1)?.current).toBe(true);
  });

  it('is not told to strangers', async () => {
    await api.stranger.get('/api/v1/lineage/progress').set('Accept', 'text/event-stream').expect(401);
  });

  it('is told on eight lines of one keeper at once, and no more', async () => {
    const leaving = new AbortController();
    const ask = (): Promise<Response> =>
      fetch(`${api.url}/api/v1/lineage/progress`, {
        headers: { Accept: 'text/event-stream', Authorization: `Bearer ${keeper.token}` },
        signal: leaving.signal,
      });
    const answers = [];
    for (let line = 0; line < 9; line++) answers.push((await ask()).status);
    expect(answers).toEqual([...new Array<number>(8).fill(200), 429]);
    leaving.abort();
  });

  it('ends its lines when the service stops', async () => {
    const copy = await startApiOn(api.databaseUrl);
    const line = await fetch(`${copy.url}/api/v1/lineage/progress`, {
      headers: { Accept: 'text/event-stream', Authorization: `Bearer ${keeper.token}` },
    });
    const reader = line.body?.getReader();
    expect(new TextDecoder().decode((await reader?.read())?.value)).toContain('event: progress');
    await copy.close();
    expect((await reader?.read())?.done).toBe(true);
  });
});
