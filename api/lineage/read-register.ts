import type { EntityManager } from 'typeorm';
import type { LabelKind, Sex, SourceKind, Status } from '../../shared/vocabulary.ts';
import { ParentRows } from './parent-rows.ts';
import type { LineNode, RegisterGraph, SourceNode } from './register-graph.ts';
import {
  forEachCandidate,
  forEachClutch,
  forEachIndividual,
  forEachLine,
  forEachPair,
  forEachSource,
} from './register-rows.queries.ts';

/**
 * Reads the whole register into the arrays of the kernel, in one walk through each table (about half a second for 100 000
 * animals). Lists of candidates are multiplied out to pairs, p(s,d) = p(s)·p(d); a side without rows is an unknown parent.
 * Withdrawn animals stay in: they are still somebody's ancestors.
 *
 * Graphs of objects are built for a neighbourhood only (`ancestor-chart.ts`): for a whole register of 100 000 animals they
 * would take some hundred megabytes and answer nothing that the arrays do not.
 *
 * @param manager of a REPEATABLE READ transaction
 */
export async function readRegister(manager: EntityManager): Promise<RegisterGraph> {
  const sources: SourceNode[] = [];
  await forEachSource(manager, ([id, kind, labelAsReceived, baseKinship]) =>
    sources.push({ id, kind: kind as SourceKind, labelAsReceived, baseKinship }),
  );
  const lines: LineNode[] = [];
  await forEachLine(manager, ([id, name, labelKind]) => lines.push({ id, name, labelKind: labelKind as LabelKind }));
  const clutchIds: string[] = [];
  await forEachClutch(manager, ([id]) => clutchIds.push(id));
  const clutchNumber = numbering(clutchIds);
  const individuals = await readIndividuals(
    manager,
    clutchNumber,
    numbering(sources.map(({ id }) => id)),
    numbering(lines.map(({ id }) => id)),
  );
  const parents = new ParentRows(clutchNumber, individuals.individualOf);
  await forEachCandidate(manager, (row) => parents.addCandidate(row));
  await forEachPair(manager, (row) => parents.addPair(row));
  const { jointPairs, ...pairs } = parents.multiplyOut();
  const { clutchOf, sourceOf, ...rest } = individuals;
  const baseKinship = Float64Array.from(sources, (source) => source.baseKinship);
  return { ...rest, pedigree: { clutchOf, sourceOf, baseKinship, ...pairs }, clutchIds, sources, lines, jointPairs };
}

async function readIndividuals(
  manager: EntityManager,
  clutchNumber: ReadonlyMap<string, number>,
  sourceNumber: ReadonlyMap<string, number>,
  lineNumber: ReadonlyMap<string, number>,
) {
  const individualIds: string[] = [];
  const individualOf = new Map<string, number>();
  const individualOfSerial = new Map<number, number>();
  const serials: number[] = [];
  const sexOf: Sex[] = [];
  const statusOf: Status[] = [];
  const clutchOf: number[] = [];
  const sourceOf: number[] = [];
  const lineOf: number[] = [];
  const withdrawn: number[] = [];
  await forEachIndividual(manager, ([id, number, sex, status, line, clutch, source, isWithdrawn]) => {
    const serial = Number(number);
    individualOf.set(id, individualIds.length);
    individualOfSerial.set(serial, individualIds.length);
    individualIds.push(id);
    serials.push(serial);
    sexOf.push(sexWords[sex as Sex]);
    statusOf.push(statusWords[status as Status]);
    clutchOf.push(numberOf(clutchNumber, clutch));
    sourceOf.push(numberOf(sourceNumber, source));
    lineOf.push(numberOf(lineNumber, line));
    withdrawn.push(isWithdrawn ? 1 : 0);
  });
  return {
    individualIds,
    individualOf,
    individualOfSerial,
    serials: Float64Array.from(serials),
    sexOf,
    statusOf,
    clutchOf: Int32Array.from(clutchOf),
    sourceOf: Int32Array.from(sourceOf),
    lineOf: Int32Array.from(lineOf),
    withdrawn: Uint8Array.from(withdrawn),
  };
}

/** One text each for the words of a vocabulary: the driver makes a new one for every row. */
const sexWords: Record<Sex, Sex> = { male: 'male', female: 'female', unsexed: 'unsexed' };
const statusWords: Record<Status, Status> = { alive: 'alive', died: 'died', gone: 'gone', unknown: 'unknown' };

function numbering(ids: readonly string[]): Map<string, number> {
  return new Map(ids.map((id, index) => [id, index]));
}

/** Dense number of an id, −1 for none. A foreign key says that it exists. */
function numberOf(numbers: ReadonlyMap<string, number>, id: string | null): number {
  if (id === null) return -1;
  const number = numbers.get(id);
  if (number === undefined)
    throw new Error(`record ${id} is missing from its table: the register was not read in one state`);
  return number;
}
