import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FiguresView } from '../../../api/lineage/figures.view.ts';
import type { IndividualItemView } from '../../../api/register/individuals/individual.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { RandomEdits } from '../lineage/random-edits.ts';

interface StoredRow {
  readonly id: string;
  readonly sex: string;
  readonly status: string;
  readonly inbreeding: number | null;
  readonly depth: number | null;
  readonly meanKinship: number | null;
  readonly tracedShare: number | null;
}

const sorts = ['inbreeding', 'depth', 'meanKinship', 'tracedShare'] as const;

describe('the register by figures', () => {
  let api: TestApi;
  let rows: StoredRow[];

  beforeAll(async () => {
    api = await startApi();
    for (const seed of [21, 22]) {
      const edits = new RandomEdits(api, seed);
      await edits.begin();
      await edits.make(25);
    }
    // whatever was drawn, some live and some do not
    const { items } = bodyOf<{ items: IndividualItemView[] }>(
      await api.http.get('/api/v1/individuals?limit=5').expect(200),
    );
    for (const { id } of items)
      await api.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ status: 'died' }).expect(200);
    await until(async () => !(await isWaiting()));
    rows = await api.dataSource.query<StoredRow[]>(
      `select i.id, i.sex, i.status, f.inbreeding, f.depth, f.mean_kinship as "meanKinship", f.traced_share as "tracedShare"
       from individual i left join individual_figures f on f.individual_id = i.id where i.withdrawn_at is null`,
    );
  }, 120_000);
  afterAll(() => api.close());

  async function isWaiting(): Promise<boolean> {
    const [row] = await api.dataSource.query<{ waits: boolean }[]>(
      `select exists (select from lineage_change where not settled)
         or exists (select from line_figures where due_since is not null) as waits`,
    );
    return row?.waits ?? true;
  }

  async function pages(query: string, limit: number): Promise<string[]> {
    const ids: string[] = [];
    for (let after = ''; ;) {
      const answer = await api.http.get(`/api/v1/individuals?${query}&limit=${limit}${after}`).expect(200);
      const page = bodyOf<{ items: IndividualItemView[]; next: string | null }>(answer);
      ids.push(...page.items.map(({ id }) => id));
      if (page.next === null) return ids;
      after = `&after=${page.next}`;
    }
  }

  /** The order as it is told: by the figure, then by id; those without it last. */
  function inOrder(sort: (typeof sorts)[number], isDescending: boolean, among = rows): string[] {
    const sign = isDescending ? -1 : 1;
    const byId = (one: StoredRow, other: StoredRow): number => sign * (one.id < other.id ? -1 : 1);
    const valued = among.filter((row) => row[sort] !== null);
    const without = among.filter((row) => row[sort] === null).sort(byId);
    valued.sort((one, other) => sign * ((one[sort] ?? 0) - (other[sort] ?? 0)) || byId(one, other));
    return [...valued, ...without].map(({ id }) => id);
  }

  it.each(['number', 'code', 'hatched'])(
    'keeps to bounds of figures in the order of %s, page by page',
    async (sort) => {
      for (const order of ['asc', 'desc']) {
        const everybody = await pages(`sort=${sort}&order=${order}`, 200);
        for (const [bounds, keeps] of [
          ['inbreedingFrom=0.01', ({ inbreeding }: StoredRow) => (inbreeding ?? 0) >= 0.01],
          ['depthTo=1&inbreedingTo=0', ({ depth, inbreeding }: StoredRow) => (depth ?? 9) <= 1 && inbreeding === 0],
          ['depthFrom=1&status=alive', ({ depth, status }: StoredRow) => (depth ?? 0) >= 1 && status === 'alive'],
        ] as const) {
          const within = new Set(rows.filter(keeps).map(({ id }) => id));
          const expected = everybody.filter((id) => within.has(id));
          expect(expected.length).toBeGreaterThan(2);
          for (const limit of [1, 7, 200])
            expect(await pages(`sort=${sort}&order=${order}&${bounds}`, limit), `${bounds} ${order} ${limit}`).toEqual(
              expected,
            );
        }
      }
    },
  );

  it('holds animals of more than one depth and inbreeding, some without a line', () => {
    expect(new Set(rows.map(({ depth }) => depth)).size).toBeGreaterThan(2);
    expect(new Set(rows.map(({ inbreeding }) => inbreeding)).size).toBeGreaterThan(2);
    expect(rows.some(({ meanKinship }) => meanKinship === null)).toBe(true);
  });

  it.each(sorts)('comes in the order of %s, in pages of any size, nothing lost and nothing twice', async (sort) => {
    for (const order of ['asc', 'desc'])
      for (const limit of [1, 7, 200])
        expect(await pages(`sort=${sort}&order=${order}`, limit), `${order} by ${limit}`).toEqual(
          inOrder(sort, order === 'desc'),
        );
  });

  it.each(sorts)('comes in the same order of %s within one line, in pages of any size', async (sort) => {
    const members = await api.dataSource.query<{ id: string; line: string }[]>(
      'select id, line_id as line from individual where line_id is not null and withdrawn_at is null',
    );
    const line = members[0]?.line;
    const ids = new Set(members.filter((member) => member.line === line).map(({ id }) => id));
    const among = rows.filter(({ id }) => ids.has(id));
    expect(among.length).toBeGreaterThan(2);
    for (const order of ['asc', 'desc'])
      for (const limit of [1, 3, 200])
        expect(await pages(`lineId=${line}&sort=${sort}&order=${order}`, limit), `${order} by ${limit}`).toEqual(
          inOrder(sort, order === 'desc', among),
        );
  });

  it.each(sorts)('comes in the same order of %s among the living', async (sort) => {
    const living = rows.filter(({ status }) => status === 'alive');
    expect(living.length).toBeGreaterThan(2);
    expect(living.length).toBeLessThan(rows.length);
    for (const order of ['asc', 'desc'])
      expect(await pages(`status=alive&sort=${sort}&order=${order}`, 7), order).toEqual(
        inOrder(sort, order === 'desc', living),
      );
  });

  it('knows at once that an animal died, was withdrawn, or lives after all, also before that is settled', async () => {
    const id = rows.find(({ status }) => status === 'alive')?.id ?? '';
    const isListed = async (): Promise<boolean> => (await pages('status=alive&sort=inbreeding', 200)).includes(id);
    const patch = (body: object) =>
      api.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send(body).expect(200);
    expect(await isListed()).toBe(true);
    await patch({ status: 'died' });
    expect(await isListed()).toBe(false);
    await patch({ status: 'alive' });
    expect(await isListed()).toBe(true);
    await patch({ status: 'died' });
    // as a change is found that nobody has settled yet
    await api.dataSource.transaction(async (manager) => {
      await manager.query(`update individual set status = 'alive' where id = $1`, [id]);
    });
    expect(await isListed()).toBe(true);
    await until(async () => !(await isWaiting()));
    expect(await isListed()).toBe(true);
  });

  it('can be asked for figures within bounds, in any order, along with other filters', async () => {
    const within = rows.filter(({ inbreeding, depth }) => (inbreeding ?? -1) >= 0.05 && (depth ?? 99) <= 3);
    expect(within.length).toBeGreaterThan(0);
    const bounds = 'inbreedingFrom=0.05&depthTo=3';
    expect(await pages(`sort=inbreeding&${bounds}`, 50)).toEqual(inOrder('inbreeding', false, within));
    expect((await pages(`sort=code&${bounds}`, 50)).sort()).toEqual(within.map(({ id }) => id).sort());
    const unsexed = within.filter(({ sex }) => sex === 'unsexed');
    expect((await pages(`${bounds}&sex=unsexed`, 50)).sort()).toEqual(unsexed.map(({ id }) => id).sort());
    expect(await pages('meanKinshipFrom=0&meanKinshipTo=1&sort=meanKinship', 50)).toEqual(
      inOrder(
        'meanKinship',
        false,
        rows.filter(({ meanKinship }) => meanKinship !== null),
      ),
    );
  });

  it('loses nobody at a bound for the last digit of a sum of shares', async () => {
    const [animal] = rows;
    const traced = async (share: number): Promise<void> => {
      await api.dataSource.query('update individual_figures set traced_share = $2 where individual_id = $1', [
        animal?.id,
        share,
      ]);
    };
    await traced(1 - 2 ** -52);
    expect(await pages('tracedShareFrom=1', 200)).toContain(animal?.id);
    await traced(2 ** -52);
    expect(await pages('tracedShareTo=0', 200)).toContain(animal?.id);
    await traced(1 - 1e-9);
    expect(await pages('tracedShareFrom=1', 200)).not.toContain(animal?.id);
    await traced(animal?.tracedShare ?? 0);
  });

  it('shows beside each animal the mean kinship that it sorts by', async () => {
    const some = rows.slice(0, 200);
    const answer = await api.http
      .post('/api/v1/lineage/figures')
      .send({ individuals: some.map(({ id }) => id) })
      .expect(200);
    const { items } = bodyOf<FiguresView>(answer);
    expect(items.map(({ meanKinship }) => meanKinship)).toEqual(some.map(({ meanKinship }) => meanKinship));
    expect(items.some(({ meanKinship }) => meanKinship !== null && meanKinship > 0)).toBe(true);
  });

  it('loses and repeats nobody whose figures stay, while those of another change between two pages', async () => {
    const before = inOrder('inbreeding', false);
    const moved = before[2];
    const page = async (after: string): Promise<{ items: IndividualItemView[]; next: string | null }> =>
      bodyOf(await api.http.get(`/api/v1/individuals?sort=inbreeding&limit=5${after}`).expect(200));
    const seen: string[] = [];
    const move = (value: number | null | undefined): Promise<unknown> =>
      api.dataSource.query('update individual_figures set inbreeding = $2 where individual_id = $1', [moved, value]);
    let { items, next } = await page('');
    seen.push(...items.map(({ id }) => id));
    await move(0.999);
    while (next !== null) {
      ({ items, next } = await page(`&after=${next}`));
      seen.push(...items.map(({ id }) => id));
    }
    await move(rows.find(({ id }) => id === moved)?.inbreeding);
    expect(seen.filter((id) => id !== moved)).toEqual(before.filter((id) => id !== moved));
    // the one that moved is met where it was and again where it now is
    expect(seen.filter((id) => id === moved)).toHaveLength(2);
  });

  it('shows animals whose figures are still to be written, at the end', async () => {
    const [animal] = rows;
    await api.dataSource.query('delete from individual_figures where individual_id = $1', [animal?.id]);
    await api.dataSource.query(
      `insert into lineage_change (revision, kind, record_id) select revision, 'individual', $1 from lineage_revision`,
      [animal?.id],
    );
    const ids = await pages('sort=inbreeding', 200);
    expect(ids.length).toBe(rows.length);
    expect(ids.at(-1)).toBe(animal?.id);
  });

  it.each([
    ['inbreedingFrom=1.5', '/inbreedingFrom'],
    ['inbreedingFrom=much', '/inbreedingFrom'],
    ['tracedShareTo=-1', '/tracedShareTo'],
    ['depthFrom=1.5', '/depthFrom'],
    ['sort=F', '/sort'],
  ])('refuses %s and says where', async (query, pointer) => {
    const answer = await api.http.get(`/api/v1/individuals?${query}`).expect(422);
    expect(bodyOf<{ errors: { pointer: string }[] }>(answer).errors.map((error) => error.pointer)).toContain(pointer);
  });
});

async function until(condition: () => Promise<boolean>): Promise<void> {
  for (let turn = 0; turn < 600; turn++) {
    if (await condition()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('it did not come to pass within a minute');
}
