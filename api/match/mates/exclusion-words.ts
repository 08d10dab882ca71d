import type { MateExclusion } from './mates.view.ts';

/** Why animals are left out, in words, with what would let them in. */
export const exclusionWords: Readonly<Record<MateExclusion, string>> = {
  'not-living':
    'They died, left the club, or nobody knows whether they live. Of a large line the newest 500 are counted.',
  'keeper-left': 'Their keeper has left the club.',
  unsexed: 'Their sex is not known yet.',
  'too-young': 'They are younger than the least age at which their species matures.',
  'beyond-lifespan': 'They are older than their species is known to live: check whether they still do.',
  'disputed-label':
    'A claim on their founders, or on themselves, is disputed. Settle it, or ask for animals with disputed labels.',
  'other-species': 'They belong to another species.',
  related: 'They are related above the limit.',
  'other-line': 'Animals of other lines are left out, since the young would be a cross. Ask for them to see them.',
};
