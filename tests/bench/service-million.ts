import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DataSource } from 'typeorm';
import { createApp } from '../../api/create-app.ts';
import { migrate } from '../../api/platform/data-source.ts';
import { startEmbeddedDatabase } from '../../api/platform/embedded-database.ts';
import { keeperWithToken } from '../support/token.ts';
import { fillRegister, type FilledRegister } from './million.ts';

/** One line of the bench table. */
export interface MillionRow {
  readonly what: string;
  /** Milliseconds, unless the row says otherwise. */
  readonly p50: number;
  readonly p99: number;
  readonly mustReach: number | string;
}

const RUNS = 300;
const WRITES = 500;
const WARM_UP = 20;
const LIST_RUNS = 20;

/** Figures of the service on a register of a million animals: the start, one animal, new young, lists by figures. */
export async function benchMillion(): Promise<MillionRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-million-'));
  const database = await startEmbeddedDatabase(folder);
  try {
    await migrate(database.url);
    const filled = await fillRegister(database.url);
    const loaded = loadApart(database.url);
    const app = await createApp(database.url, { logLevel: 'silent' });
    const { token } = await keeperWithToken(app.get(DataSource), 'Keeper 0', ['registrar']);
    await app.listen(0, '127.0.0.1');
    const service = new Service(await app.getUrl(), token);
    const settled = await secondsUntil(() => service.isCurrent());
    const rows = [
      { what: 'reading the graph at start, seconds', p50: loaded.seconds, p99: loaded.seconds, mustReach: 5 },
      { what: 'memory that it takes, megabytes', p50: loaded.peakMegabytes, p99: loaded.peakMegabytes, mustReach: 600 },
      { what: 'all figures written after the first start, seconds', p50: settled, p99: settled, mustReach: '' },
      await measureAnimals(service, filled),
      ...(await measureSets(service, filled)),
      ...(await measureYoung(service, app.get(DataSource), filled)),
      ...(await measureLists(service, filled)),
      ...(await measureFragments(service)),
      await measureMates(service, app.get(DataSource), filled),
    ];
    await app.close();
    return rows;
  } finally {
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Reads the register in a process of its own. */
function loadApart(url: string): { seconds: number; peakMegabytes: number } {
  const program = fileURLToPath(new URL('./load-child.js', import.meta.url));
  const printed = execFileSync(process.execPath, ['--expose-gc', program, url], { encoding: 'utf8' });
  return JSON.parse(printed) as { seconds: number; peakMegabytes: number };
}

class Service {
  readonly #url: string;
  readonly #headers: Record<string, string>;

  constructor(url: string, token: string) {
    this.#url = `${url}/api/v1`;
    this.#headers = { Authorization: `Bearer ${token}`, 'Content-Type': 'application/json' };
  }

  /** Milliseconds until the whole answer was read, and the answer. */
  async ask<Answer>(path: string, body?: object): Promise<{ milliseconds: number; answer: Answer }> {
    const started = performance.now();
    const answer = await fetch(this.#url + path, {
      headers: this.#headers,
      ...(body ? { method: 'POST', body: JSON.stringify(body) } : {}),
    });
    const text = await answer.text();
    const milliseconds = performance.now() - started;
    if (!answer.ok) throw new Error(`${path} was answered ${answer.status}: ${text.slice(0, 300)}`);
    return { milliseconds, answer: JSON.parse(text) as Answer };
  }

  async isCurrent(): Promise<boolean> {
    return (await this.ask<{ current: boolean }>('/lineage/progress')).answer.current;
  }
}

async function measureAnimals(service: Service, { animals, animalId }: FilledRegister): Promise<MillionRow> {
  const times: number[] = [];
  for (let run = 0; run < RUNS + 50; run++) {
    const animal = Math.floor(animals * (0.7 + (0.3 * run) / (RUNS + 50)));
    const { milliseconds } = await service.ask(`/individuals/${animalId(animal)}/lineage`);
    if (run >= 50) times.push(milliseconds);
  }
  return rowOf('all measures of one animal', times, 15);
}

/** Sets as a line's page, a keeper and a curious registrar ask for them; the thread is warm. */
async function measureSets(service: Service, filled: FilledRegister): Promise<MillionRow[]> {
  const { lines } = filled;
  const rows: MillionRow[] = [];
  for (const [what, question, runs] of [
    ['the living of one line', `lineId=${lines[777]}&status=alive`, 20],
    ['one line', `lineId=${lines[777]}`, 20],
    ['one keeper, 10 000 animals', 'keeper=Keeper%207', 10],
    ['everybody', '', 3],
  ] as const) {
    await service.ask(`/lineage/set?${question}`);
    const times: number[] = [];
    for (let run = 0; run < runs; run++) times.push((await service.ask(`/lineage/set?${question}`)).milliseconds);
    rows.push(rowOf(`measures of a set, ${what}`, times, ''));
  }
  const asked = { isDone: false };
  const everybody = service.ask('/lineage/set').finally(() => (asked.isDone = true));
  const meanwhile: number[] = [];
  for (let run = 0; !asked.isDone; run++)
    meanwhile.push((await service.ask(`/individuals/${filled.animalId(900_000 + run)}/lineage`)).milliseconds);
  await everybody;
  return [...rows, rowOf('one animal while everybody is measured', meanwhile, '')];
}

/** Clutches with young, each of other parents, as a keeper enters them: in one request, and in two. */
async function measureYoung(service: Service, database: DataSource, filled: FilledRegister): Promise<MillionRow[]> {
  const together: number[] = [];
  const laying: number[] = [];
  const raising: number[] = [];
  for (let run = 0; run < WRITES + WARM_UP; run++) {
    const parents = await livingPair(database, filled.lines[(run * 7) % filled.lines.length] ?? '');
    const offspring = { count: 5 };
    const whole = await service.ask<YoungAnswer>('/clutches', { laid: '2026-01', ...parents, offspring });
    const clutch = await service.ask<{ id: string }>('/clutches', { laid: '2026-02', ...parents });
    const young = await service.ask<YoungAnswer>(`/clutches/${clutch.answer.id}/offspring`, offspring);
    for (const { figures } of [whole.answer, young.answer])
      if (figures.length !== 5 || !figures.every(({ current }) => current))
        throw new Error('the answer had figures that are missing or not current');
    if (run < WARM_UP) continue;
    together.push(whole.milliseconds);
    laying.push(clutch.milliseconds);
    raising.push(young.milliseconds);
  }
  return [
    rowOf('a new clutch with five young, figures in the answer', together, 30),
    rowOf('a new clutch alone', laying, ''),
    rowOf('five young of a clutch that is there, figures in the answer', raising, ''),
  ];
}

interface YoungAnswer {
  readonly figures: readonly { readonly current: boolean }[];
}

async function livingPair(database: DataSource, line: string): Promise<{ sires: object[]; dams: object[] }> {
  const one = (sex: string): string =>
    `(select id from individual where line_id = $1 and sex = '${sex}' and status = 'alive' limit 1)`;
  const [sire, dam] = await database.query<{ id: string }[]>(`${one('male')} union all ${one('female')}`, [line]);
  return { sires: [{ individualId: sire?.id }], dams: [{ individualId: dam?.id }] };
}

async function measureLists(service: Service, filled: FilledRegister): Promise<MillionRow[]> {
  const questions = [
    'sort=inbreeding&order=desc',
    'sort=depth&order=desc',
    'sort=meanKinship',
    'sort=tracedShare',
    'sort=inbreeding&order=desc&status=alive',
    `sort=inbreeding&lineId=${filled.lines[777]}`,
    'sort=meanKinship&keeper=Keeper%207',
    'inbreedingFrom=0.5&sort=code',
    'inbreedingFrom=0.1&sort=number',
    'inbreedingFrom=0.5&sort=depth',
    'q=a76&sort=code',
    'hatchedFrom=2010&hatchedTo=2011&sort=code',
    'status=alive&sex=female&sort=hatched&order=desc',
  ];
  const rows: MillionRow[] = [];
  for (const question of questions) {
    const times: number[] = [];
    for (let run = 0; run < LIST_RUNS; run++) times.push((await service.ask(`/individuals?${question}`)).milliseconds);
    rows.push(rowOf(`register, ${question.replace(/lineId=.*/, 'one line')}`, times, 100));
  }
  for (const of of ['mine', 'club']) {
    const times: number[] = [];
    for (let run = 0; run < LIST_RUNS; run++) times.push((await service.ask(`/today?of=${of}`)).milliseconds);
    rows.push(rowOf(`what is due today, ${of}`, times, 100));
  }
  return rows;
}

/** What a keeper types into the palette: each text asked for as it asks, for eight animals, and beside it whether one has just that code. */
async function measureFragments(service: Service): Promise<MillionRow[]> {
  const kinds: [what: string, texts: string[]][] = [
    ['the middle of a code', ['9760', '3312', '67238']],
    ['three characters of a code', ['a76', '760', '999']],
    ['two characters, which begin 10 000 codes', ['a9', 'a1', 'a5']],
    ['digits that begin a number', ['1234', '98765', '5000']],
    ['a part of a line’s name', ['ne 777', 'line 19', 'line 1999']],
    ['a keeper with 100 000 animals and a code', ['keeper 9 760', 'keeper 1 33']],
    ['what 100 000 animals have', ['a1', 'keeper 9', '10']],
    ['what none has', ['qqzz', 'zzz', 'xq', 'line xq']],
  ];
  const rows: MillionRow[] = [];
  for (const [what, texts] of kinds) {
    const times: number[] = [];
    for (let run = 0; run < LIST_RUNS * 2; run++) {
      const text = encodeURIComponent(texts[run % texts.length] ?? '');
      const started = performance.now();
      await Promise.all([
        service.ask(`/individuals?limit=8&q=${text}`),
        service.ask(`/individuals?limit=3&code=${text}`),
      ]);
      if (run >= texts.length) times.push(performance.now() - started);
    }
    rows.push(rowOf(`palette, ${what}`, times, 100));
  }
  return rows;
}

/** Lines that are put into one, so that some 2 200 mates come into question for each animal. */
const LINES_IN_ONE = 45;

/** Last, since it changes the lines. */
async function measureMates(service: Service, database: DataSource, { lines }: FilledRegister): Promise<MillionRow> {
  const joined = lines.slice(0, LINES_IN_ONE);
  await database.query('update individual set line_id = $1 where line_id = any($2::uuid[])', [joined[0], joined]);
  await secondsUntil(() => service.isCurrent());
  const males = await database.query<{ id: string }[]>(
    `select id from individual where line_id = $1 and sex = 'male' and status = 'alive' limit ${RUNS}`,
    [joined[0]],
  );
  const times: number[] = [];
  let total = 0;
  for (const [run, { id }] of [...males.slice(0, WARM_UP), ...males].entries()) {
    // more questions than one keeper may ask
    if (run % 50 === 0) await database.query('delete from rate_limit');
    const { milliseconds, answer } = await service.ask<{ total: number }>(`/individuals/${id}/mates?kinshipTo=1`);
    total = answer.total;
    if (run >= WARM_UP) times.push(milliseconds);
  }
  return rowOf(`who for this one, ${total} mates`, times, 100);
}

function rowOf(what: string, times: number[], mustReach: number | string): MillionRow {
  const sorted = [...times].sort((one, other) => one - other);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
  return { what, p50: at(0.5), p99: at(0.99), mustReach };
}

async function secondsUntil(condition: () => Promise<boolean>): Promise<number> {
  const started = performance.now();
  while (!(await condition())) await new Promise((resolve) => setTimeout(resolve, 250));
  return (performance.now() - started) / 1000;
}
