import type { FlagCode, FlagSeverity, LabelKind } from '$shared/vocabulary.ts';

/** How the register names a mark in two words. */
export const flagWords: Record<FlagCode, string> = {
  'disputed-claim': 'disputed claim',
  'mixed-labels': 'mixed labels',
  'outside-line': 'outside line',
  'label-changed': 'label changed',
  'label-beyond-evidence': 'beyond papers',
  'outside-range': 'outside range',
  'export-route': 'export route',
  'date-conflict': 'dates conflict',
  'origin-gap': 'unknown origin',
  'country-only': 'country only',
  'parents-uncertain': 'parents uncertain',
};

/** What a mark does to a label; what breaks a label of one origin is only worth knowing under one that says it is a cross. */
export function severityOf(code: FlagCode, label: LabelKind | null): FlagSeverity {
  if (code === 'parents-uncertain' || code === 'export-route') return 'worth-knowing';
  if (['label-beyond-evidence', 'origin-gap', 'country-only', 'date-conflict'].includes(code)) return 'weakens';
  return label === 'cross' ? 'worth-knowing' : 'breaks';
}
