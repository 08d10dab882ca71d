import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DataSource } from 'typeorm';
import { FiguresKeeper } from '../../../api/lineage/figures-keeper.ts';
import { labelEvidenceOf } from '../../../api/lineage/label-evidence.ts';
import { LineageMemory } from '../../../api/lineage/lineage-memory.ts';
import { LineageSnapshot } from '../../../api/lineage/lineage-snapshot.ts';
import { readLineage } from '../../../api/lineage/read-lineage.ts';
import { Snapshots } from '../../../api/lineage/snapshots.service.ts';
import { TracedShares } from '../../../api/lineage/traced-shares.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { RandomEdits } from './random-edits.ts';

interface StoredRow {
  readonly id: string;
  readonly inbreeding: number;
  readonly depth: number;
  readonly traced: number;
  readonly kinship: number | null;
}

/** Waits until every change is settled and every line has its mean kinships. */
async function quiet({ dataSource }: TestApi): Promise<void> {
  for (let turn = 0; turn < 600; turn++) {
    const [row] = await dataSource.query<{ waits: boolean }[]>(
      `select exists (select from lineage_change where not settled)
         or exists (select from line_figures where due_since is not null) as waits`,
    );
    if (!row?.waits) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the figures did not become current within a minute');
}

/** The version of each stored row, by animal: another one once it is written anew. */
async function rowVersions({ dataSource }: TestApi): Promise<Map<string, string>> {
  const rows = await dataSource.query<{ id: string; version: string }[]>(
    'select individual_id as id, xmin::text as version from individual_figures',
  );
  return new Map(rows.map(({ id, version }) => [id, version]));
}

/** The register read and computed from nothing. */
async function fromNothing(dataSource: DataSource): Promise<LineageSnapshot> {
  return dataSource.transaction('REPEATABLE READ', async (manager) => {
    const client = (await manager.queryRunner?.connect()) as pg.PoolClient;
    const { revision, parts } = await readLineage(client, { frontierBytes: 2 ** 26 });
    const state = new LineageMemory(parts).show();
    return new LineageSnapshot(revision, state, new Int32Array(state.knowledge.stale.length).fill(-1));
  });
}

function expectClose(actual: number | null, wanted: number | null, what: string): void {
  if (actual === null || wanted === null) expect(actual, what).toBe(wanted);
  else expect(Math.abs(actual - wanted), `${what}: ${actual} instead of ${wanted}`).toBeLessThanOrEqual(1e-12);
}

/** Holds every stored figure, and every figure that a copy of the service has in memory, against a computation from nothing. */
async function expectAllRight(api: TestApi): Promise<void> {
  const wanted = await fromNothing(api.dataSource);
  const held = await api.app.get(Snapshots).current();
  const traced = new TracedShares(wanted);
  const rows = await api.dataSource.query<StoredRow[]>(
    'select individual_id as id, inbreeding, depth, traced_share as traced, mean_kinship as kinship from individual_figures',
  );
  const stored = new Map(rows.map((row) => [row.id, row]));
  expect(held.revision.number).toBe(wanted.revision.number);
  expect(stored.size).toBe(wanted.size);
  for (let animal = 0; animal < wanted.size; animal++) {
    const id = wanted.idOf(animal);
    const row = stored.get(id);
    const here = held.find(id);
    expect(here, `the copy knows ${id}`).toBeGreaterThanOrEqual(0);
    expect(held.isCurrent(here)).toBe(true);
    const { expected, least, greatest } = wanted.inbreedingOf(animal);
    expectClose(row?.inbreeding ?? null, expected, `stored F of ${id}`);
    expectClose(held.inbreedingOf(here).expected, expected, `F of ${id}`);
    expectClose(held.inbreedingOf(here).least, least, `least F of ${id}`);
    expectClose(held.inbreedingOf(here).greatest, greatest, `greatest F of ${id}`);
    expect(row?.depth).toBe(wanted.depthOf(animal).depth);
    expect(held.depthOf(here).depth).toBe(wanted.depthOf(animal).depth);
    expect(held.depthOf(here).fullDepth).toBe(wanted.depthOf(animal).fullDepth);
    expectClose(
      held.depthOf(here).generationEquivalents,
      wanted.depthOf(animal).generationEquivalents,
      `equivalents of ${id}`,
    );
    expect(held.filialGenerationOf(here)).toBe(wanted.filialGenerationOf(animal));
    expectClose(row?.traced ?? null, traced.of(animal), `traced share of ${id}`);
    expectClose(row?.kinship ?? null, wanted.meanKinshipOf(animal), `stored mean kinship of ${id}`);
    expectClose(held.meanKinshipOf(here), wanted.meanKinshipOf(animal), `mean kinship of ${id}`);
    const evidence = labelEvidenceOf(wanted, animal);
    const evidenceHeld = labelEvidenceOf(held, here);
    expect(evidenceHeld.standings.length).toBe(evidence.standings.length);
    evidenceHeld.standings.forEach(({ standing, share }, place) => {
      expect(standing).toBe(evidence.standings[place]?.standing);
      expectClose(share, evidence.standings[place]?.share ?? null, `${standing} share of ${id}`);
    });
    expectClose(evidenceHeld.tracedShare.least, evidence.tracedShare.least, `least traced share of ${id}`);
    expectClose(row?.traced ?? null, evidence.tracedShare.expected, `traced share of ${id} beside its label`);
  }
}

describe('stored figures', () => {
  let first: TestApi;
  let second: TestApi;

  beforeAll(async () => {
    first = await startApi();
    second = await startApiOn(first.databaseUrl);
  });
  afterAll(async () => {
    await second.close();
    await first.close();
  });

  it('equal a computation from nothing after random edits through two copies of the service', async () => {
    const taken = new Map<string, number>();
    for (const [seed, edits] of [
      [1, 80],
      [2, 80],
      [3, 80],
    ] as const) {
      const writing = [first, second].map((api, copy) => new RandomEdits(api, 100 * seed + copy));
      for (const edits of writing) await edits.begin();
      await Promise.all(writing.map((one) => one.make(edits)));
      await quiet(first);
      await expectAllRight(first);
      await expectAllRight(second);
      for (const { made } of writing) for (const [kind, count] of made) taken.set(kind, (taken.get(kind) ?? 0) + count);
    }
    // each kind of edit was taken at least once
    expect([...taken.keys()].sort()).toEqual([
      'animal',
      'base kinship',
      'claim',
      'clutch',
      'corrected claim',
      'evidence',
      'import',
      'label',
      'line',
      'merge',
      'parents',
      'restored claim or evidence',
      'review',
      'undo',
      'undone import',
      'withdrawal',
      'withdrawn claim or evidence',
      'young',
    ]);
  }, 240_000);

  it('are settled by the request that made the change', async () => {
    const edits = new RandomEdits(first, 7);
    await edits.begin();
    await quiet(first);
    const young = await edits.raise();
    const rows = await first.dataSource.query<StoredRow[]>(
      'select individual_id as id from individual_figures where individual_id = any($1::uuid[])',
      [young],
    );
    expect(rows.map(({ id }) => id).sort()).toEqual([...young].sort());
  });

  it('of a corrected clutch and its descendants are rewritten, those of others left alone', async () => {
    const edits = new RandomEdits(first, 8);
    await edits.begin();
    const { corrected, correct, descendants } = await edits.layDeep();
    await quiet(first);
    const before = await rowVersions(first);
    await correct();
    const after = await rowVersions(first);
    const rewritten = [...after.keys()].filter((id) => after.get(id) !== before.get(id));
    // its own figures happen to stay the same, those of its descendants do not
    expect(rewritten).toEqual(expect.arrayContaining(descendants));
    for (const id of rewritten) expect([corrected, ...descendants]).toContain(id);
  });

  it('are left to the job by a change of everything, which settles it', async () => {
    await first.dataSource.query(
      `with next as (update lineage_revision set revision = revision + 1 returning revision)
       insert into lineage_change (revision, kind) select revision, 'everything' from next`,
    );
    await first.dataSource.query('delete from individual_figures');
    expect(await first.app.get(FiguresKeeper).settle()).toBe(false);
    const edits = new RandomEdits(first, 9);
    await edits.begin();
    await quiet(first);
    await expectAllRight(first);
    await expectAllRight(second);
  }, 120_000);
});
