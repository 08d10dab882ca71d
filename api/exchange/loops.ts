import { LoopError } from '../lineage/kernel/loop-error.ts';
import type { PedigreeOrder } from '../lineage/kernel/order.ts';
import { orderPedigree } from '../lineage/kernel/order.ts';
import type { Pedigree } from '../lineage/kernel/pedigree.ts';
import type { LineageFacts } from './lineage-checks.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import { say } from '../platform/say.ts';

/** How many loops are named in one answer; each costs a walk over the whole sheet. */
const mostLoops = 20;

/**
 * Puts the clutches of a sheet in an order in which parents come first, or refuses every loop, naming its members. The parents
 * of one clutch of each loop are forgotten in `pedigree` to find the next one.
 *
 * @returns the order, null where there are loops
 */
export function orderOrRefuse(facts: LineageFacts, pedigree: Pedigree, report: SheetReport): PedigreeOrder | null {
  for (let loops = 0; ; loops++) {
    try {
      const order = orderPedigree(pedigree);
      return loops === 0 ? order : null;
    } catch (error) {
      if (!(error instanceof LoopError)) throw error;
      refuseLoop(facts, error.individuals, report);
      if (loops + 1 === mostLoops) return null;
      forgetParents(pedigree, pedigree.clutchOf[error.individuals[0] ?? 0] ?? 0);
    }
  }
}

/** @param members each is a candidate parent of the next, the last of the first */
function refuseLoop({ animals, parents, table }: LineageFacts, members: readonly number[], report: SheetReport): void {
  const start = members.indexOf(Math.min(...members.slice(0, 100_000)));
  const inOrder = [...members.slice(start), ...members.slice(0, start)];
  const first = inOrder[0] ?? 0;
  const parent = inOrder.at(-1) ?? first;
  const column = (['sire', 'dam', 'parents'] as const).find((side) =>
    parents.candidates(side, first).some((candidate) => candidate.parent === parent),
  );
  const shown = inOrder.slice(0, 30).map((member) => animals.describe(member));
  if (inOrder.length > 30) shown.push(say`${inOrder.length - 30} more`);
  const place: SheetColumn = column ?? 'clutch';
  report.refuse(
    first,
    place,
    say`${table.text('code', first)} would be its own ancestor: ${[...shown, table.text('code', first)].join(' → ')}, each a parent of the next. Check which of these parents is wrong.`,
  );
}

function forgetParents({ pairStart, pairSire, pairDam }: Pedigree, clutch: number): void {
  const start = pairStart[clutch] ?? 0;
  const end = pairStart[clutch + 1] ?? start;
  pairSire.fill(-1, start, end);
  pairDam.fill(-1, start, end);
}
