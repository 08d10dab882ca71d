import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { collectAncestry } from '../../lineage/kernel/ancestry.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { isLiving } from '../../lineage/register-graph.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { LongWork } from '../../platform/long-work.ts';
import { decodeCursor, encodeCursor } from '../../platform/paging.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { findBreeders } from '../breeders.ts';
import { atRiskTask } from '../tasks/at-risk.task.ts';
import { EITHER, FEMALE, LIVES, MALE, NOT_COUNTED, type Urgency } from './at-risk-search.ts';
import { atRiskViews } from './at-risk-views.ts';
import type { Judged } from './carrier-views.ts';
import type { AtRiskQuery } from './at-risk.dto.ts';
import type { AtRiskListView } from './at-risk.view.ts';
import { say } from '../../platform/say.ts';

/** Most living animals that are looked at at once. */
const LIVING_MOST = 100_000;
/** Carriers that are named of each line, source or founder. */
const NAMED_MOST = 12;
const CURSOR = 'at-risk';

/** Answers what is about to be lost. */
@Injectable()
export class AtRiskService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Lines, sources and founders of which few living animals that may breed carry anything, the most urgent first.
   *
   * @throws InvalidProblem for an unknown line, a mark that is none of this list, or too many living animals; BusyProblem if too many
   *   computations wait
   */
  async list({ lineId, mostCarriers, limit, after }: AtRiskQuery): Promise<AtRiskListView> {
    const { manager } = this.dataSource;
    const from = after === undefined ? null : urgencyOf(decodeCursor(CURSOR, 4, after).map(Number));
    const snapshot = await this.snapshots.current();
    const line = lineId === undefined ? -1 : requireLine(snapshot, lineId);
    const living = livingOf(snapshot, line);
    const judged: Judged = await findBreeders(manager, snapshot, living, { unsexed: true, disputed: true });
    const { total, items, next, lost } = await this.work.run(atRiskTask, {
      pedigree: snapshot.graph.pedigree,
      positionOf: snapshot.inbreeding.order.positionOf,
      countsAs: countingOf(snapshot, living, judged),
      founders: foundersOf(snapshot, line),
      lines: linesOf(snapshot, line),
      mostCarriers,
      after: from,
      limit,
      named: NAMED_MOST,
    });
    return {
      items: await atRiskViews(manager, { snapshot, line, judged, mostCarriers }, items),
      next: next && encodeCursor(CURSOR, next),
      total,
      mostCarriers,
      lost: { lines: lost.line, sources: lost.source, founders: lost.founder },
      asOf: snapshot.asOf,
    };
  }
}

const urgencyOf = ([breeders = 0, copies = 0, kind = 0, number = 0]: readonly number[]): Urgency => [
  breeders,
  copies,
  kind,
  number,
];

/**
 * Dense number of a line that a request names in `lineId`.
 *
 * @throws InvalidProblem if there is none
 */
export function requireLine({ graph }: LineageSnapshot, lineId: string): number {
  const line = graph.lines.findIndex(({ id }) => id === lineId.toLowerCase());
  if (line >= 0) return line;
  const detail = say`There is no line with this id.`;
  throw new InvalidProblem(say`This line is not known.`, [{ pointer: '/lineId', detail }]);
}

function livingOf(snapshot: LineageSnapshot, line: number): number[] {
  const { graph } = snapshot;
  const living: number[] = [];
  const consider = (animal: number): void => {
    if (isLiving(graph, animal)) living.push(animal);
  };
  if (line >= 0) snapshot.membersOfLine(line).forEach(consider);
  else for (let animal = 0; animal < snapshot.size; animal++) consider(animal);
  if (living.length <= LIVING_MOST) return living;
  const detail = say`${living.length} animals live, at most ${LIVING_MOST} are looked at. Ask for one line by lineId.`;
  throw new InvalidProblem(say`Too many animals come into question.`, [{ pointer: '/lineId', detail }]);
}

/** What each animal counts as; one that may not be seen as a breeder of either sex, so that nothing of it is told. */
function countingOf({ size }: LineageSnapshot, living: readonly number[], judged: Judged): Uint8Array {
  const countsAs = new Uint8Array(size).fill(NOT_COUNTED);
  const bySex = { male: MALE, female: FEMALE, unsexed: EITHER };
  for (const animal of living) countsAs[animal] = EITHER;
  for (const { animal, sex } of judged.breeders) countsAs[animal] = bySex[sex];
  for (const { animal } of judged.excluded) countsAs[animal] = LIVES;
  return countsAs;
}

/** The founders of the animals of a line, or all of the register. */
function foundersOf(snapshot: LineageSnapshot, line: number): Int32Array {
  const { pedigree } = snapshot.graph;
  if (line >= 0) {
    const ancestry = collectAncestry(pedigree, snapshot.inbreeding.order, snapshot.membersOfLine(line));
    return ancestry.animals.slice(0, ancestry.founders);
  }
  const founders: number[] = [];
  pedigree.clutchOf.forEach((clutch, animal) => {
    if (clutch < 0 && snapshot.isThere(animal)) founders.push(animal);
  });
  return Int32Array.from(founders);
}

function linesOf(snapshot: LineageSnapshot, line: number): { line: number; animals: Int32Array }[] {
  const lines = line >= 0 ? [line] : [...snapshot.graph.lines.keys()];
  return lines.map((one) => ({ line: one, animals: snapshot.membersOfLine(one) }));
}
