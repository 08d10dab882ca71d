import type { Inbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { runTextbook } from './meuwissen-luo.ts';
import { median } from './stopwatch.ts';
import type { Textbook } from './textbook.ts';

/** Columns of a table: what the textbook method takes, and how many times as long as ours that is. */
export interface Race {
  /** In TypeScript, milliseconds. */
  readonly textbook: number | string;
  readonly ratio: number | string;
  /** In C, compiled with optimisation for this machine. */
  readonly compiled: number | string;
  readonly compiledRatio: number | string;
}

/** Milliseconds after which the textbook is given up: it takes minutes on the widest shape, and longer tells nothing more. */
const LIMIT = 15_000;
/** Where it takes longer than this, one run is enough. */
const SLOW = 1000;
const RUNS = 5;

/** Runs the textbook method against ours, and makes sure that both find the same. */
export function raceTextbook(
  pedigree: Pedigree,
  ours: Inbreeding,
  milliseconds: number,
  textbook: Textbook | null,
): Race {
  if (pedigree.pairSire.length >= pedigree.pairStart.length)
    return { textbook: 'knows certain parents only', ratio: '', compiled: '', compiledRatio: '' };
  const sum = pedigree.clutchOf.reduce((total, clutch) => total + (ours.clutchExpected[clutch] ?? 0), 0);
  textbook?.give(pedigree);
  const inTypeScript = fastest((variant, limit) => runTextbook(variant, pedigree, limit), sum);
  const compiled = textbook === null ? null : fastest((variant, limit) => textbook.run(variant, limit), sum);
  return {
    textbook: inTypeScript ?? `over ${LIMIT}`,
    ratio: ratio(inTypeScript, milliseconds),
    compiled: textbook === null ? 'no C compiler' : (compiled ?? `over ${LIMIT}`),
    compiledRatio: textbook === null ? '' : ratio(compiled, milliseconds),
  };
}

function ratio(theirs: number | null, ours: number): number | string {
  return theirs === null ? `over ${Math.round(LIMIT / ours)}` : theirs / ours;
}

/** The faster of the list of the paper and a heap: which one that is depends on the pedigree. Null if both are given up. */
function fastest(
  run: (variant: 'list' | 'heap', limit: number) => { milliseconds: number; sum: number } | null,
  expected: number,
): number | null {
  let best: number | null = null;
  for (const variant of ['heap', 'list'] as const) {
    const times: number[] = [];
    for (let turn = 0; turn < RUNS; turn++) {
      const measured = run(variant, Math.min(LIMIT, 2 * (best ?? LIMIT) + 100));
      if (measured === null) break;
      if (Math.abs(measured.sum - expected) > 1e-6 * Math.max(1, expected))
        throw new Error(`The textbook method finds a sum of F of ${measured.sum}, the kernel of ${expected}.`);
      times.push(measured.milliseconds);
      if (measured.milliseconds > SLOW) break;
    }
    if (times.length > 0) best = Math.min(best ?? Infinity, median(times));
  }
  return best;
}
