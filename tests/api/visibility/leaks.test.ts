import type { OpenAPIObject } from '@nestjs/swagger';
import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newId } from '../../../api/platform/ids.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import { madeAnimal, madeKey, madeSheet } from '../../support/made-sheet.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { askers, makeSecretRegister, setPublicReading, type Asker, type SecretRegister } from './secret-register.ts';

interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly schema?: { readonly enum?: readonly string[]; readonly format?: string; readonly type?: string };
}

interface Route {
  readonly path: string;
  readonly parameters: readonly Parameter[];
}

let api: TestApi;
let register: SecretRegister;
let gets: Route[];
let askingPosts: string[];
let lines: string[];
/** A sheet of another register whose keys are known. */
let foreignSheet: string;

/** Every address with every record, thousands of requests: it takes as long as it takes. */
const walkTime = 900_000;

beforeAll(async () => {
  api = await startApi();
  register = await makeSecretRegister(api);
  const { paths } = (await api.stranger.get('/api/openapi.json').expect(200)).body as OpenAPIObject;
  const routes = Object.entries(paths);
  gets = routes.flatMap(([path, { get }]) =>
    get ? [{ path, parameters: (get.parameters ?? []) as unknown as Parameter[] }] : [],
  );
  askingPosts = routes.flatMap(([path, { post }]) => (post && '200' in post.responses ? [path] : []));
  const page = (await api.http.get('/api/v1/lines').expect(200)).body as { items: { id: string }[] };
  lines = page.items.map(({ id }) => id);
  const key = await madeKey();
  const keys = JSON.stringify(publishedKeys([key]));
  await api.http.post('/api/v1/other-registers').send({ name: 'Circle of Frogs', keys }).expect(201);
  // numbers there that are no numbers here, or they would be taken for those of private animals
  const [ancestor, hidden] = madeSheet().ancestors;
  const animals = [madeAnimal({ number: formatRegistryNumber(900_001) })];
  if (!ancestor || !hidden) throw new Error('the made sheet has two ancestors');
  const ancestors = [{ ...ancestor, number: formatRegistryNumber(900_002) }, hidden];
  foreignSheet = await signSheet(madeSheet({ animals, ancestors }), key);
  await setPublicReading(api, true);
});

afterAll(() => api.close());

const agentOf = (asker: Asker): TestAgent =>
  ({ owner: register.owner.http, other: register.other.http, registrar: api.http, stranger: api.stranger })[asker];

const concealedFrom = (asker: Asker) => register.secrets.filter(({ seenBy }) => !seenBy.includes(asker));

/** All that an answer says: body, headers, and what its cursor holds. Without what was asked, which an error may repeat. */
function told(answer: Response, asked: readonly string[]): string {
  const { next } = answer.body as { next?: string | null };
  const cursor = typeof next === 'string' ? Buffer.from(next, 'base64url').toString() : '';
  const all = [answer.text, JSON.stringify(answer.headers), cursor].join('\n');
  return asked.reduce((text, part) => text.replaceAll(part, '…'), all);
}

/** A problem document repeats the address that was asked. */
function inPlaceOf(nothing: object, found: object): object {
  return 'instance' in found ? { ...nothing, instance: found.instance } : nothing;
}

/** A number is not told by an id that happens to hold the same digits. */
function says(text: string, secret: string): boolean {
  if (!text.includes(secret)) return false;
  return !/^[\d.-]+X?$/.test(secret) || new RegExp(`(?<![\\w-])${secret.replace('.', '\\.')}(?![\\w-])`).test(text);
}

/** What a walk came across that the asker may not know, and which secrets it saw at all. */
class Walk {
  readonly leaks = new Set<string>();
  readonly seen = new Set<string>();
  requests = 0;

  constructor(readonly asker: Asker) {}

  async get(address: string, asked: readonly string[] = []): Promise<Response> {
    await this.rest();
    return this.look(await agentOf(this.asker).get(address), `GET ${address}`, asked);
  }

  async ask(address: string, body: object | string, asked: readonly string[] = []): Promise<Response> {
    await this.rest();
    const type = typeof body === 'string' ? 'text/csv' : 'application/json';
    const answer = await agentOf(this.asker).post(address).set('Content-Type', type).send(body);
    return this.look(answer, `POST ${address}`, asked);
  }

  /** Begins the allowances anew: a walk asks faster than anybody may. */
  private async rest(): Promise<void> {
    if (this.requests % 20 === 0) await api.dataSource.query('delete from rate_limit');
  }

  private look(answer: Response, request: string, asked: readonly string[]): Response {
    this.requests += 1;
    if (answer.status >= 500 || answer.status === 429) this.leaks.add(`${request} answers ${answer.status}`);
    const text = told(answer, asked);
    for (const secret of register.secrets) {
      if (!says(text, secret.text)) continue;
      this.seen.add(secret.what);
      if (!secret.seenBy.includes(this.asker))
        this.leaks.add(`${request} tells ${this.asker} ${secret.what}: ${secret.text}`);
    }
    return answer;
  }
}

const isList = ({ parameters }: Route): boolean => parameters.some(({ name }) => name === 'after');
const fill = (path: string, value: string): string => path.replaceAll(/\{\w+\}/g, encodeURIComponent(value));

/** Every address that a GET of the description can have: every id and number there is in its path. */
async function walkRecords(walk: Walk): Promise<void> {
  const names = [...Object.values(register.ids), ...Object.values(register.numbers)];
  for (const { path } of gets)
    if (!path.includes('{')) await walk.get(path);
    else for (const name of names) await walk.get(fill(path, name), [name]);
}

/** Every list by every order and filter, page by page. */
async function walkLists(walk: Walk): Promise<void> {
  const texts = register.secrets.filter(({ isId, what }) => !isId && /code|number|name|received|Label/.test(what));
  for (const route of gets.filter((one) => isList(one) && !one.path.includes('{'))) {
    for (const parameter of route.parameters) {
      if (parameter.in !== 'query' || ['after', 'limit', 'total'].includes(parameter.name)) continue;
      const values =
        parameter.schema?.enum ?? (parameter.schema?.format === 'uuid' ? ids() : texts.map(({ text }) => text));
      for (const value of values) {
        const address = `${route.path}?limit=200&total=true&${parameter.name}=${encodeURIComponent(value)}`;
        expectTotal(await walk.get(address, [value]));
      }
    }
    await walkPages(walk, route);
  }
}

const ids = (): string[] => Object.values(register.ids);

function expectTotal(answer: Response): void {
  if (answer.status !== 200) return;
  const { items, total } = answer.body as { items: unknown[]; total?: number };
  expect([answer.request.url, total]).toEqual([answer.request.url, items.length]);
}

async function walkPages(walk: Walk, route: Route): Promise<void> {
  const sorts = route.parameters.find(({ name }) => name === 'sort')?.schema?.enum ?? [''];
  for (const sort of sorts)
    for (const order of sort === '' ? [''] : ['asc', 'desc']) {
      const query = sort === '' ? '' : `&sort=${sort}&order=${order}`;
      let after = '';
      let items = 0;
      let total: number | undefined;
      for (;;) {
        const answer = await walk.get(`${route.path}?limit=1&total=true${query}${after}`);
        if (answer.status !== 200) break;
        const page = answer.body as { items: unknown[]; next: string | null; total?: number };
        items += page.items.length;
        total = page.total ?? total;
        if (page.next === null) {
          if (total !== undefined) expect([route.path, sort, items]).toEqual([route.path, sort, total]);
          break;
        }
        after = `&after=${page.next}`;
      }
    }
}

/** Every question that is put by POST, about every animal and every two. */
async function walkQuestions(walk: Walk): Promise<void> {
  const { numbers } = register;
  const names = [...Object.values(register.ids), ...Object.values(numbers)];
  for (const name of names) {
    await walk.ask('/api/v1/lineage/kinship', { individuals: [name, numbers['the public young']] }, [name]);
    await walk.ask('/api/v1/lineage/figures', { individuals: [name] }, [name]);
    await walk.ask('/api/v1/lineage/set', { individuals: [name] }, [name]);
    await walk.ask('/api/v1/lineage/forecast', { sires: [numbers['the public young']], dams: [name] }, [name]);
    await walk.ask(`/api/v1/individuals/${name}/lineage/what-if`, {}, [name]);
    const youngOf = `/api/v1/individuals/${numbers['the public young']}/lineage/what-if`;
    await walk.ask(youngOf, { sources: [{ id: name, baseKinship: 0.5 }] }, [name]);
    await walk.ask(youngOf, { clutches: [{ id: name, sires: [], dams: [] }] }, [name]);
    const sheet = `code,species,sire\nNEW-1,Inventus species1,${name}\n`;
    await walk.ask('/api/v1/imports?dryRun=true', sheet, [name]);
    const known = [{ ref: 'a2', individual: name }];
    await walk.ask('/api/v1/foreign-sheets?dryRun=true', { file: foreignSheet, known }, [name]);
    if (/^[0-9a-f-]{36}$/.test(name)) await walkChanges(walk, name);
    await walkForecasts(walk, name);
    const group = { individuals: [name, numbers['the public young']], crossLines: true, males: 1, females: 1 };
    await walk.ask('/api/v1/match/group', group, [name]);
    await walkExchanges(walk, name);
  }
  for (const one of ids())
    await walk.ask('/api/v1/lineage/kinship', { individuals: [register.ids['the club young'], one] }, [one]);
}

/** What would become of an animal beside another, if both were changed. */
async function walkChanges(walk: Walk, id: string): Promise<void> {
  const animals = [
    { id, version: 1 },
    { id: register.ids['the public young'] ?? '', version: 1 },
  ].filter((one, at) => at === 0 || one.id !== id);
  const on = '2026-01-01';
  for (const change of [
    { fields: { sex: 'male', visibility: 'public' } },
    { move: { pairingId: null, on } },
    { remark: { kind: 'note', observedOn: on, text: 'seen' } },
  ])
    await walk.ask('/api/v1/individuals/changes?dryRun=true', { animals, ...change }, [id]);
}

/** What would come of an animal as a sire, as a dam, and of the pairings of its line as they stand. */
async function walkForecasts(walk: Walk, name: string): Promise<void> {
  const { numbers } = register;
  const briefly = { replicates: 100, generations: 1, loci: 1, crossLines: true };
  for (const line of lines) {
    const at = `/api/v1/lines/${line}/plan-forecast`;
    const pairs = [
      { sire: name, dam: numbers['the club young'] },
      { sire: numbers['the young private sire'], dam: name },
    ];
    for (const pair of pairs)
      await walk.ask(at, { ...briefly, pairs: [pair] }, [name, ...Object.values(pair).map((one) => one ?? '')]);
    await walk.ask(at, { ...briefly, courses: ['today'] }, []);
    const planned = { pairings: 1, also: [name], allow: ['cross-lines', 'disputed'], seconds: 5 };
    await walk.ask(`/api/v1/lines/${line}/plan`, planned, [name]);
  }
}

/** What an exchange of an animal would do, and of whatever its keeper has. */
async function walkExchanges(walk: Walk, name: string): Promise<void> {
  const young = register.numbers['the public young'] ?? '';
  const allow = ['cross-lines', 'disputed', 'unsexed'];
  for (const lineId of lines) {
    const named = { one: { individuals: [name] }, other: { individuals: [young] }, give: [name], take: [young] };
    await walk.ask('/api/v1/match/exchange', { lineId, ...named, allow }, [name, young]);
    const keepers = { one: { keeperId: register.owner.id }, other: { keeperId: register.other.id } };
    await walk.ask('/api/v1/match/exchange', { lineId, ...keepers, take: [name], allow }, [name]);
  }
}

/** What is about to be lost, and who would bring what to whom, with everything let in. */
async function walkNewBlood(walk: Walk): Promise<void> {
  const all = 'crossLines=true&unsexed=true&disputed=true&kinshipTo=1';
  await walk.get('/api/v1/match/at-risk?mostCarriers=5');
  for (const line of lines) {
    await walk.get(`/api/v1/match/at-risk?mostCarriers=5&lineId=${line}`);
    await walk.get(`/api/v1/lines/${line}/new-blood?of=line&${all}`);
    for (const { id } of [register.owner, register.other])
      await walk.get(`/api/v1/lines/${line}/new-blood?keeperId=${id}&${all}`);
  }
}

async function walkAll(asker: Asker): Promise<Walk> {
  const walk = new Walk(asker);
  await walkRecords(walk);
  await walkLists(walk);
  await walkQuestions(walk);
  await walkNewBlood(walk);
  return walk;
}

describe('what is private', () => {
  it('is asked for at every address of the description', () => {
    expect(gets.length).toBeGreaterThan(20);
    expect(askingPosts.filter((path) => path.startsWith('/api/v1/')).sort()).toEqual([
      '/api/v1/foreign-sheets',
      '/api/v1/imports',
      '/api/v1/individuals/changes',
      '/api/v1/individuals/{id}/lineage/what-if',
      '/api/v1/lineage/figures',
      '/api/v1/lineage/forecast',
      '/api/v1/lineage/kinship',
      '/api/v1/lineage/set',
      '/api/v1/lines/{id}/plan',
      '/api/v1/lines/{id}/plan-forecast',
      '/api/v1/match/exchange',
      '/api/v1/match/group',
      '/api/v1/sheets/verification',
    ]);
  });

  it.each(askers)(
    'is told nowhere to whoever may not see it: %s',
    async (asker) => {
      const walk = await walkAll(asker);
      expect([...walk.leaks]).toEqual([]);
      expect(walk.requests).toBeGreaterThan(500);
      // what they may see is found on the way, so that the walk would have met what they may not
      const missed = register.secrets.filter(({ seenBy, what }) => seenBy.includes(asker) && !walk.seen.has(what));
      expect(missed.map(({ what }) => what)).toEqual([]);
    },
    walkTime,
  );

  it(
    'is not told to strangers either where the club keeps everything to itself, nor is anything else',
    async () => {
      await setPublicReading(api, false);
      const walk = await walkAll('stranger');
      await setPublicReading(api, true);
      expect([...walk.leaks]).toEqual([]);
      expect([...walk.seen]).toEqual([]);
    },
    walkTime,
  );
});

describe('a filter by something private', () => {
  const listed = (): Route[] => gets.filter((one) => isList(one) && one.path.startsWith('/api/v1/'));

  it.each(['other', 'stranger'] as const)(
    'answers %s as one by something that does not exist',
    async (asker) => {
      let asked = 0;
      for (const route of listed())
        for (const { name, schema } of route.parameters.filter((one) => one.in === 'query')) {
          const byId = schema?.format === 'uuid';
          if (!byId && !['q', 'code', 'number', 'line', 'species', 'keeper'].includes(name)) continue;
          for (const secret of concealedFrom(asker)) {
            if (secret.isId !== byId || /^the name of/.test(secret.what)) continue;
            const bare = { id: newId(), text: name === 'number' ? formatRegistryNumber(999_999) : 'stands nowhere' };
            const address = (value: string) => `${route.path}?total=true&${name}=${encodeURIComponent(value)}`;
            const [found, nothing] = [
              await agentOf(asker).get(address(secret.text)),
              await agentOf(asker).get(address(byId ? bare.id : bare.text)),
            ];
            if (name === 'number' && found.status === 422) continue; // no registry number at all
            if (asked % 20 === 0) await api.dataSource.query('delete from rate_limit');
            asked += 1;
            const what = `${address(secret.text)} (${secret.what})`;
            expect([what, found.status, found.body]).toEqual([
              what,
              nothing.status,
              inPlaceOf(nothing.body as object, found.body as object),
            ]);
          }
        }
      expect(asked).toBeGreaterThan(asker === 'other' ? 200 : 20);
    },
    walkTime,
  );
});
