import { roundTogether, tenthsInWords } from '$lib/ui/shares.ts';

/** One line of an addition. */
export interface Addend {
  words: string;
  /** How the part came about, such as "0.75 × 6.3 %"; empty where there is nothing to say. */
  how: string;
  /** 0 to 1. */
  part: number;
}

/** The lines of an addition with their parts as printed, rounded so that they add up to the printed total. */
export function printedAddition(addends: readonly Addend[]): (Addend & { printed: string })[] {
  const tenths = roundTogether(addends.map((addend) => addend.part));
  return addends.map((addend, at) => ({
    ...addend,
    printed: tenthsInWords({ tenths: tenths[at] ?? 0, share: addend.part }),
  }));
}
