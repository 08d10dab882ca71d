import type pg from 'pg';
import { readClaims, readParents } from './read-register.ts';
import {
  forEachClutch,
  forEachIndividual,
  forEachLine,
  forEachSource,
  type NotedChange,
} from './register-rows.queries.ts';
import { lineOfRow, sourceOfRow, type RegisterStore } from './register-store.ts';

/** What a change of the register touched, by dense numbers. */
export interface Touched {
  /** Clutches whose parents changed, ascending. */
  readonly clutches: Int32Array;
  /** Animals that hatched from another clutch or came from another source than before: the figures of their young follow. */
  readonly individuals: ReadonlySet<number>;
  /** Sources whose base kinship or kind changed. */
  readonly sources: ReadonlySet<number>;
}

/**
 * Leads the register from one state to the next: reads the records anew that the notes name.
 *
 * @param client in the REPEATABLE READ transaction that read the notes
 * @param changes without one of everything
 */
export async function applyChanges(
  client: pg.ClientBase,
  store: RegisterStore,
  changes: readonly NotedChange[],
): Promise<Touched> {
  const idsOf = (kind: NotedChange['kind']): string[] => [
    ...new Set(changes.flatMap((change) => (change.kind === kind && change.id !== null ? [change.id] : []))),
  ];
  const sources = new Set<number>();
  await forEachSource(client, idsOf('source'), (row) => {
    const source = sourceOfRow(row);
    const before = store.putSource(source);
    if ((before?.baseKinship ?? 0) !== source.baseKinship || (before?.kind ?? source.kind) !== source.kind)
      sources.add(store.sourceNumber(source.id));
  });
  await forEachLine(client, idsOf('line'), (row) => store.putLine(lineOfRow(row)));
  const clutchIds = idsOf('clutch');
  await forEachClutch(client, clutchIds, (row) => void store.putClutch(row, 0));
  const individuals = await applyIndividuals(client, store, [...new Set([...idsOf('individual'), ...idsOf('origin')])]);
  // one that came and went between two readings was never there
  const known = clutchIds.map((id) => store.clutches.find(id)).filter((clutch) => clutch >= 0);
  const clutches = Int32Array.from(known).sort();
  await readParents(client, store, clutches, clutchIds);
  await readClaims(client, store, 'source', idsOf('source'));
  await readClaims(client, store, 'line', idsOf('line'));
  await readClaims(client, store, 'individual', idsOf('origin'));
  return { clutches, individuals, sources };
}

async function applyIndividuals(client: pg.ClientBase, store: RegisterStore, ids: string[]): Promise<Set<number>> {
  const touched = new Set<number>();
  const originOf = (number: number): string => `${store.clutchOf(number)} ${store.sourceOf(number)}`;
  const before = new Map(
    ids
      .map((id) => store.individuals.find(id))
      .filter((number) => number >= 0)
      .map((number) => [number, originOf(number)]),
  );
  const gone = new Set(before.keys());
  await forEachIndividual(client, ids, (row) => gone.delete(store.putIndividual(row)));
  for (const number of gone) store.removeIndividual(number);
  for (const [number, origin] of before) if (origin !== originOf(number)) touched.add(number);
  return touched;
}
