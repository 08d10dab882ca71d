import { Inject, Injectable, type BeforeApplicationShutdown, type OnApplicationBootstrap } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { Jobs } from '../platform/jobs.ts';
import { LongWork } from '../platform/long-work.ts';
import { FiguresKeeper } from './figures-keeper.ts';
import { animalRows, clutchRows, isCurrentPlan, linesOf, planOf, planOfAll, type FiguresPlan } from './figures-plan.ts';
import {
  clearDueLine,
  isOvertaken,
  markSettled,
  newestNote,
  nextStamp,
  noteDueLines,
  noteProgress,
  pruneNotes,
  readDueLines,
  readUnsettled,
  removeRows,
  writeAnimalRows,
  writeClutchRows,
  writeMeanKinships,
} from './figures-rows.queries.ts';
import { isLiving } from './register-graph.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { Snapshots } from './snapshots.service.ts';
import { meanKinshipTask } from './tasks/mean-kinship.task.ts';
import { TracedShares } from './traced-shares.ts';

const queue = 'lineage-figures';
/** Rows that one statement writes: each takes some hundredths of a second, so that nobody waits for it. */
const SLICE = 5000;
/** Lines whose mean kinships are written before it is looked again whether something more urgent has come. */
const LINES_AT_ONCE = 20;
/** Lines beyond this size are computed in a thread. */
const LARGE_LINE = 5000;
/** Changes beyond which all figures are written instead of following each. */
const FOLLOWED_MOST = 5000;
/** Settled notes that are kept for copies of the service that are behind. */
const NOTES_KEPT = 50_000;
/** Seconds before mean kinships are written, so that an evening's entries cost one computation a line and not one each. */
const LINE_DELAY = 2;

/** Writes the rows of one slice. */
type SliceWriter = (manager: EntityManager, stamp: number) => Promise<void>;

/**
 * The job that writes stored figures where they are many: after an import, a correction deep in the pedigree, at the first start; and
 * the mean kinships of lines. One copy of the service does it at a time. It can die at any point: what it had not finished is still noted.
 */
@Injectable()
export class FiguresUpkeep implements OnApplicationBootstrap, BeforeApplicationShutdown {
  #isStopping = false;
  /** When the job was last asked for, for mean kinships only. */
  #askedAt = -Infinity;
  #underWay: Promise<void> = Promise.resolve();

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Jobs) private readonly jobs: Jobs,
    @Inject(LongWork) private readonly longWork: LongWork,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(FiguresKeeper) private readonly keeper: FiguresKeeper,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.jobs.work(queue, () => (this.#underWay = this.#takeTurn()));
    await this.jobs.send(queue);
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.#isStopping = true;
    await this.#underWay.catch(() => undefined);
  }

  /** Asks for the job: at once where figures wait, a little later where only mean kinships may. */
  async wanted(isUrgent: boolean): Promise<void> {
    // the job asked for a moment ago waits still, and will see what is due by then
    if (!isUrgent && performance.now() - this.#askedAt < 500 * LINE_DELAY) return;
    if (!isUrgent) this.#askedAt = performance.now();
    await this.jobs.send(queue, isUrgent ? 0 : LINE_DELAY);
  }

  /** Works only while no other copy does: a lock that ends with its connection, so that a copy that died holds nobody up. */
  async #takeTurn(): Promise<void> {
    const turn = this.dataSource.createQueryRunner();
    try {
      const [row] = (await turn.query(`select pg_try_advisory_lock(hashtext('linekeeper figures')) as mine`)) as {
        mine: boolean;
      }[];
      if (row?.mine) await this.#work();
      // the other copy may have looked before this job was asked for
      else await this.jobs.send(queue, LINE_DELAY);
      if (row?.mine) await turn.query(`select pg_advisory_unlock(hashtext('linekeeper figures'))`);
    } finally {
      await turn.release();
    }
  }

  async #work(): Promise<void> {
    while (!this.#isStopping) {
      if (!(await this.keeper.settle())) await this.#settleMany();
      else if (!(await this.#settleLines())) break;
    }
    await pruneNotes(this.dataSource.manager, NOTES_KEPT);
  }

  /** Writes all that follows from the unsettled changes, slice by slice. */
  async #settleMany(): Promise<void> {
    const { manager } = this.dataSource;
    await this.snapshots.current();
    await this.snapshots.settled();
    const snapshot = await this.snapshots.current();
    const upTo = await newestNote(manager, snapshot.revision.number);
    // read after the snapshot and up to it: what is marked as settled below must be what is followed here
    const changes = await readUnsettled(manager, FOLLOWED_MOST + 1, upTo);
    const isAll = changes.length > FOLLOWED_MOST || changes.some(({ kind }) => kind === 'everything');
    const plan = isAll ? planOfAll(snapshot) : await planOf(manager, snapshot, changes);
    // something is stale again: the register changed meanwhile
    if (!isCurrentPlan(snapshot, plan)) return;
    if (!(await this.#writeSlices(snapshot, plan))) return;
    await this.dataSource.transaction(async (own) => {
      await removeRows(own, isAll ? 'all' : plan.gone);
      await noteDueLines(own, isAll ? 'all' : linesOf(snapshot, plan.animals));
      await markSettled(own, { upTo });
      await noteProgress(own, 0, 0);
    });
  }

  /** False, with the rest unwritten, where the service stops or a request has settled a newer change. */
  async #writeSlices(snapshot: LineageSnapshot, { clutches, animals, changed }: FiguresPlan): Promise<boolean> {
    const total = clutches.length + animals.length;
    const traced = new TracedShares(snapshot);
    const clutchWriter = (slice: Int32Array): SliceWriter => {
      const rows = clutchRows(snapshot, slice);
      return (own, stamp) => writeClutchRows(own, rows, stamp);
    };
    const animalWriter = (slice: Int32Array): SliceWriter => {
      const rows = animalRows(snapshot, slice, changed, traced);
      return (own) => writeAnimalRows(own, rows);
    };
    const steps = [
      [clutches, clutchWriter],
      [animals, animalWriter],
    ] as const;
    let done = 0;
    for (const [numbers, writerOf] of steps)
      for (let start = 0; start < numbers.length; start += SLICE) {
        if (this.#isStopping) return false;
        const slice = numbers.subarray(start, start + SLICE);
        // the figures are taken before the register is held, so that writers wait for the rows alone
        const write = writerOf(slice);
        const isWritten = await this.dataSource.transaction(async (own) => {
          await own.query('set local synchronous_commit = off');
          const stamp = await nextStamp(own);
          if (await isOvertaken(own, snapshot.revision.number)) return false;
          await write(own, stamp);
          await noteProgress(own, (done += slice.length), total);
          return true;
        });
        if (!isWritten) return false;
      }
    return true;
  }

  /** Writes the mean kinships of lines that are due; gives whether there were any. */
  async #settleLines(): Promise<boolean> {
    const { manager } = this.dataSource;
    const due = await readDueLines(manager, LINES_AT_ONCE);
    if (due.length === 0) return false;
    await this.snapshots.current();
    await this.snapshots.settled();
    const snapshot = await this.snapshots.current();
    for (const { id, version } of due) {
      const line = snapshot.graph.lines.findIndex((known) => known.id === id);
      const animals = line < 0 ? new Int32Array(0) : snapshot.membersOfLine(line);
      const values = await this.#meanKinships(snapshot, line, animals);
      await this.dataSource.transaction(async (own) => {
        await own.query('set local synchronous_commit = off');
        for (let start = 0; start < animals.length; start += SLICE) {
          const slice = Array.from(animals.subarray(start, start + SLICE));
          const ids = slice.map((animal) => snapshot.idOf(animal));
          await writeMeanKinships(own, ids, values.slice(start, start + SLICE));
        }
        await clearDueLine(own, id, version);
      });
      if (this.#isStopping) return false;
    }
    return true;
  }

  async #meanKinships(snapshot: LineageSnapshot, line: number, animals: Int32Array): Promise<(number | null)[]> {
    if (animals.length <= LARGE_LINE) {
      const known = snapshot.meanKinshipsOfLine(line);
      return Array.from(animals, (animal) => known.get(animal) ?? null);
    }
    const living = animals.filter((animal) => isLiving(snapshot.graph, animal));
    if (living.length === 0) return Array.from(animals, () => null);
    const { pedigree } = snapshot.graph;
    const input = { pedigree, inbreeding: snapshot.inbreeding, living, animals };
    return Array.from(await this.longWork.run(meanKinshipTask, input, { lane: 'upkeep' }));
  }
}
