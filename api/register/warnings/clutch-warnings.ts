import { daysBetween, isCertainlyBefore } from '../../../shared/edtf.ts';
import type { ClutchFacts, ParentFacts, RangeFacts, Warning, WarningCode } from './facts.ts';
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
} from './spans.ts';

type Check = (facts: ClutchFacts) => Warning[] | null;

const youngCodes = { dam: 'young-dam', sire: 'young-sire', either: 'young-parent' } as const;
const oldCodes = { dam: 'old-dam', sire: 'old-sire', either: 'old-parent' } as const;

/** Each looks at one thing; together they are the warnings of a clutch. */
export const clutchWarnings: readonly Check[] = [
  youngParents,
  oldParents,
  deadParents,
  manyEggs,
  lostAndHatched,
  recordedYoung,
  closeClutches,
  crossedParents,
  pairsOfOneSex,
];

function youngParents(facts: ClutchFacts): Warning[] | null {
  return byRole(facts.parents, youngCodes, ['laid', 'parents'], (parent) => {
    const age = spanBetween(parent.hatched, facts.laid, 'months');
    const { maturity } = parent.ranges;
    if (!age || !maturity || !isCertainlyShorter(age, maturity.usualLeast ?? maturity.extremeLeast)) return null;
    return `laid when ${callParent(parent, facts.parents)} was ${spanInWords(age, 'months')} old; ${rangeFrom(maturity, 'months')}`;
  });
}

function oldParents(facts: ClutchFacts): Warning[] | null {
  return byRole(facts.parents, oldCodes, ['laid', 'parents'], (parent) => {
    const age = spanBetween(parent.hatched, facts.laid, 'years');
    const { lifespan } = parent.ranges;
    if (!age || !lifespan || !isCertainlyLonger(age, mostKnown(lifespan))) return null;
    return `laid when ${callParent(parent, facts.parents)} was ${spanInWords(age, 'years')} old; they live ${rangeUpTo(lifespan)}`;
  });
}

function deadParents(facts: ClutchFacts): Warning[] | null {
  const { laid } = facts;
  if (!laid) return null;
  const said = facts.parents
    .filter((parent) => parent.died !== null && isCertainlyBefore(parent.died, laid))
    .map((parent) => `${callParent(parent, facts.parents)} is recorded as dead before the clutch was laid`);
  return said.length === 0 ? null : [{ code: 'dead-parent', detail: sentence(said), fields: ['laid', 'parents'] }];
}

function manyEggs(facts: ClutchFacts): Warning[] | null {
  if (facts.eggs === null) return null;
  if (facts.eggs === 0)
    return [
      { code: 'no-eggs', detail: 'A clutch of no eggs. Leave the number out where nobody counted.', fields: ['eggs'] },
    ];
  const range = rangeOfMother(facts, 'eggs-per-clutch');
  const most = range && mostKnown(range);
  if (!range || most === null || most === undefined || facts.eggs <= most) return null;
  return [{ code: 'many-eggs', detail: `${facts.eggs} eggs; ${rangeInWords(range, 'eggs')}.`, fields: ['eggs'] }];
}

function lostAndHatched(facts: ClutchFacts): Warning[] | null {
  if (facts.eggs === null || facts.lost + (facts.hatched ?? 0) <= facts.eggs) return null;
  const hatched = facts.hatched === null ? '' : ` and ${facts.hatched} hatched`;
  return [
    {
      code: 'more-lost-than-laid',
      detail: `${facts.lost} lost${hatched}, but ${amount(facts.eggs, 'eggs')} laid.`,
      fields: ['eggs', 'hatched', 'losses'],
    },
  ];
}

function recordedYoung(facts: ClutchFacts): Warning[] | null {
  const most = facts.hatched ?? facts.eggs;
  if (most === null || facts.young <= most) return null;
  const limit = facts.hatched === null ? `${amount(most, 'eggs')} laid` : `${most} hatched`;
  return [
    {
      code: 'more-young-than-eggs',
      detail: `${facts.young} young stand in the register, but ${limit}.`,
      fields: ['eggs', 'hatched'],
    },
  ];
}

function closeClutches(facts: ClutchFacts): Warning[] | null {
  const { laid } = facts;
  const range = facts.parents.find((parent) => parent.role === 'dam')?.ranges['between-clutches'];
  const least = range ? leastKnown(range) : null;
  if (!laid || !range || least === null) return null;
  const said = facts.nearbyOfDam.flatMap((other) => {
    const [from, to] = isCertainlyBefore(other.laid, laid) ? [other.laid, laid] : [laid, other.laid];
    const days = daysBetween(from, to);
    return isCertainlyShorter(days, least)
      ? [`laid ${spanInWords(days, 'days')} ${from === laid ? 'before' : 'after'} the ${other.title} of the same dam`]
      : [];
  });
  return said.length === 0
    ? null
    : [
        {
          code: 'close-clutches',
          detail: `${sentence(said, 2).slice(0, -1)}; ${rangeInWords(range, 'days')}.`,
          fields: ['laid'],
        },
      ];
}

function crossedParents(facts: ClutchFacts): Warning[] | null {
  for (const [place, parent] of facts.parents.entries())
    for (const other of facts.parents.slice(place + 1)) {
      if (parent.role === other.role && parent.role !== 'either') continue;
      const difference = differenceBetween(parent, other);
      if (difference !== null)
        return [
          {
            code: 'cross',
            detail: `${capital(`${callParent(parent, facts.parents)} and ${callParent(other, facts.parents)} ${difference}`)}.`,
            fields: ['parents'],
          },
        ];
    }
  return null;
}

/** Happens when a group is sexed after its clutches were noted: such a pair had better go, so that the others weigh more. */
function pairsOfOneSex(facts: ClutchFacts): Warning[] | null {
  const said = (facts.pairsOfOneSex ?? []).map(
    ({ a, b, sex }) => `the possible parents ${a} and ${b} are both recorded as ${sex}`,
  );
  return said.length === 0 ? null : [{ code: 'pair-of-one-sex', detail: sentence(said), fields: ['parents'] }];
}

function differenceBetween(a: ParentFacts, b: ParentFacts): string | null {
  if (a.speciesId === null || b.speciesId === null) return null;
  if (a.speciesId !== b.speciesId) return 'are of different species';
  if (a.lineId === null || b.lineId === null || a.lineId === b.lineId) return null;
  return `are of different lines, ${a.line ?? 'one'} and ${b.line ?? 'another'}`;
}

/** The range of whoever laid the eggs: a dam's, else any possible parent's. */
function rangeOfMother(facts: ClutchFacts, trait: 'eggs-per-clutch'): RangeFacts | undefined {
  const mother = facts.parents.find((parent) => parent.role === 'dam') ?? facts.parents[0];
  return mother?.ranges[trait];
}

function byRole(
  parents: readonly ParentFacts[],
  codes: Record<ParentFacts['role'], WarningCode>,
  fields: readonly string[],
  say: (parent: ParentFacts) => string | null,
): Warning[] | null {
  const warnings: Warning[] = [];
  for (const role of ['dam', 'sire', 'either'] as const) {
    const said = parents.filter((parent) => parent.role === role).flatMap((parent) => say(parent) ?? []);
    if (said.length > 0) warnings.push({ code: codes[role], detail: sentence(said), fields });
  }
  return warnings.length === 0 ? null : warnings;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** At most three things in one sentence, since a group has many candidates. */
function sentence(said: readonly string[], most = 3): string {
  const more = said.length > most ? ` (and ${said.length - most} more)` : '';
  return `${capital(said.slice(0, most).join('; '))}${more}.`;
}

function rangeFrom(range: RangeFacts, unit: string): string {
  const usual = range.usualLeast === null ? null : `usual is ${range.usualLeast} or more`;
  const extreme = range.extremeLeast === null ? null : `the youngest known was ${amount(range.extremeLeast, unit)}`;
  return [usual, extreme].filter((part) => part !== null).join(', ');
}

function rangeUpTo(range: RangeFacts): string {
  const most = mostKnown(range);
  return most === null ? 'less' : `${amount(most, 'years')} at most`;
}
