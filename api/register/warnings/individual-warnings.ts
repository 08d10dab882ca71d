import { sayDate } from '../../platform/date-words.ts';
import type { IndividualFacts, RangeFacts, Warning } from './facts.ts';
import { callParent } from './parent-words.ts';
import {
  amount,
  isCertainlyLonger,
  isCertainlyShorter,
  leastKnown,
  mostKnown,
  rangeInWords,
  spanBetween,
  spanInWords,
  type Span,
} from './spans.ts';
import { say } from '../../platform/say.ts';

type Check = (facts: IndividualFacts) => Warning[] | null;

/** Each looks at one thing; together they are the warnings of an animal. */
export const individualWarnings: readonly Check[] = [hatching, leavingWater, sexedEarly, size, beyondLifespan, crossed];

function hatching(facts: IndividualFacts): Warning[] | null {
  const span = spanBetween(facts.laid, facts.hatched, 'days');
  const range = facts.ranges['laying-to-hatching'];
  if (!span || !range || !isUnusual(span, range)) return null;
  const detail = say`It hatched ${spanInWords(span, 'days')} after laying; ${rangeInWords(range, 'days')}.`;
  return [{ code: 'hatching-interval', detail, fields: ['hatched', 'clutch'] }];
}

function leavingWater(facts: IndividualFacts): Warning[] | null {
  const span = spanBetween(facts.hatched, facts.outOfWater, 'days');
  const range = facts.ranges['hatching-to-leaving-water'];
  if (!span || !range || !isUnusual(span, range)) return null;
  const detail = say`It left the water ${spanInWords(span, 'days')} after hatching; ${rangeInWords(range, 'days')}.`;
  return [{ code: 'water-interval', detail, fields: ['hatched', 'outOfWater'] }];
}

/** Whether a time is certainly shorter or longer than is usual. */
function isUnusual(span: Span, range: RangeFacts): boolean {
  return (
    isCertainlyShorter(span, range.usualLeast ?? range.extremeLeast) ||
    isCertainlyLonger(span, range.usualMost ?? range.extremeMost)
  );
}

function sexedEarly(facts: IndividualFacts): Warning[] | null {
  if (facts.sexBasis !== 'looks' || facts.sex === 'unsexed') return null;
  const age = spanBetween(facts.hatched, facts.sexedOn, 'months');
  const range = facts.ranges['sexable-by-looks'];
  const least = range ? leastKnown(range) : null;
  if (!age || least === null || !isCertainlyShorter(age, least)) return null;
  const detail = say`Its sex was told by looks at the age of ${spanInWords(age, 'months')}; looks do not tell before ${amount(least, 'months')}.`;
  return [{ code: 'sexed-early', detail, fields: ['sex', 'sexBasis', 'sexedOn', 'hatched'] }];
}

/** Too long is implausible at any age, too short only once the animal was certainly grown when it was measured. */
function size(facts: IndividualFacts): Warning[] | null {
  if (facts.sex === 'unsexed') return null;
  const range = facts.ranges[facts.sex === 'male' ? 'snout-vent-male' : 'snout-vent-female'];
  if (!range) return null;
  const least = leastKnown(range);
  const most = mostKnown(range);
  const odd = facts.measurements.filter(
    ({ svlMm, observedOn }) =>
      (most !== null && svlMm > most) || (least !== null && svlMm < least && isGrown(facts, observedOn)),
  );
  if (odd.length === 0) return null;
  const lengths = odd
    .slice(0, 3)
    .map((measurement) => measurement.svlMm)
    .join(', ');
  return [
    {
      code: 'size',
      detail: say`Measured ${lengths} mm from snout to vent; for a ${facts.sex} ${rangeInWords(range, 'mm')}.`,
      fields: ['sex', 'observations'],
    },
  ];
}

function isGrown(facts: IndividualFacts, observedOn: IndividualFacts['hatched']): boolean {
  const { maturity } = facts.ranges;
  const grownAt = maturity ? (mostKnown(maturity) ?? leastKnown(maturity)) : null;
  return isCertainlyLonger(spanBetween(facts.hatched, observedOn, 'months'), grownAt);
}

/** Said by the year it hatched in, so that a confirmed warning stays the same while the animal grows older. */
function beyondLifespan(facts: IndividualFacts): Warning[] | null {
  const { lifespan } = facts.ranges;
  const most = lifespan ? mostKnown(lifespan) : null;
  if (most === null || facts.hatchedText === null) return null;
  const isAlive = facts.status === 'alive';
  const end = isAlive ? { earliest: facts.today, latest: facts.today } : facts.died;
  const age = spanBetween(facts.hatched, end, 'years');
  if (!age || !isCertainlyLonger(age, most)) return null;
  const story = isAlive
    ? say`Hatched ${sayDate(facts.hatchedText)} and still recorded as alive`
    : say`Died at the age of ${spanInWords(age, 'years')}`;
  return [
    {
      code: 'beyond-lifespan',
      detail: say`${story}; the most known is ${amount(most, 'years')}.`,
      fields: ['hatched', isAlive ? 'status' : 'died'],
    },
  ];
}

function crossed(facts: IndividualFacts): Warning[] | null {
  const stranger = facts.parents.find((parent) => parent.speciesId !== null && parent.speciesId !== facts.speciesId);
  if (stranger)
    return [
      {
        code: 'cross',
        detail: say`The species is not that of ${callParent(stranger, facts.parents)}.`,
        fields: ['speciesId', 'clutch'],
      },
    ];
  if (facts.lineId === null) return null;
  const outsider = facts.parents.find((parent) => parent.lineId !== null && parent.lineId !== facts.lineId);
  if (!outsider) return null;
  const detail = say`It stands in the line ${facts.line ?? say`of another name`}, ${callParent(outsider, facts.parents)} in the line ${outsider.line ?? say`of another name`}.`;
  return [{ code: 'cross', detail, fields: ['lineId', 'clutch'] }];
}
