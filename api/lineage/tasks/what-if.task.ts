import { longTask, longTaskModule } from '../../platform/long-task.ts';
import type { Assumptions } from '../kernel/ancestry-copy.ts';
import { LoopError } from '../kernel/loop-error.ts';
import type { Pedigree } from '../kernel/pedigree.ts';
import { whatIf, type FiguresAsked, type WhatIf } from '../kernel/what-if.ts';

interface WhatIfInput {
  readonly pedigree: Pedigree;
  readonly asked: FiguresAsked;
  readonly assumptions: Assumptions;
  /** Most bytes that the matrix of a frontier sweep may take. */
  readonly frontierBytes: number | undefined;
}

/** The figures, or the members of a loop that the assumptions would close: classes of errors do not come out of a thread. */
export type WhatIfOutcome = WhatIf | { readonly loop: readonly number[] };

/** Figures under assumptions for an animal with very many ancestors, in a thread. */
export const whatIfTask = longTaskModule<WhatIfInput, WhatIfOutcome>('./what-if.task.ts', import.meta.url);

/** The same here and now; null where the ancestry has more clutches than `clutchesMost`. */
export function figuresOrLoop(
  { pedigree, asked, assumptions, frontierBytes }: WhatIfInput,
  clutchesMost?: number,
): WhatIfOutcome | null {
  try {
    return whatIf(pedigree, asked, assumptions, clutchesMost, frontierBytes === undefined ? {} : { frontierBytes });
  } catch (error) {
    if (error instanceof LoopError) return { loop: error.individuals };
    throw error;
  }
}

export default longTask<WhatIfInput, WhatIfOutcome>((input) => {
  const outcome = figuresOrLoop(input);
  if (outcome === null) throw new Error('an ancestry without a bound has no more clutches than it may');
  return outcome;
});
