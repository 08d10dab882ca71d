import pg from 'pg';

/** One line of the bench table. */
export interface ReadRow {
  readonly what: string;
  /** Median of the runs, as a client on the same machine sees it: the whole answer, read and parsed. */
  readonly milliseconds: number;
  readonly slowest: number;
  readonly runs: number;
  /** Size of one answer. */
  readonly kilobytes: number;
}

/** A running service with a full register behind it. */
export interface FullRegister {
  /** Address of the service, `http://127.0.0.1:port`. */
  readonly url: string;
  readonly databaseUrl: string;
  /** Of a keeper of the club. */
  readonly token: string;
}

interface Question {
  readonly what: string;
  readonly path: string;
  readonly body?: unknown;
  readonly runs?: number;
  /** Done before each run, outside the time that is measured. */
  readonly before?: () => Promise<unknown>;
}

const RUNS = 15;
const COLD_RUNS = 5;

/**
 * Measures the main reads on a register (meant for one of 100 000 animals), and returns the rows of a table. "Cold" is the
 * first question after the register changed: all of it is read and computed anew.
 *
 * @throws Error where an answer is not 200
 */
export async function benchReads({ url, databaseUrl, token }: FullRegister): Promise<ReadRow[]> {
  const database = new pg.Client({ connectionString: databaseUrl });
  await database.connect();
  try {
    const rows: ReadRow[] = [];
    for (const question of await questions(database)) rows.push(await measure(`${url}/api/v1`, token, question));
    return rows;
  } finally {
    await database.end();
  }
}

async function questions(database: pg.Client): Promise<Question[]> {
  const youngest = await database.query<{ id: string; number: string; line: string | null }>(
    `select i.id, i.number, l.name as line from individual i left join line l on l.id = i.line_id
     where i.clutch_id is not null order by i.tier desc, i.number desc limit 100`,
  );
  const ids = youngest.rows.map(({ id }) => id);
  const { id = '', number = '', line = '' } = youngest.rows[0] ?? {};
  const change = (): Promise<unknown> =>
    database.query(
      `with next as (update lineage_revision set revision = revision + 1, changed_at = now() returning revision)
       insert into lineage_change (revision, kind) select revision, 'everything' from next`,
    );
  const animal = `/individuals/${id}`;
  const largest = await database.query<{ id: string }>(
    `select line_id as id from individual where line_id is not null group by line_id order by count(*) desc limit 1`,
  );
  const broad = await database.query<{ id: string }>(
    `select individual_id as id from clutch_candidate group by individual_id order by count(*) desc, individual_id limit 1`,
  );
  const audit = `/lines/${largest.rows[0]?.id ?? ''}/audit`;
  return [
    { what: 'register, first page', path: '/individuals?limit=50' },
    { what: 'register, one line', path: `/individuals?limit=50&line=${encodeURIComponent(line ?? '')}` },
    { what: 'register, search', path: `/individuals?limit=50&q=${number.slice(0, 5)}` },
    { what: 'one animal', path: animal },
    { what: 'lineage, cold', path: `${animal}/lineage`, before: change, runs: COLD_RUNS },
    { what: 'lineage, warm', path: `${animal}/lineage` },
    { what: 'pedigree, 8 generations', path: `${animal}/pedigree?generations=8` },
    { what: 'descendants, 3 generations', path: `/individuals/${broad.rows[0]?.id ?? ''}/descendants?generations=3` },
    { what: 'kinship of 100', path: '/lineage/kinship', body: { individuals: ids } },
    { what: 'figures of 50', path: '/lineage/figures', body: { individuals: ids.slice(0, 50) } },
    { what: 'audit of the largest line', path: audit },
  ];
}

async function measure(
  base: string,
  token: string,
  { what, path, body, before, runs = RUNS }: Question,
): Promise<ReadRow> {
  const ask = async (): Promise<{ milliseconds: number; kilobytes: number }> => {
    await before?.();
    const start = performance.now();
    const answer = await fetch(base + path, requestOf(token, body));
    const text = await answer.text();
    JSON.parse(text);
    const milliseconds = performance.now() - start;
    if (answer.status !== 200) throw new Error(`${what}: ${path} was answered ${answer.status}: ${text.slice(0, 300)}`);
    return { milliseconds, kilobytes: Math.round(text.length / 1024) };
  };
  if (!before) await ask(); // the first one compiles and fills caches
  const times: number[] = [];
  let kilobytes = 0;
  for (let run = 0; run < runs; run++) {
    const one = await ask();
    times.push(one.milliseconds);
    kilobytes = one.kilobytes;
  }
  times.sort((one, other) => one - other);
  const rounded = (milliseconds: number | undefined): number => Math.round(10 * (milliseconds ?? NaN)) / 10;
  return { what, milliseconds: rounded(times[times.length >> 1]), slowest: rounded(times.at(-1)), runs, kilobytes };
}

function requestOf(token: string, body: unknown): RequestInit {
  const headers = { 'Content-Type': 'application/json', Authorization: `Bearer ${token}` };
  return body === undefined ? { headers } : { method: 'POST', headers, body: JSON.stringify(body) };
}
