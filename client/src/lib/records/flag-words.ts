import type { FlagCode, FlagSeverity } from '$shared/vocabulary.ts';

/** How the register names a mark in two words, and what it does to the label. */
export const flagWords: Record<FlagCode, { words: string; severity: FlagSeverity }> = {
  'mixed-labels': { words: 'mixed labels', severity: 'breaks' },
  'outside-line': { words: 'outside line', severity: 'breaks' },
  'label-beyond-evidence': { words: 'beyond papers', severity: 'weakens' },
  'origin-gap': { words: 'unknown origin', severity: 'weakens' },
  'parents-uncertain': { words: 'parents uncertain', severity: 'worth-knowing' },
};

const order: FlagSeverity[] = ['breaks', 'weakens', 'worth-knowing'];

/** The gravest mark first. */
export function bySeverity(codes: readonly FlagCode[]): FlagCode[] {
  return [...codes].sort((a, b) => order.indexOf(flagWords[a].severity) - order.indexOf(flagWords[b].severity));
}
