import type { Standing } from '$shared/vocabulary.ts';
import { partsOf } from '$lib/ui/shares.ts';
import type { StandingShare } from './pedigree-view.ts';

/** One piece of a share bar, in pixels from its left end. */
export interface Band {
  standing: Standing;
  from: number;
  width: number;
}

/** The pieces of a bar so many pixels wide: together they fill it, in the fixed order of the standings. */
export function bandsOf(shares: readonly StandingShare[], width: number): Band[] {
  const parts = partsOf(shares);
  const whole = parts.reduce((sum, part) => sum + part.share, 0) || 1;
  let from = 0;
  return parts.map(({ standing, share }) => {
    const band = { standing, from, width: (share / whole) * width };
    from += band.width;
    return band;
  });
}
