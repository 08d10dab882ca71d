import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { animalRows, isCurrentPlan, linesOf, planOf } from './figures-plan.ts';
import { readUnsettled, settleAt } from './figures-rows.queries.ts';
import { Snapshots } from './snapshots.service.ts';

/** Changes and animals that are settled within a request; more are left to the job. */
const AT_ONCE = { changes: 1000, animals: 1500 };
/** How often a settling that another change overtook is tried again. */
const ATTEMPTS = 5;

/**
 * Writes the stored figures that follow from changes of the register: a few at once, right after the change, by the request that made it.
 * What is not settled here stays noted, so that nothing is lost when this fails or the service dies.
 */
@Injectable()
export class FiguresKeeper {
  #running: Promise<boolean> | null = null;
  #next: Promise<boolean> | null = null;

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Settles what was committed before the call. Requests that come while one settles share the next one.
   *
   * @returns false where something is left that is too much for a request
   */
  settle(): Promise<boolean> {
    if (!this.#running) return this.#run();
    return (this.#next ??= this.#running
      .catch(() => false)
      .then(() => {
        this.#next = null;
        return this.#run();
      }));
  }

  #run(): Promise<boolean> {
    this.#running = this.#settle().finally(() => (this.#running = null));
    return this.#running;
  }

  async #settle(): Promise<boolean> {
    const { manager } = this.dataSource;
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      const changes = await readUnsettled(manager, AT_ONCE.changes + 1);
      if (changes.length === 0) return true;
      if (changes.length > AT_ONCE.changes || changes.some(({ kind }) => kind === 'everything')) return false;
      const snapshot = await this.snapshots.current();
      const plan = await planOf(manager, snapshot, changes);
      if (plan.animals.length > AT_ONCE.animals) return false;
      if (!isCurrentPlan(snapshot, plan)) return false;
      const settling = {
        animals: animalRows(snapshot, plan.animals, plan.changed),
        gone: plan.gone,
        // also where no clutch changed: founders of a source share its base kinship, and a job may have passed by before these rows were there
        dueLines: linesOf(snapshot, plan.animals),
        notes: changes.map(({ note }) => note),
      };
      // not written where the register has changed since the snapshot
      if (await settleAt(manager, snapshot.revision.number, settling)) return true;
    }
    return false;
  }
}
