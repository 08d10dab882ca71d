import { longTask, longTaskModule } from '../../platform/long-task.ts';
import type { ClutchKnowledge } from '../clutch-columns.ts';
import { writeFacts, type FounderKinds } from '../kernel/clutch-facts.ts';
import type { ClutchFigures } from '../kernel/figures.ts';
import type { PedigreeOrder } from '../kernel/order.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import { recomputeClutches } from '../kernel/recompute.ts';
import type { Recomputed } from '../lineage-memory.ts';

interface RecomputeInput {
  readonly pedigree: Pedigree;
  readonly order: PedigreeOrder;
  readonly founders: FounderKinds;
  readonly knowledge: ClutchKnowledge;
  /** Parents first, with all their descendants. */
  readonly clutches: Int32Array;
  readonly frontierBytes: number;
}

/** Computes the figures and facts of many clutches in a thread. */
export const recomputeTask = longTaskModule<RecomputeInput, Recomputed>('./recompute.task.ts', import.meta.url);

export default longTask((input: RecomputeInput): Recomputed => {
  const { pedigree, order, founders, knowledge, clutches, frontierBytes } = input;
  // the shared arrays are somebody's state: only copies are written
  const figures = Object.fromEntries(
    Object.entries(knowledge.figures).map(([name, values]) => [name, (values as Float64Array).slice()]),
  ) as unknown as ClutchFigures;
  const { depth, fullDepth, filial, equivalents } = knowledge.facts;
  const facts = {
    depth: depth.slice(),
    fullDepth: fullDepth.slice(),
    filial: filial.slice(),
    equivalents: equivalents.slice(),
  };
  recomputeClutches(pedigree, order, figures, clutches, { frontierBytes });
  writeFacts(pedigree, founders, facts, clutches);
  const real = (values: Float64Array): Float64Array => Float64Array.from(clutches, (clutch) => values[clutch] ?? 0);
  const whole = (values: Int32Array): Int32Array => clutches.map((clutch) => values[clutch] ?? 0);
  return {
    figures: Object.fromEntries(
      Object.entries(figures).map(([name, values]) => [name, real(values as Float64Array)]),
    ) as unknown as ClutchFigures,
    facts: {
      depth: whole(facts.depth),
      fullDepth: whole(facts.fullDepth),
      filial: whole(facts.filial),
      equivalents: real(facts.equivalents),
    },
  };
});
