import http from 'node:http';
import type { OpenAPIObject } from '@nestjs/swagger';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';
import { requestsOf, type Wire } from './requests.ts';

/** FUZZ_SECONDS and FUZZ_SEED let it run longer, or again. */
const seconds = Number(process.env['FUZZ_SECONDS'] ?? 20);
const seed = Number(process.env['FUZZ_SEED'] ?? 20_261_125);
/** A request that is not answered by then hangs. */
const longest = 15_000;

let api: TestApi;
let fuzzer: TestKeeper;
let token: string;
let document: OpenAPIObject;
let known: Record<string, string[]>;
const underway = new Set<Promise<Answer>>();
const agent = new http.Agent({ keepAlive: true, maxSockets: 8 });

beforeAll(async () => {
  api = await startApi({ publicUrl: 'https://register.example.org' });
  fuzzer = await api.addKeeper('Fuzzer', ['registrar', 'administrator']);
  token = fuzzer.token;
  document = (await api.stranger.get('/api/openapi.json').expect(200)).body as OpenAPIObject;
  const make = new Factory(fuzzer.http);
  // several of each, since some are soon withdrawn
  const sets: Awaited<ReturnType<typeof recordsOf>>[] = [];
  for (let count = 0; count < 6; count++) sets.push(await recordsOf(make));
  known = Object.fromEntries(Object.keys(sets[0] ?? {}).map((kind) => [kind, sets.flatMap((set) => set[kind] ?? [])]));
});

afterAll(async () => {
  agent.destroy();
  await api.close();
});

/** Records of each kind that requests can name, under the names of their resources. */
async function recordsOf(make: Factory): Promise<Record<string, string[]>> {
  const { speciesId, sire, dam, other } = await trio(make);
  const line = await make.line({ speciesId });
  const source = await make.source();
  const clutch = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
  const young = await make.offspring(clutch.id, { count: 2 });
  const pairing = await make.pairing({ members: [{ individualId: other.id, joined: '2020' }] });
  const remark = await make.observation({ individualId: sire.id });
  const claim = await make.claim({ sourceId: source.id });
  const entries = await api.dataSource.query<{ id: string }[]>('select id from journal_entry order by id limit 20');
  const idsOf = (records: readonly { id: string }[]): string[] => records.map(({ id }) => id);
  return {
    species: [speciesId],
    individuals: idsOf([sire, dam, other, ...young]),
    lines: [line.id],
    sources: [source.id],
    clutches: [clutch.id],
    pairings: [pairing.id],
    members: idsOf(pairing.members),
    observations: [remark.id],
    claims: [claim.id],
    evidence: [(await make.evidence({ claimId: claim.id })).id],
    photographs: [(await make.photograph({ individualId: sire.id })).id],
    acknowledgements: [(await make.acknowledgement({ individualId: other.id })).id],
    keepers: [fuzzer.id],
    journal: idsOf(entries),
  };
}

interface Answer {
  readonly status: number;
  readonly type: string;
  readonly text: string;
}

function send({ method, path, headers, body, isKeeper }: Wire): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const known = isKeeper ? { authorization: `Bearer ${token}` } : {};
    const length = body === null ? {} : { 'content-length': String(Buffer.byteLength(body)) };
    const url = new URL(api.url);
    const request = http.request(
      { host: url.hostname, port: url.port, method, path, agent, headers: { ...headers, ...known, ...length } },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('error', reject);
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            type: response.headers['content-type'] ?? '',
            text: Buffer.concat(chunks).toString(),
          }),
        );
      },
    );
    request.setTimeout(longest, () => request.destroy(new Error(`no answer within ${longest} ms`)));
    request.on('error', reject);
    request.end(body ?? undefined);
  });
}

const entrails =
  /\bat \S+ \(|\.[jt]s:\d+|node_modules|QueryFailed|syntax error at|violates \w+ constraint|relation "|pg_catalog/;

/** What is wrong with an answer; null where nothing is. */
function faultOf({ status, type, text }: Answer): string | null {
  if (status >= 500 && status !== 503) return `status ${status}`;
  if (status < 200) return `status ${status}`;
  if (status < 400) return null;
  if (!type.startsWith('application/problem+json')) return `${status} as “${type}”`;
  const problem = JSON.parse(text) as Record<string, unknown>;
  if (problem['status'] !== status || typeof problem['detail'] !== 'string' || typeof problem['title'] !== 'string')
    return 'a problem document without its parts';
  // the address that was asked comes back as it was sent
  const told = JSON.stringify({ ...problem, instance: '' });
  return entrails.test(told) ? `entrails: ${entrails.exec(told)?.[0]}` : null;
}

/** A request may have taken the fuzzer's roles, its token or its place in the club: that is no fault, but ends the run's use. */
async function putBack(): Promise<void> {
  await api.dataSource.query('delete from rate_limit');
  await api.dataSource.query(
    `update keeper set roles = '{registrar,administrator}', left_at = null where id = $1 and (left_at is not null or cardinality(roles) < 2)`,
    [fuzzer.id],
  );
  await api.dataSource.query('update access_token set revoked_at = null, expires_at = null where keeper_id = $1', [
    fuzzer.id,
  ]);
}

it(
  'whatever is sent to any route, the service answers, says what is wrong, and shows nothing of its inside',
  async () => {
    const asked = new Map<string, number>();
    let count = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(requestsOf(document, known), { minLength: 4, maxLength: 8 }), async (requests) => {
        if (count++ % 10 === 0) await putBack();
        await Promise.all(
          requests.map(async (request) => {
            const shown = `${request.method} ${request.path.slice(0, 300)} ${JSON.stringify(request.headers)} ${request.body?.slice(0, 2000)}`;
            const sending = send(request);
            underway.add(sending);
            void sending.finally(() => underway.delete(sending)).catch(() => undefined);
            const answer = await sending.catch((error: unknown) => {
              throw new Error(`${shown}: ${String(error)}`);
            });
            asked.set(String(answer.status), (asked.get(String(answer.status)) ?? 0) + 1);
            expect(faultOf(answer), `${shown}\n${answer.text.slice(0, 600)}`).toBeNull();
          }),
        );
      }),
      {
        seed,
        numRuns: 1_000_000,
        interruptAfterTimeLimit: seconds * 1000,
        markInterruptAsFailure: false,
        endOnFailure: true,
      },
    );
    if (process.env['FUZZ_SECONDS']) console.log(count, Object.fromEntries([...asked].sort()));
    // it must have got past the doors: some requests succeed, and many are looked at field by field
    expect(asked.get('200') ?? 0).toBeGreaterThan(20);
    expect(asked.get('201') ?? 0).toBeGreaterThan(5);
    expect(asked.get('422') ?? 0).toBeGreaterThan(50);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  },
  seconds * 1000 + 60_000,
);

it('afterwards it still answers, the lineage can be computed, and every record has its entry in the journal', async () => {
  // the run is cut off when its time is over, with requests still on their way
  await Promise.allSettled(underway);
  await putBack();
  await api.stranger.get('/api/health/ready').expect(200);
  const listed = await fuzzer.http.get('/api/v1/individuals?limit=200').expect(200);
  const animals = (listed.body as { items: { id: string }[] }).items.map(({ id }) => id);
  expect(animals.length).toBeGreaterThan(0);
  await fuzzer.http.post('/api/v1/lineage/kinship').send({ individuals: animals }).expect(200);
  for (const id of animals.slice(0, 20)) await fuzzer.http.get(`/api/v1/individuals/${id}/lineage`).expect(200);
  for (const kind of [
    'species',
    'line',
    'source',
    'pairing',
    'observation',
    'claim',
    'evidence',
    'photograph',
    'flag_acknowledgement',
  ]) {
    const fromSheets = ['species', 'line', 'source'].includes(kind) ? 'import_id is null and' : '';
    const unnoted = await api.dataSource.query<unknown[]>(
      `select id from ${kind} r where ${fromSheets} not exists (select 1 from journal_entry e where e.record_id = r.id)`,
    );
    expect(unnoted, kind).toEqual([]);
  }
});
