import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';
import { storedEntries } from './stored-entries.ts';

let api: TestApi;
let second: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  second = await startApiOn(api.databaseUrl);
  make = new Factory(api.http);
});

afterAll(async () => {
  await second.close();
  await api.close();
});

const writers = 50;

/** Fifty writers of one record at once, through two copies of the service, each with words of its own. */
async function writeAtOnce(id: string, tag: (writer: number) => string): Promise<Response[]> {
  // tests send in a second more than a keeper may in minutes
  await api.dataSource.query('delete from rate_limit');
  return Promise.all(
    Array.from({ length: writers }, (_, writer) =>
      (writer % 2 === 0 ? api : second).http
        .patch(`/api/v1/individuals/${id}`)
        .set('If-Match', tag(writer))
        .send({ notes: `writer ${writer}` })
        .then((answer) => answer),
    ),
  );
}

interface Told {
  readonly notes: string | null;
}

/** The changes of a record in the journal, by version: each goes on from what the one before left. */
async function chainOf(id: string): Promise<{ version: number | null; before: string | null; after: string | null }[]> {
  const entries = await storedEntries(api.dataSource, `record_id = $1 and action = 'changed'`, [id]);
  return entries
    .map(({ recordVersion, before, after }) => ({
      version: recordVersion,
      before: (before as unknown as Told).notes,
      after: (after as unknown as Told).notes,
    }))
    .sort((one, other) => (one.version ?? 0) - (other.version ?? 0));
}

describe('fifty writers of one record at once', () => {
  it('who take whatever is there all stand in the journal, each on the one before', async () => {
    const { id } = await make.individual({ notes: 'nobody' });
    const answers = await writeAtOnce(id, () => '*');
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 200));
    const chain = await chainOf(id);
    expect(chain.map(({ version }) => version)).toEqual(Array.from({ length: writers }, (_, index) => index + 2));
    expect(chain.map(({ before }) => before)).toEqual(['nobody', ...chain.slice(0, -1).map(({ after }) => after)]);
    expect(new Set(chain.map(({ after }) => after)).size).toBe(writers);
    // what each was answered is what the journal says of its version
    for (const { body, headers } of answers) {
      const { version, notes } = body as { version: number; notes: string };
      expect(chain[version - 2]?.after).toBe(notes);
      expect(headers['journal-entry']).toMatch(/-/);
    }
    const now = bodyOf<{ notes: string; version: number }>(await api.http.get(`/api/v1/individuals/${id}`));
    expect(now).toMatchObject({ version: writers + 1, notes: chain.at(-1)?.after });
  });

  it('who all read the same version: one is taken and stands in the journal, nobody is overwritten', async () => {
    const { id } = await make.individual({ notes: 'nobody' });
    const answers = await writeAtOnce(id, () => '"1"');
    const taken = answers.filter(({ status }) => status === 200);
    expect(taken).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 412)).toHaveLength(writers - 1);
    for (const { headers, status } of answers) if (status === 412) expect(headers['journal-entry']).toBeUndefined();
    expect(await chainOf(id)).toEqual([{ version: 2, before: 'nobody', after: (taken[0]?.body as Told).notes }]);
  });

  it('half of whom look before they write: exactly what was taken is in the journal', async () => {
    const { id } = await make.individual({ notes: 'nobody' });
    const answers = await writeAtOnce(id, (writer) => (writer % 3 === 0 ? '*' : `"${1 + (writer % 5)}"`));
    const taken = answers.filter(({ status }) => status === 200).map(({ body }) => body as Told & { version: number });
    expect(answers.every(({ status }) => status === 200 || status === 412)).toBe(true);
    const chain = await chainOf(id);
    expect(chain.map(({ version, after }) => `${version} ${after}`)).toEqual(
      taken.sort((one, other) => one.version - other.version).map(({ version, notes }) => `${version} ${notes}`),
    );
    expect(chain.map(({ before }) => before)).toEqual(['nobody', ...chain.slice(0, -1).map(({ after }) => after)]);
  });
});

it('one entry that many undo at once is undone once; all others are told by which entry', async () => {
  await api.dataSource.query('delete from rate_limit');
  const { id } = await make.individual({ notes: 'one' });
  const changed = await api.http
    .patch(`/api/v1/individuals/${id}`)
    .set('If-Match', '*')
    .send({ notes: 'two' })
    .expect(200);
  const address = `/api/v1/journal/${changed.headers['journal-entry']}/reversal`;
  const answers = await Promise.all(
    Array.from({ length: 12 }, (_, index) =>
      (index % 2 === 0 ? api : second).http.post(address).then((answer) => answer),
    ),
  );
  const undone = answers.filter(({ status }) => status === 201);
  expect(undone).toHaveLength(1);
  for (const { status, body } of answers)
    if (status !== 201)
      expect(body).toMatchObject({
        status: 409,
        since: [{ id: bodyOf<JournalEntryView>(undone[0] ?? { body: {} }).id }],
      });
  expect((await api.http.get(`/api/v1/individuals/${id}`)).body).toMatchObject({ notes: 'one', version: 3 });
});
