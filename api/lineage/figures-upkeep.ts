import { Inject, Injectable, type BeforeApplicationShutdown, type OnApplicationBootstrap } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Jobs } from '../platform/jobs.ts';
import { LongWork } from '../platform/long-work.ts';
import { FiguresKeeper } from './figures-keeper.ts';
import { animalRows, isCurrentPlan, linesOf, planOf, planOfAll, type FiguresPlan } from './figures-plan.ts';
import {
  clearDueLine,
  hold,
  isOvertaken,
  isWorkLeft,
  markSettled,
  newestNote,
  noteDueLines,
  noteProgress,
  pruneNotes,
  readDueLines,
  readUnsettled,
  removeRows,
  takeTurn,
  giveTurnBack,
  writeAnimalRows,
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
/** Milliseconds between two looks whether something was left that no copy of the service works on, since one died. */
const LOOK_EVERY = 2000;

/**
 * The job that writes stored figures where they are many: after an import, a correction deep in the pedigree, at the first start; and
 * the mean kinships of lines. One copy of the service does it at a time. It can die at any point: what it had not finished is still noted,
 * and every other copy looks now and then whether something is noted that nobody works on.
 */
@Injectable()
export class FiguresUpkeep implements OnApplicationBootstrap, BeforeApplicationShutdown {
  #isStopping = false;
  /** When the job was last asked for, for mean kinships only. */
  #askedAt = -Infinity;
  #underWay: Promise<void> | null = null;
  #watch: NodeJS.Timeout | undefined;

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Jobs) private readonly jobs: Jobs,
    @Inject(LongWork) private readonly longWork: LongWork,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(FiguresKeeper) private readonly keeper: FiguresKeeper,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.jobs.work(queue, () => (this.#underWay ??= this.#takeTurn().finally(() => (this.#underWay = null))));
    await this.jobs.send(queue);
    this.#watch = setInterval(() => void this.#look().catch(() => undefined), LOOK_EVERY);
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.#isStopping = true;
    clearInterval(this.#watch);
    await this.ended();
  }

  /** Asks for the job where a copy that died, or a request that came to grief after its commit, can no longer do so. */
  async #look(): Promise<void> {
    if (!this.#underWay && (await isWorkLeft(this.dataSource.manager))) await this.jobs.send(queue);
  }

  /** Asks for the job: at once where figures wait, a little later where only mean kinships may. */
  async wanted(isUrgent: boolean): Promise<void> {
    // the job asked for a moment ago waits still, and will see what is due by then
    if (!isUrgent && performance.now() - this.#askedAt < 500 * LINE_DELAY) return;
    if (!isUrgent) this.#askedAt = performance.now();
    await this.jobs.send(queue, isUrgent ? 0 : LINE_DELAY);
  }

  /** Resolves when the work under way has ended, however it ends; at once where this copy works on nothing. */
  async ended(): Promise<void> {
    await this.#underWay?.catch(() => undefined);
  }

  /** Works only while no other copy does: a lock that ends with its connection, so that a copy that died holds nobody up. */
  async #takeTurn(): Promise<void> {
    const turn = this.dataSource.createQueryRunner();
    try {
      // where another copy works it finds what is noted meanwhile, and what it leaves is found by the next look
      if (!(await takeTurn(turn.manager))) return;
      try {
        await this.#work();
      } finally {
        // also after a failure: its connection goes on living, and would keep the turn from everybody
        await giveTurnBack(turn.manager);
      }
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
      await markSettled(own, upTo);
      await noteProgress(own, 0, 0);
    });
  }

  /** False, with the rest unwritten, where the service stops or a request has settled a newer change. */
  async #writeSlices(snapshot: LineageSnapshot, { animals, changed }: FiguresPlan): Promise<boolean> {
    const traced = new TracedShares(snapshot);
    for (let start = 0; start < animals.length; start += SLICE) {
      if (this.#isStopping) return false;
      const slice = animals.subarray(start, start + SLICE);
      // the figures are taken before the register is held, so that writers wait for the rows alone
      const rows = animalRows(snapshot, slice, changed, traced);
      const isWritten = await this.dataSource.transaction(async (own) => {
        await own.query('set local synchronous_commit = off');
        await hold(own);
        if (await isOvertaken(own, snapshot.revision.number)) return false;
        await writeAnimalRows(own, rows);
        await noteProgress(own, start + slice.length, animals.length);
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
