import type { MateExclusion } from './mates.view.ts';
import { say } from '../../platform/say.ts';

/** Why animals are left out, in words, with what would let them in. */
export const exclusionWords: Readonly<Record<MateExclusion, string>> = {
  'not-living': say`They died, left the club, or nobody knows whether they live. Of a large line the newest 500 are counted.`,
  'keeper-left': say`Their keeper has left the club.`,
  unsexed: say`Their sex is not known yet.`,
  'too-young': say`They are younger than the least age at which their species matures.`,
  'beyond-lifespan': say`They are older than their species is known to live: check whether they still do.`,
  'disputed-label': say`A claim on their founders, or on themselves, is disputed. Settle it, or ask for animals with disputed labels.`,
  'other-species': say`They belong to another species.`,
  related: say`They are related above the limit.`,
  'other-line': say`Animals of other lines are left out, since the young would be a cross. Ask for them to see them.`,
};
