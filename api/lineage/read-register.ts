import type pg from 'pg';
import type { BinaryRow } from './binary-rows.ts';
import { claimSubjects, forEachClaim, type ClaimSubject } from './claim-rows.queries.ts';
import { ParentRows } from './parent-rows.ts';
import {
  forEachCandidate,
  forEachClutch,
  forEachIndividual,
  forEachLine,
  forEachPair,
  forEachSource,
  type Ids,
} from './register-rows.queries.ts';
import { lineOfRow, RegisterStore, sourceOfRow } from './register-store.ts';

/**
 * Reads the whole register into the arrays of the kernel, in one walk through each table (about 3 µs an animal). Lists of
 * candidates are multiplied out to pairs, p(s,d) = p(s)·p(d); a side without rows is an unknown parent. Withdrawn animals stay
 * in: they are still somebody's ancestors.
 *
 * Graphs of objects are built for a neighbourhood only (`ancestor-chart.ts`): for a whole register they would take some
 * kilobytes an animal and answer nothing that the arrays do not.
 *
 * @param client in a REPEATABLE READ transaction
 */
export async function readRegister(client: pg.ClientBase): Promise<RegisterStore> {
  const store = new RegisterStore();
  await forEachSource(client, null, (row) => void store.putSource(sourceOfRow(row)));
  await forEachLine(client, null, (row) => store.putLine(lineOfRow(row)));
  await forEachClutch(client, null, (row) => void store.putClutch(row, 0));
  await forEachIndividual(client, null, (row) => void store.putIndividual(row));
  await readParents(client, store, null, null);
  for (const subject of claimSubjects) await readClaims(client, store, subject, null);
  return store;
}

/**
 * Reads the claims about records of one kind into the store, in place of those that it has of them.
 *
 * @param ids of the records, all of them in the store unless they are gone again; null for all
 */
export async function readClaims(
  client: pg.ClientBase,
  store: RegisterStore,
  subject: ClaimSubject,
  ids: Ids,
): Promise<void> {
  const numberOf = {
    source: (id: string) => store.sourceNumber(id),
    individual: (id: string) => store.individuals.find(id),
    line: (id: string) => store.lineNumber(id),
  }[subject];
  if (ids !== null) store.claims.clear(subject, ids.map(numberOf));
  await forEachClaim(client, subject, ids, (id, claim) => store.claims.add(subject, numberOf(id), claim));
}

/**
 * Reads the parents of clutches into the store.
 *
 * @param clutches their dense numbers, ascending; null for all
 * @param ids their ids; null for all
 */
export async function readParents(
  client: pg.ClientBase,
  store: RegisterStore,
  clutches: Int32Array | null,
  ids: Ids,
): Promise<void> {
  const numbers = clutches ?? Int32Array.from({ length: store.clutchCount }, (_, clutch) => clutch);
  const placeOf = clutches === null ? null : new Map(Array.from(clutches, (clutch, place) => [clutch, place]));
  const rows = new ParentRows(numbers.length);
  const clutchAt = (row: BinaryRow): number => {
    const clutch = store.clutches.findBytes(row.bytes, row.at(0));
    const place = placeOf === null ? clutch : (placeOf.get(clutch) ?? -1);
    return place < 0 ? missing(row, 0) : place;
  };
  const animalAt = (row: BinaryRow, field: number): number => {
    if (row.isNull(field)) return -1;
    const found = store.individuals.findBytes(row.bytes, row.at(field));
    return found < 0 ? missing(row, field) : found;
  };
  await forEachCandidate(client, ids, (row) =>
    rows.addCandidate(clutchAt(row), row.letter(1) === SIRE_LETTER ? 'sire' : 'dam', animalAt(row, 2), row.float(3)),
  );
  await forEachPair(client, ids, (row) =>
    rows.addPair(clutchAt(row), animalAt(row, 1), animalAt(row, 2), row.float(3)),
  );
  store.putParents(numbers, rows.multiplyOut());
}

const SIRE_LETTER = 's'.charCodeAt(0);

/** A foreign key says that the record exists. */
function missing(row: BinaryRow, field: number): never {
  throw new Error(`record ${row.id(field)} is missing from its table: the register was not read in one state`);
}
