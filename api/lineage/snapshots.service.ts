import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LineageSnapshot } from './lineage-snapshot.ts';
import { readRegister } from './read-register.ts';
import { readRevision, type Revision } from './register-rows.queries.ts';

/**
 * Keeps the newest snapshot of the lineage at hand. It is a copy, never the truth: every request first asks the database for
 * its revision, and a snapshot of another revision is not used. Several copies of the service therefore agree.
 */
@Injectable()
export class Snapshots {
  #newest: LineageSnapshot | null = null;
  #reading: Promise<LineageSnapshot> | null = null;

  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * The lineage as of this moment: never older than the register was when it was called. Reads the register anew if it has
   * changed; requests that come while it is being read share the reading, unless it began before what they must see.
   */
  async current(): Promise<LineageSnapshot> {
    const heldBefore = this.#newest;
    const wanted = await readRevision(this.dataSource.manager);
    const held = this.#newest;
    if (held && isSame(held.revision, wanted)) return held;
    // Taken while this request waited for its revision: newer than it asks for. One held before must be the very same, since
    // a backup that was put in place may have taken the register back to a lower number.
    if (held && held !== heldBefore && held.revision.number > wanted.number) return held;
    const shared = await this.#reading?.catch(() => null);
    if (shared && shared.revision.number >= wanted.number) return shared;
    return (this.#reading ??= this.#read());
  }

  async #read(): Promise<LineageSnapshot> {
    try {
      const snapshot = await this.dataSource.transaction('REPEATABLE READ', async (manager) => {
        await manager.query('set transaction read only');
        const revision = await readRevision(manager);
        return new LineageSnapshot(revision, await readRegister(manager));
      });
      this.#newest = snapshot;
      return snapshot;
    } finally {
      this.#reading = null;
    }
  }
}

function isSame(one: Revision, other: Revision): boolean {
  return one.number === other.number && one.changedAt === other.changedAt;
}
